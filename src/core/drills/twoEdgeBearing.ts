import { FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import { drawn } from './drawn';
import type { Drill, Trial } from './drill';
import { plainView, viewFromAbove } from './plainView';

function draw(seed: string, level: number, listener: { readonly thresholdDb: number }): Trial {
  const by = drawn(seed);
  const view = plainView(by, { fromM: 200, toM: 2_000, antennas: ['yagi3', 'yagi2'] });
  const leastDb = view.leastDb(listener);
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: Math.round(wrapBearingDeg(view.bearingDeg + by.side() * by.between(30, 170))),
    gainDb: onDial(GAIN, leastDb + by.between(6, 34)),
  };
  return {
    level,
    ask: `Take the bearing: within ${level.toFixed(level < 10 ? 1 : 0)}°.`,
    hint: 'Lower the gain to about 10 dB over just heard. Find where the beep goes on one side, then on the other: half way between is the bearing.',
    start,
    dials: [HEADING, GAIN],
    air: () => view.air,
    answer: { kind: 'setting', deed: 'Mark the bearing' },
    judge(answer) {
      if (answer.kind !== 'setting') return { right: false, error: 180, because: '' };
      const offDeg = turnDeg(view.bearingDeg, answer.settings.headingDeg);
      const side = offDeg > 0 ? 'right' : 'left';
      const back = Math.abs(offDeg) > 120 ? ': that was the back signal' : '';
      return {
        right: Math.abs(offDeg) <= level,
        error: Math.abs(offDeg),
        because: Math.abs(offDeg) < 0.5 ? 'Straight at it' : `${Math.abs(offDeg).toFixed(0)}° too far to the ${side}${back}`,
      };
    },
    truth: {
      settings: { ...start, headingDeg: view.bearingDeg, gainDb: onDial(GAIN, leastDb + 10) },
      said: `The transmitter was at ${view.bearingDeg}°.`,
      picture: viewFromAbove(view, `Plan: the transmitter at ${view.bearingDeg} degrees.`),
    },
  };
}

export const twoEdgeBearing: Drill = {
  id: 'two-edge-bearing',
  title: 'Two-edge bearing',
  skill: 'halve the arc between the two edges of the beep',
  unit: '°',
  measures: 'of bearing error',
  ladder: { hardest: 1, easiest: 40, first: 12, step: 1.3, ratio: true },
  kind: 'set',
  guess: 0,
  trials: 6,
  example: [
    'Bring the gain to about 10 dB over just heard: loud enough to be sure, soft enough to have edges.',
    'Turn slowly to the right until the beep is gone. Remember that heading.',
    'Turn back through the loud part and on to the left until it is gone again.',
    'Half way between the two edges is the bearing. Point there and mark it.',
  ],
  draw,
  says: (number) =>
    `Half of your bearings were within ${number.toFixed(1)}°. ${
      number <= 4 ? 'As good as the hand antenna allows.' : 'Less gain makes the arc narrower and its middle easier to find.'
    }`,
};
