import { heardAt } from '../listening/air';
import { FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { wrapBearingDeg } from '../units/angles';
import { drawn, whereReaches } from './drawn';
import type { Drill, Trial } from './drill';
import { frontToBackDb, plainView, viewFromAbove } from './plainView';

/** So near that full gain leaves next to nothing of the difference, so far that quiet gain is on the knob. */
const DISTANCE_M = { from: 110, to: 260 } as const;

function draw(seed: string, level: number): Trial {
  const by = drawn(seed);
  const view = plainView(by, { fromM: DISTANCE_M.from, toM: DISTANCE_M.to, antennas: ['yagi3', 'yagi2', 'phased2'] });
  const at = (gainDb: number): Settings => ({ ...FIRST_SETTINGS, gainDb });
  const gainDb = whereReaches(level, 20, 90, (db) => frontToBackDb(view, at(db)));
  const leftDb = frontToBackDb(view, at(gainDb));
  const trueFirst = by.side() > 0;
  const [a, b] = [0, 180].map((off) => wrapBearingDeg(view.bearingDeg + off + (trueFirst ? 0 : 180))) as [number, number];
  const start = { ...at(gainDb), headingDeg: a };
  const right = trueFirst ? 0 : 1;
  return {
    level: leftDb,
    ask: 'The knob is stuck and the gain is too high. On which side is the transmitter?',
    hint: 'Three beeps on one side, then turn right round and listen to three on the other. The true side is a shade louder.',
    start,
    dials: [HEADING],
    marks: () => [
      { name: 'A', deg: a },
      { name: 'B', deg: b },
    ],
    air: () => view.air,
    answer: { kind: 'choice', choices: ['A', 'B'] },
    judge(answer) {
      const ok = answer.kind === 'choice' && answer.choice === right;
      const loud = heardAt(view.air, start, view.bearingDeg).flatOut ? 'Both sides were near flat out' : 'Both sides were loud';
      return { right: ok, error: ok ? 0 : 1, because: `${loud}: ${leftDb.toFixed(1)} dB were left between them` };
    },
    truth: {
      settings: { ...start, headingDeg: view.bearingDeg, gainDb: onDial(GAIN, view.leastDb() + 10) },
      said: 'With less gain only one side would have been left.',
      picture: viewFromAbove(view, `Plan: the transmitter at ${view.bearingDeg} degrees.`),
    },
  };
}

export const frontOrBack: Drill = {
  id: 'front-or-back',
  title: 'Front or back',
  skill: 'tell the true side when the gain is too high',
  unit: 'dB',
  measures: 'of front-to-back left',
  ladder: { hardest: 0.3, easiest: 12, first: 6, step: 1, ratio: false },
  kind: 'choose',
  guess: 0.5,
  trials: 8,
  example: [
    'Two sides are marked on the dial, A and B, one in front of the transmitter and one behind it.',
    'Turn the antenna to one of them and count three beeps. Then turn right round and count three there.',
    'The true side is the louder one. The receiver squeezes loud beeps together, so the difference may be small.',
    'Outdoors you would take gain away first. Here the knob is stuck, so that the ear has to do it.',
  ],
  draw,
  says: (number) =>
    number <= 2
      ? `You tell front from back with only ${number.toFixed(1)} dB left between them. Now trust less gain outdoors all the same.`
      : `You tell front from back when ${number.toFixed(1)} dB are left. Count more beeps on each side before you choose.`,
};
