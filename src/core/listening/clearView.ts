import { type Air, heardAt, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { leastGainHere } from './leastGainHere';
import { madeOnce, madeOnceFor } from './madeOnce';
import { type Picture, type Spot, stringOver } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { CHEST_M, makeSmallScene } from './smallScene';

const EIRP_DBM = 6;
/** A hill of 60 m with its crest 1300 m from the tag; the walk goes up its far side. */
const HILL = { crestM: 1_300, heightM: 60, halfWidthM: 150 } as const;
const WALK_M = 300;
const HOLLOW_M = HILL.crestM + WALK_M;
const TAG = { eM: 200, nM: 1_750 };

/** Height over the plain, metres, `away` metres from the tag. */
const heightAway = (away: number): number => HILL.heightM * Math.exp(-(((away - HILL.crestM) / HILL.halfWidthM) ** 2));
const awayAt = (walkM: number): number => HOLLOW_M - walkM;

const scene = madeOnce(() => makeSmallScene({ sizeM: 1_800, tag: { at: TAG }, heightM: (_e, nM) => 100 + heightAway(TAG.nM - nM) }));
const air = keptBy(
  ({ walkM }) => walkM,
  ({ walkM }): Air => makeAir({ waves: [scene().direct({ eM: TAG.eM, nM: TAG.nM - awayAt(walkM) })], eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 45 };

/** Gain that just hears it at a place of the walk, straight ahead; null where none does. */
export const leastAtWalk = madeOnceFor((walkM: number): number | null => {
  const here = air({ ...start, walkM });
  return leastGainHere(here, Math.max(here.powerDbm(0, 90), here.powerDbm(0, 0)));
});

const PLACES_M = Array.from({ length: 16 }, (_, i) => 20 * i);
const curveOf = (): readonly (readonly [number, number])[] =>
  PLACES_M.flatMap((walkM) => {
    const least = leastAtWalk(walkM);
    return least === null ? [] : [[walkM, least] as const];
  });

const placeWord = (walkM: number): string => (walkM < 100 ? 'in the hollow' : walkM < 240 ? 'on the slope' : 'on the crest');

function says({ settings, now }: Listened): readonly Piece[] {
  const least = leastAtWalk(settings.walkM);
  const crest = leastAtWalk(WALK_M)!;
  const place = placeWord(settings.walkM);
  if (least === null) return [`${place[0]!.toUpperCase()}${place.slice(1)} it is `, { strong: 'not to be heard at any gain' }, '. Go up.'];
  const moreDb = Math.round(least - crest);
  if (moreDb < 3)
    return [
      `${place[0]!.toUpperCase()}${place.slice(1)} you see where it lies, and `,
      { strong: `${Math.round(least)} dB` },
      ' are enough. A bearing from here is worth something.',
    ];
  return [
    `${place[0]!.toUpperCase()}${place.slice(1)} it takes `,
    { strong: `${moreDb} dB more` },
    ` than on the crest.${now.audible ? '' : ' Now nothing is heard:'} The same transmitter, ${WALK_M - settings.walkM} m of walking away.`,
  ];
}

function chart({ settings }: Listened): Chart {
  const least = leastAtWalk(settings.walkM);
  return {
    name: 'Gain that just hears it',
    x: { from: 0, to: WALK_M, name: 'walked uphill', unit: 'm', at: [0, 100, 200, 300] },
    y: { from: 0, to: 90, name: 'least gain', unit: 'dB', at: [0, 30, 60, 90] },
    lines: [{ kind: 'heard', name: 'least gain', points: curveOf() }],
    dots: least === null ? [] : [{ kind: 'now', name: `${Math.round(least)} dB here`, x: settings.walkM, y: least }],
  };
}

function picture({ settings }: Listened): Picture {
  const away = awayAt(settings.walkM);
  const ground = Array.from({ length: 121 }, (_, i): Spot => [-60 + i * 15, heightAway(-60 + i * 15)]);
  const you: Spot = [away, heightAway(away) + CHEST_M];
  return {
    view: 'section',
    from: [-60, -18],
    to: [HOLLOW_M + 90, 105],
    said: `From the side: the transmitter on the plain at the left, a hill, you ${placeWord(settings.walkM)} behind it.`,
    ground,
    marks: [
      { kind: 'wave', points: stringOver(ground, [0, 1], you), wave: 'direct', strength: 1 },
      { kind: 'tag', at: [0, 1] },
      { kind: 'you', at: you, now: true },
      { kind: 'words', at: [-40, 11], text: 'transmitter' },
      {
        kind: 'words',
        at: [Math.min(away, HILL.crestM) - 330, away < HILL.crestM + 60 ? HILL.heightM + 18 : -13],
        text: placeWord(settings.walkM),
      },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const at = (walkM: number, gainDb: number): Settings => ({ ...start, walkM, gainDb });
  const swap = random() < 0.5;
  const gainDb = Math.round(leastAtWalk(WALK_M)!) + oneOf([14, 18], random);
  const named = (places: readonly number[]) => places.map((walkM, i) => ({ name: ['First', 'Second'][i]!, settings: at(walkM, gainDb) }));
  const low = oneOf([0, 20, 40], random);
  const settings = at(low, gainDb);
  const heard = heardAt(air(settings), settings, 0);
  const half = oneOf([120, 160, 200], random);
  return [
    whichIsLoudest(
      'The same gain from two places. Which is higher up?',
      air,
      named(swap ? [WALK_M, low] : [low, WALK_M]),
      'No ear can say',
    ),
    yesOrNo(
      'The gain of the crest, taken down into the hollow. Do you still hear it?',
      [
        { name: 'Crest', settings: at(WALK_M, gainDb) },
        { name: 'Hollow', settings },
      ],
      heard.audible,
      `The hollow takes ${Math.round(leastAtWalk(low)! - leastAtWalk(WALK_M)!)} dB more than the crest`,
    ),
    whichIsLoudest(
      'Half way up and on the crest. Which is the crest?',
      air,
      named(swap ? [half, WALK_M] : [WALK_M, half]),
      'No ear can say',
    ),
  ];
}

export const clearView: Demonstration = {
  id: 'clear-view',
  title: 'Clear view',
  scene: 'the same transmitter from the hollow, the slope and the crest',
  listenFor: 'Walk up the hill without touching the gain: when does the beep come, and how loud is it on top?',
  start,
  dials: [{ key: 'walkM', name: 'Uphill', from: 0, to: WALK_M, step: 20, unit: 'm' }],
  air,
  says,
  ways: [
    { name: 'In the hollow', sets: { walkM: 0 } },
    { name: 'On the crest', sets: { walkM: WALK_M } },
  ],
  picture,
  chart,
  ahead: () => PLACES_M.map((walkM) => () => leastAtWalk(walkM)),
  talkingPoints: [
    'Before the first bearing, look round: from where would you see most of the ground? Go there first.',
    'Three hundred metres of walking are worth more than any antenna.',
    'Nothing heard in a hollow means nothing. Don’t strike ground off from there.',
    'A strong signal on high ground is a bearing; a weak one from below may be any hillside’s.',
  ],
  handoutGainsDb: [75, 60, 45, 30],
  questions,
  caution: 'Outdoors, mind steep ground and edges: a fall costs more than any find.',
};
