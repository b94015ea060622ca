import { COVER } from '../world/world';
import { type Air, heardAt, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { leastGainHere } from './leastGainHere';
import { madeOnceFor } from './madeOnce';
import { type Picture, type Spot, stringOver } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { makeSmallScene, type SmallScene } from './smallScene';

const EIRP_DBM = 6;
const FARTHEST_M = 3_000;
const GROUNDS = ['in view', 'a wood', 'a ridge'] as const;
/** The wood lies from 40 to 440 m before the tag; the ridge's crest 450 m before it, 20 degrees steep. */
const WOOD_M = { from: 40, to: 440 } as const;
const RIDGE = { crestM: 450, heightM: 118, halfWidthM: 280 } as const;

const TAG = { eM: 400, nM: 3_300 };
const beforeTag = (nM: number): number => TAG.nM - nM;
const ridgeM = (away: number): number => RIDGE.heightM * Math.exp(-(((away - RIDGE.crestM) / RIDGE.halfWidthM) ** 2));

/** The three grounds, each made when it is first asked for. */
const sceneOf = madeOnceFor((choice: number): SmallScene => {
  const ground = { sizeM: 3_400, cellM: 20, tag: { at: TAG } };
  const inWood = (nM: number) => beforeTag(nM) >= WOOD_M.from && beforeTag(nM) <= WOOD_M.to;
  if (choice === 1) return makeSmallScene({ ...ground, cover: (_e, nM) => (inWood(nM) ? COVER.wood : COVER.open) });
  return makeSmallScene(choice === 2 ? { ...ground, heightM: (_e, nM) => 100 + ridgeM(beforeTag(nM)) } : ground);
});

const air = keptBy(
  ({ choice, walkM }) => `${choice}/${walkM}`,
  ({ choice, walkM }): Air => makeAir({ waves: [sceneOf(choice).direct({ eM: TAG.eM, nM: TAG.nM - walkM })], eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 40, walkM: 1_000 };

/** Gain that just hears it straight ahead, upright, at a distance over one of the grounds; null where none does. */
export const leastAtM = (choice: number, walkM: number): number | null => leastOver(choice)(walkM);
const leastOver = madeOnceFor((choice: number) =>
  madeOnceFor((walkM: number) => {
    const here = air({ ...start, choice, walkM });
    return leastGainHere(here, Math.max(here.powerDbm(0, 90), here.powerDbm(0, 0)));
  }),
);

const DISTANCES_M = Array.from({ length: 21 }, (_, i) => Math.round(125 * 2 ** (i / 4))).filter((m) => m <= FARTHEST_M);
const lookedAt = new Set<number>();
function curveOf(choice: number): readonly (readonly [number, number])[] {
  lookedAt.add(choice);
  return DISTANCES_M.flatMap((m) => {
    const least = leastAtM(choice, m);
    return least === null ? [] : [[m, least] as const];
  });
}

/** Distance in plain view that would need the same gain, metres. */
export function inViewLikeM(leastDb: number): number {
  const open = curveOf(0);
  const beyond = open.findIndex(([, gainDb]) => gainDb >= leastDb);
  if (beyond < 0) return FARTHEST_M;
  if (beyond === 0) return open[0]![0];
  const [[m0, g0], [m1, g1]] = [open[beyond - 1]!, open[beyond]!];
  return m0 * (m1 / m0) ** ((leastDb - g0) / (g1 - g0));
}

function says({ settings }: Listened): readonly Piece[] {
  const least = leastAtM(settings.choice, settings.walkM);
  const where = `${settings.walkM} m ${['in plain view', 'through a wood', 'behind a ridge'][settings.choice]}`;
  if (least === null) return [`At ${where} it is `, { strong: 'not to be heard' }, ' at any gain.'];
  const needs: Piece = { strong: `${Math.round(least)} dB` };
  if (settings.choice === 0)
    return [`At ${where} it takes `, needs, ' to just hear it. Twice as far takes about 12 dB more: gain tells distance.'];
  const likeM = Math.round(inViewLikeM(least) / 50) * 50;
  const like = likeM >= FARTHEST_M ? `more than ${FARTHEST_M} m` : `${likeM} m`;
  return [
    `At ${where} it takes `,
    needs,
    ', as much as ',
    { strong: `${like} in view` },
    '. Gain tells distance only where nothing stands between.',
  ];
}

function chart({ settings }: Listened): Chart {
  const least = leastAtM(settings.choice, settings.walkM);
  return {
    name: 'Gain that just hears it',
    x: { from: 125, to: 3_200, name: 'distance', unit: 'm', at: [125, 250, 500, 1000, 2000], octaves: true },
    y: { from: -10, to: 90, name: 'least gain', unit: 'dB', at: [0, 30, 60, 90] },
    // The plain view, and whatever else has been looked at: a ridge costs a march over its ground before its line is known.
    lines: GROUNDS.map((name, choice) => ({ name, choice }))
      .filter(({ choice }) => choice === 0 || choice === settings.choice || lookedAt.has(choice))
      .map(({ name, choice }) => ({
        kind: choice === settings.choice ? ('heard' as const) : ('law' as const),
        name,
        points: curveOf(choice),
      })),
    dots: least === null ? [] : [{ kind: 'now', name: `${Math.round(least)} dB`, x: settings.walkM, y: least }],
  };
}

function picture({ settings }: Listened): Picture {
  const { walkM, choice } = settings;
  const height = (x: number) => (choice === 2 ? ridgeM(x) : 0);
  const steps = Array.from({ length: 101 }, (_, i) => (walkM * 1.16 * i) / 100 - walkM * 0.08);
  const [tag, you]: readonly [Spot, Spot] = [
    [0, height(0) + 1],
    [walkM, height(walkM) + 2],
  ];
  const ground = steps.map((x): Spot => [x, height(x)]);
  return {
    view: 'section',
    from: [-walkM * 0.08, -26],
    to: [walkM * 1.08, 175],
    said: `From the side: the transmitter at the left, you ${walkM} metres off, ${GROUNDS[choice]} between.`,
    ground,
    marks: [
      ...(choice === 1 ? ([{ kind: 'outline', land: 'wood', points: woodBetween(walkM) }] as const) : []),
      { kind: 'wave', points: stringOver(ground, tag, you), wave: 'direct', strength: 1 },
      { kind: 'tag', at: tag },
      { kind: 'you', at: you, now: true },
      { kind: 'words', at: [walkM * 0.62, -19], text: `you, ${walkM} m off` },
      { kind: 'words', at: [-walkM * 0.06, -19], text: 'transmitter' },
    ],
  };
}

function woodBetween(walkM: number): readonly Spot[] {
  const toM = Math.min(WOOD_M.to, walkM * 0.97);
  return [
    [WOOD_M.from, 0],
    [WOOD_M.from, 12],
    [toM, 12],
    [toM, 0],
  ];
}

function questions(random: () => number): readonly Question[] {
  const at = (walkM: number, choice: number, gainDb: number): Settings => ({ ...start, walkM, choice, gainDb });
  const nearM = oneOf([400, 500, 600], random);
  const swap = random() < 0.5;
  const gainDb = Math.round(leastAtM(0, 2 * nearM)!) + 8;
  const pair = (swap ? [2 * nearM, nearM] : [nearM, 2 * nearM]).map((m, i) => ({
    name: ['First', 'Second'][i]!,
    settings: at(m, 0, gainDb),
  }));
  const hiddenM = oneOf([800, 1_000, 1_500], random);
  const moreDb = oneOf([10, 20, 50], random);
  const hidden = at(hiddenM, 2, Math.round(leastAtM(0, hiddenM)!) + moreDb);
  const heard = heardAt(air(hidden), hidden, 0);
  const swapped = random() < 0.5;
  const enoughDb = Math.round(leastAtM(0, hiddenM)!) + 14;
  const grounds = (swapped ? [2, 0] : [0, 2]).map((choice, i) => ({
    name: ['First', 'Second'][i]!,
    settings: at(hiddenM, choice, enoughDb),
  }));
  return [
    whichIsLoudest('Two distances in plain view, the same gain. Which is the nearer one?', air, pair, 'No ear can say'),
    yesOrNo(
      `${hiddenM} m away, with ${moreDb} dB more than it takes in view, but behind a ridge. Do you hear it?`,
      [{ name: 'Behind the ridge', settings: hidden }],
      heard.audible,
      `The ridge takes ${Math.round(leastAtM(2, hiddenM)! - leastAtM(0, hiddenM)!)} dB`,
    ),
    whichIsLoudest('The same distance twice, once in view. Which is in view?', air, grounds, 'No ear can say'),
  ];
}

export const howFar: Demonstration = {
  id: 'how-far',
  title: 'How far',
  scene: 'gain for “just heard”, against distance',
  listenFor: 'Lower the gain until the beep is only just there, and read the number: how far does it say?',
  start,
  dials: [
    { key: 'walkM', name: 'Distance', from: 200, to: FARTHEST_M, step: 100, unit: 'm' },
    { key: 'choice', name: 'Between', from: 0, to: 2, step: 1, unit: '', choices: GROUNDS },
  ],
  air,
  says,
  ways: [
    { name: 'In view', sets: { choice: 0 } },
    { name: 'Behind a ridge', sets: { choice: 2 } },
  ],
  picture,
  chart,
  ahead: ({ choice }) => [...new Set([0, choice])].flatMap((ground) => DISTANCES_M.map((m) => () => leastAtM(ground, m))),
  talkingPoints: [
    'Find the gain that just hears it, antenna at its best: that number is your distance, in view only.',
    'Twice as far in view costs 12 dB over ground, not 6.',
    'A wood takes up to 10 dB and then no more; a ridge takes 15 to 40, most of it close under its far side.',
    'So a faint beep is far away or badly placed. Go where you can see, then read the number again.',
  ],
  handoutGainsDb: [80, 60, 40, 20],
  questions,
};
