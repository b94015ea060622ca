import { type Air, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce } from './madeOnce';
import type { Picture } from './picture';
import { oneOf, type Question, whichIsLoudest } from './question';
import { FIRST_SETTINGS, ROLL, type Settings } from './settings';
import { makeSmallScene } from './smallScene';

const AHEAD_M = 300;
const EIRP_DBM = 6;
const LEANS_DEG = [0, 45, 90] as const;
const LEAN_WORDS = ['upright', 'leaning', 'lying'] as const;
const ROLL_STEP_DEG = 45;

const TAG = { eM: 500, nM: 800 };
/** The whip leans across the line of sight: to the listener's right. */
const scenes = LEANS_DEG.map((leanDeg) => madeOnce(() => makeSmallScene({ sizeM: 1_000, tag: { at: TAG, leanDeg, towardDeg: 90 } })));
const air = keptBy(
  ({ choice }) => choice,
  ({ choice }): Air => makeAir({ waves: [scenes[choice]!().direct({ eM: TAG.eM, nM: TAG.nM - AHEAD_M })], eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 30 };

const ROLLS_DEG = Array.from({ length: 37 }, (_, i) => 5 * i);

/** What the antenna loses straight ahead against its best roll, dB, and that roll. */
export function axisLoss(settings: Settings, rollDeg = settings.rollDeg): { readonly lossDb: number; readonly bestRollDeg: number } {
  const here = air(settings);
  const bestRollDeg = ROLLS_DEG.reduce((best, deg) => (here.powerDbm(0, deg) > here.powerDbm(0, best) ? deg : best), 0);
  return { lossDb: here.powerDbm(0, bestRollDeg) - here.powerDbm(0, rollDeg), bestRollDeg };
}

const heldWord = (rollDeg: number): string => (rollDeg < 20 ? 'flat' : rollDeg > 70 ? 'upright' : 'between');

function says({ settings, now }: Listened): readonly Piece[] {
  const { lossDb, bestRollDeg } = axisLoss(settings);
  const whip = LEAN_WORDS[settings.choice]!;
  if (lossDb < 1)
    return [
      'The whip is ',
      { strong: whip },
      ' and the antenna is held ',
      { strong: heldWord(settings.rollDeg) },
      ': this is the best there is.',
    ];
  const heard = now.audible ? '' : ' The beep is gone.';
  return [
    `The whip is ${whip}, the antenna ${heldWord(settings.rollDeg)}: that costs `,
    { strong: `${Math.round(lossDb)} dB` },
    `.${heard} Turn the wrist: it is best held ${heldWord(bestRollDeg > 90 ? 180 - bestRollDeg : bestRollDeg)}.`,
  ];
}

function chart({ settings }: Listened): Chart {
  const here = air(settings);
  const { bestRollDeg } = axisLoss(settings);
  const best = here.powerDbm(0, bestRollDeg);
  const at = (deg: number) => here.powerDbm(0, deg) - best;
  const rolls = ROLLS_DEG.filter((deg) => deg <= 90);
  return {
    name: 'What the axis costs',
    x: { from: 0, to: 90, name: 'flat to upright', unit: 'degrees', at: [0, 45, 90] },
    y: { from: -30, to: 3, name: 'against the best', unit: 'dB', at: [-30, -20, -10, 0] },
    lines: [{ kind: 'heard', name: 'axis', points: rolls.map((deg) => [deg, at(deg)] as const) }],
    dots: [{ kind: 'now', name: `${Math.round(at(settings.rollDeg))} dB now`, x: settings.rollDeg, y: at(settings.rollDeg) }],
  };
}

function picture({ settings }: Listened): Picture {
  const leanDeg = LEANS_DEG[settings.choice]!;
  return {
    view: 'section',
    name: 'From behind you',
    from: [-3, -0.7],
    to: [3, 4.3],
    said: `Seen from behind you: the whip ${LEAN_WORDS[settings.choice]}, the antenna held ${heldWord(settings.rollDeg)}.`,
    ground: [
      [-3, 0],
      [3, 0],
    ],
    marks: [
      {
        kind: 'wave',
        points: [
          [1.15, 1.5],
          [-0.75, 1.5],
        ],
        wave: 'direct',
        strength: 1,
      },
      { kind: 'rods', at: [-1.6, 1.7], leanDeg: 90 - settings.rollDeg },
      { kind: 'words', at: [-2.7, 3.4], text: 'your antenna' },
      { kind: 'tag', at: [1.7, 1.4], leanDeg },
      { kind: 'words', at: [0.9, 3.4], text: 'its whip' },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const held = (choice: number, rollDeg: number): Settings => ({ ...start, choice, rollDeg });
  const ask = (choice: number, names: readonly [string, string]): Question => {
    const swap = random() < 0.5;
    const rolls = swap ? [90, 0] : [0, 90];
    return whichIsLoudest(
      `${names[0]}. Two ways of holding: which fits it?`,
      air,
      rolls.map((rollDeg, i) => ({ name: ['First', 'Second'][i]!, settings: held(choice, rollDeg) })),
      names[1],
    );
  };
  const odd = oneOf([0, 2], random);
  return [
    ask(odd, ['A hidden whip', 'No difference']),
    ask(odd === 0 ? 2 : 0, ['Another hidden whip', 'No difference']),
    ask(1, ['A third whip', 'Both alike']),
  ];
}

export const axis: Demonstration = {
  id: 'axis',
  title: 'Axis',
  scene: `one transmitter, ${AHEAD_M} m ahead, its whip upright, leaning or lying`,
  listenFor: 'Turn the wrist, not the feet: the same beep swells and fades as the rods fall in with the whip.',
  start,
  dials: [
    { ...ROLL, step: ROLL_STEP_DEG, choices: ['flat', 'between', 'upright'] },
    { key: 'choice', name: 'Its whip', from: 0, to: 2, step: 1, unit: '', choices: LEAN_WORDS },
  ],
  air,
  says,
  ways: [
    { name: 'Along the axis', sets: { rollDeg: 90, choice: 0 } },
    { name: 'Across it', sets: { rollDeg: 0, choice: 0 } },
  ],
  picture,
  chart,
  talkingPoints: [
    'Nobody knows how the animal lies. Hear it on both axes before you believe that it is faint.',
    'Ninety degrees cost about as much as a hundredfold weaker transmitter: what is left comes in by the feed line.',
    'A whip that leans is still best upright out here: over open ground the upright part of its wave travels better.',
    'A lying whip is some 14 dB weaker even on its own axis. Faint on both axes may still be near.',
  ],
  handoutGainsDb: [60, 40, 30, 20],
  questions,
};
