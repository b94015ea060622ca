import { COVER } from '../world/world';
import { type Air, type Heard, heardAt, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce } from './madeOnce';
import type { Picture } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { CHEST_M, makeSmallScene } from './smallScene';

const EIRP_DBM = 6;
const AHEAD_M = 250;
const WALK_M = 10;
const STEP_M = 0.25;
/** "A step aside" goes at most this far. */
export const ASIDE_M = 2;

const TAG = { eM: 300, nM: 500 };
/** A line of ten metres chosen because it holds one deep fade. */
const HOME = { eM: 252, nM: 255 };
const scene = madeOnce(() => makeSmallScene({ sizeM: 600, tag: { at: TAG }, cover: () => COVER.wood }));
const air = keptBy(
  ({ walkM }) => walkM,
  ({ walkM }): Air =>
    makeAir({ waves: scene().airspace.arrivalsAt({ eM: HOME.eM + walkM, nM: HOME.nM }, CHEST_M).waves, eirpDbm: EIRP_DBM }),
);

export const PLACES_M: readonly number[] = Array.from({ length: WALK_M / STEP_M + 1 }, (_, i) => i * STEP_M);
const PLAIN: Settings = { ...FIRST_SETTINGS, gainDb: 20 };

/** The beep straight ahead at a place of the walk. */
export const heardAtPlace = (settings: Settings, walkM: number): Heard => {
  const there = { ...settings, walkM };
  return heardAt(air(there), there, settings.headingDeg);
};

/** The deepest fade of the walk, and the best place within a step of it: what the model says, held to it by a test, since finding them costs the whole walk. */
export const FADE_M = 5.25;
export const BACK_ON_M = 3.75;
const start: Settings = { ...PLAIN, walkM: FADE_M };

/** Loudest within a step aside of a place. */
function bestAside(settings: Settings): { readonly heard: Heard; readonly walkM: number } {
  let best = { heard: heardAtPlace(settings, settings.walkM), walkM: settings.walkM };
  for (const walkM of PLACES_M) {
    if (Math.abs(walkM - settings.walkM) > ASIDE_M) continue;
    const heard = heardAtPlace(settings, walkM);
    if (heard.driveDb > best.heard.driveDb) best = { heard, walkM };
  }
  return best;
}

const bearingRad = ({ walkM }: Settings): number => Math.atan2(TAG.eM - HOME.eM - walkM, TAG.nM - HOME.nM);

const metres = (m: number): string => `${m.toFixed(m % 1 === 0 ? 0 : 1)} m`;

function says({ settings }: Listened): readonly Piece[] {
  const here = heardAtPlace({ ...settings, headingDeg: 0 }, settings.walkM);
  const best = bestAside({ ...settings, headingDeg: 0 });
  const gainedDb = Math.round(best.heard.driveDb - here.driveDb);
  if (gainedDb < 3)
    return ['This is a good spot: ', { strong: 'no step aside is louder' }, '. A step further it may fade again, so keep moving.'];
  const away = metres(Math.abs(best.walkM - settings.walkM));
  if (!here.audible)
    return [
      'Here the beep has ',
      { strong: 'died' },
      `. ${away} aside it is back: `,
      { strong: `${gainedDb} dB more` },
      '. The transmitter has not moved.',
    ];
  return [`${away} aside it is `, { strong: `${gainedDb} dB louder` }, '. Waves off the trunks add up there and cancel here.'];
}

function chart({ settings }: Listened): Chart {
  const ahead = { ...settings, headingDeg: 0 };
  const points = PLACES_M.map((walkM) => [walkM, heardAtPlace(ahead, walkM).loudnessDb] as const);
  const now = heardAtPlace(ahead, settings.walkM).loudnessDb;
  return {
    name: 'Loudness along ten metres',
    x: { from: 0, to: WALK_M, name: 'walked aside', unit: 'm', at: [0, 2, 4, 6, 8, 10] },
    y: { from: -20, to: 60, name: 'over just heard', unit: 'dB', at: [-20, 0, 20, 40, 60] },
    lines: [{ kind: 'heard', name: 'loudness', points }],
    dots: [{ kind: 'now', name: 'here', x: settings.walkM, y: now }],
  };
}

const picture = ({ settings, air: here }: Listened): Picture => ({
  view: 'plan',
  from: [-7, -6],
  to: [17, 14],
  said: `Plan: woodland, you ${settings.walkM} metres along a line of ten, waves from every side.`,
  marks: [
    {
      kind: 'outline',
      land: 'wood',
      points: [
        [-7, -6],
        [17, -6],
        [17, 14],
        [-7, 14],
      ],
    },
    {
      kind: 'edge',
      points: [
        [0, 0],
        [WALK_M, 0],
      ],
    },
    ...here.waves
      .filter(({ kind }) => kind === 'scatter')
      .map(({ azimuthDeg }) => {
        const rad = (azimuthDeg * Math.PI) / 180;
        const from = [settings.walkM + 5 * Math.sin(rad), 5 * Math.cos(rad)] as const;
        return { kind: 'wave', points: [from, [settings.walkM, 0]], wave: 'scatter', strength: 0.15 } as const;
      }),
    {
      kind: 'wave',
      points: [
        [settings.walkM + 13.5 * Math.tan(bearingRad(settings)), 13.5],
        [settings.walkM, 0],
      ],
      wave: 'direct',
      strength: 1,
    },
    { kind: 'you', at: [settings.walkM, 0], now: true },
    { kind: 'words', at: [settings.walkM - 0.7, -5.4], text: 'you' },
    { kind: 'words', at: [settings.walkM + 3.2, 12], text: 'transmitter' },
  ],
});

function questions(random: () => number): readonly Question[] {
  const at = (walkM: number, gainDb = start.gainDb): Settings => ({ ...start, walkM, gainDb });
  const swap = random() < 0.5;
  const pair = (swap ? [BACK_ON_M, FADE_M] : [FADE_M, BACK_ON_M]).map((walkM, i) => ({
    name: ['First', 'Second'][i]!,
    settings: at(walkM),
  }));
  const spot = oneOf(PLACES_M, random);
  const here = heardAtPlace(at(spot), spot);
  const [near, far] = [oneOf(PLACES_M, random), oneOf(PLACES_M, random)];
  return [
    whichIsLoudest('Two spots within two metres. Which would you stand on?', air, pair, 'Either'),
    yesOrNo(
      'One spot of the ten metres. Is it heard there?',
      [{ name: 'The spot', settings: at(spot) }],
      here.audible,
      `At ${metres(spot)} it is ${here.audible ? `${Math.round(here.loudnessDb)} dB over` : `${Math.round(-here.loudnessDb)} dB under`} just heard`,
    ),
    whichIsLoudest(
      'Two spots drawn by chance. Which is louder?',
      air,
      [near, far].map((walkM, i) => ({ name: ['First', 'Second'][i]!, settings: at(walkM, start.gainDb + 10) })),
      'Alike',
    ),
  ];
}

export const stepAside: Demonstration = {
  id: 'a-step-aside',
  title: 'A step aside',
  scene: `in a wood, the transmitter ${AHEAD_M} m ahead`,
  listenFor: 'Walk the ten metres slowly, gain untouched: the beep swells and dies within a step or two.',
  start,
  dials: [{ key: 'walkM', name: 'Aside', from: 0, to: WALK_M, step: STEP_M, unit: 'm' }],
  air,
  says,
  ways: [
    { name: 'In the fade', sets: { walkM: FADE_M } },
    { name: 'A step aside', sets: { walkM: BACK_ON_M } },
  ],
  picture,
  chart,
  ahead: (settings) => PLACES_M.map((walkM) => () => heardAtPlace(settings, walkM)),
  talkingPoints: [
    'Before you call it lost: two steps left, two steps right. It costs five seconds.',
    'Half a wave is one metre here. Two metres aside is another sound.',
    'So track on the move: walking averages the fades that standing still hides.',
    'A single reading in a wood is a coin tossed. Take three, a few steps apart.',
  ],
  handoutGainsDb: [60, 40, 30, 20],
  questions,
};
