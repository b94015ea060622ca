import { FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { wrapBearingDeg } from '../units/angles';
import { drawn } from './drawn';
import type { Drill, Trial } from './drill';
import { plainView, viewFromAbove } from './plainView';

const DISTANCE_M = { from: 150, to: 2_500 } as const;

/** How far off an amount is from the truth, %, alike for half and for double. */
const offPercent = (said: number, truth: number): number => 100 * (Math.exp(Math.abs(Math.log(said / truth))) - 1);

function draw(seed: string, level: number, listener: { readonly thresholdDb: number }): Trial {
  const by = drawn(seed);
  const woodM = by.oneOf([0, 0, 0, 120, 300]);
  const view = plainView(by, { fromM: Math.max(DISTANCE_M.from, woodM + 80), toM: DISTANCE_M.to, woodM });
  const leastDb = view.leastDb(listener);
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: Math.round(wrapBearingDeg(view.bearingDeg + by.side() * by.between(10, 60))),
    gainDb: onDial(GAIN, leastDb + by.between(15, 40)),
  };
  const between = woodM === 0 ? 'Open ground lies between' : `About ${woodM} m of wood lie between`;
  return {
    level,
    ask: `${between}. How far is it? Within ${Math.round(level)} %.`,
    hint: 'Find the gain that just hears it. In the open 10 dB mean about 500 m and every 12 dB more twice as far; 300 m of wood take 8 dB, 100 m take 4.',
    start,
    dials: [HEADING, GAIN],
    air: () => view.air,
    answer: { kind: 'amount', name: 'Distance', from: 100, to: 4_000, unit: 'm' },
    judge(answer) {
      if (answer.kind !== 'amount') return { right: false, error: 900, because: '' };
      const error = offPercent(answer.amount, view.distanceM);
      return {
        right: error <= level,
        error,
        because: `You said ${answer.amount} m: ${Math.round(error)} % off`,
      };
    },
    truth: {
      settings: { ...start, headingDeg: view.bearingDeg, gainDb: onDial(GAIN, leastDb) },
      said: `${Math.round(leastDb)} dB just heard it over ${Math.round(view.distanceM / 10) * 10} m${woodM ? ` with ${woodM} m of wood` : ''}.`,
      picture: viewFromAbove(view, `Plan: the transmitter ${Math.round(view.distanceM)} metres off.`),
    },
  };
}

export const howFar: Drill = {
  id: 'how-far',
  title: 'How far',
  skill: 'read the distance from the gain that just hears it',
  unit: '%',
  measures: 'of distance error',
  ladder: { hardest: 8, easiest: 300, first: 80, step: 1.3, ratio: true },
  kind: 'set',
  guess: 0,
  trials: 5,
  example: [
    'Point at the loudest side and take gain away until the beep is only just heard. Read the number.',
    'For this tag in the open: about 10 dB at 500 m, 22 dB at 1,000 m, 34 dB at 2,000 m. Every 12 dB more is twice as far.',
    'A wood takes up to 10 dB and then no more: take them off before you read.',
    'Learn your own table: it holds for this ear, this tag and this antenna.',
  ],
  draw,
  says: (number) =>
    `Half of your distances were within ${Math.round(number)} %. ${
      number <= 35
        ? 'Better than that, gain does not say.'
        : 'Find the faint edge with more care: 6 dB off is a distance off by four tenths.'
    }`,
};
