import { FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import { drawn } from './drawn';
import type { Drill, Move, Trial } from './drill';
import { plainView, viewFromAbove } from './plainView';

/** As in the habit "set, then sweep": a change of so much while the antenna turns cuts the sweep. */
const CUT_DB = 2;
const TURNING_DEG = 5;
const TOGETHER_S = 0.5;

/** How often the knob was turned while the antenna was turning. */
export function cutSweeps(moves: readonly Move[]): number {
  let cuts = 0;
  for (const [i, { atS, settings }] of moves.entries()) {
    const before = moves[i - 1]?.settings;
    if (!before || Math.abs(settings.gainDb - before.gainDb) < 1) continue;
    const near = moves.filter((move) => Math.abs(move.atS - atS) <= TOGETHER_S);
    const turned = near.reduce(
      (sum, move, j) => sum + Math.abs(j === 0 ? 0 : turnDeg(near[j - 1]!.settings.headingDeg, move.settings.headingDeg)),
      0,
    );
    const gains = near.map((move) => move.settings.gainDb);
    if (turned >= TURNING_DEG && Math.max(...gains) - Math.min(...gains) >= CUT_DB) cuts++;
  }
  return cuts;
}

function draw(seed: string, level: number, listener: { readonly thresholdDb: number }): Trial {
  const by = drawn(seed);
  const view = plainView(by, { fromM: 350, toM: 2_400 });
  const leastDb = view.leastDb(listener);
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: Math.round(wrapBearingDeg(view.bearingDeg + by.side() * by.between(40, 150))),
    gainDb: onDial(GAIN, leastDb + by.between(28, 45)),
  };
  return {
    level,
    ask: `Find the loudest side, then the gain at which it is only just heard: within ${level.toFixed(level < 3 ? 1 : 0)} dB.`,
    hint: 'Sweep, stop, turn the knob, sweep again. Never both at once.',
    start,
    dials: [HEADING, GAIN],
    air: () => view.air,
    answer: { kind: 'setting', deed: 'Just heard' },
    judge(answer, moves) {
      if (answer.kind !== 'setting') return { right: false, error: 90, because: '' };
      const offDb = answer.settings.gainDb - leastDb;
      const cuts = cutSweeps(moves);
      const words = `Your gain was ${Math.abs(offDb).toFixed(1)} dB ${offDb >= 0 ? 'over' : 'under'} least gain`;
      return {
        right: Math.abs(offDb) <= level && cuts === 0,
        error: Math.abs(offDb),
        because: cuts > 0 ? `${words}, and the knob moved while the antenna turned` : words,
      };
    },
    truth: {
      settings: { ...start, headingDeg: view.bearingDeg, gainDb: onDial(GAIN, leastDb) },
      said: `Least gain was ${leastDb.toFixed(1)} dB with the antenna at ${view.bearingDeg}°.`,
      picture: viewFromAbove(view, `Plan: the transmitter at ${view.bearingDeg} degrees, ${Math.round(view.distanceM)} metres off.`),
    },
  };
}

export const faintEdge: Drill = {
  id: 'faint-edge',
  title: 'Find the faint edge',
  skill: 'bring the gain down to where the beep is only just heard',
  unit: 'dB',
  measures: 'off least gain',
  ladder: { hardest: 1, easiest: 24, first: 10, step: 1.3, ratio: true },
  kind: 'set',
  guess: 0,
  trials: 5,
  example: [
    'Turn the antenna once round and stop at the loudest side.',
    'Take gain away in large steps until the beep is gone, then give back a little until it is just there.',
    'Turn a little to both sides: if it is louder there, it was not yet the loudest side. Take more gain away.',
    'Answer when it is only just heard on its best side. Turning the knob while the antenna turns spoils the sweep and counts as a miss.',
  ],
  draw,
  says: (number) =>
    `Half of your settings were within ${number.toFixed(1)} dB of least gain. ${
      number <= 4
        ? 'That is the gain to begin a sweep with, a little over.'
        : 'Go on taking gain away until it is really gone, then come back up.'
    }`,
};
