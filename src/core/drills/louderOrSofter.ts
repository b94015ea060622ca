import { heardAt } from '../listening/air';
import { FIRST_SETTINGS, type Settings } from '../listening/settings';
import { wrapBearingDeg } from '../units/angles';
import { drawn, whereReaches } from './drawn';
import type { Drill, Trial } from './drill';
import { plainView, viewFromAbove } from './plainView';

/** As far as the lobe falls off steadily, degrees. */
const FARTHEST_DEG = 125;

function draw(seed: string, level: number): Trial {
  const by = drawn(seed);
  const view = plainView(by, { fromM: 150, toM: 1_200, antennas: ['yagi3', 'yagi2'] });
  const gainDb = Math.round(view.leastDb() + by.between(14, 28));
  const [offDeg, way] = [by.between(0, 20), by.side()];
  const facing = (deg: number): Settings => ({ ...FIRST_SETTINGS, gainDb, headingDeg: wrapBearingDeg(view.bearingDeg + way * deg) });
  const levelAt = (deg: number) => heardAt(view.air, facing(deg), facing(deg).headingDeg).levelDb;
  const farDeg = whereReaches(levelAt(offDeg) - level, offDeg, FARTHEST_DEG, levelAt);
  const stepDb = levelAt(offDeg) - levelAt(farDeg);
  const louderFirst = by.side() > 0;
  const order = louderFirst ? [offDeg, farDeg] : [farDeg, offDeg];
  return {
    level: stepDb,
    ask: 'The antenna turned a little between two beeps. Which was the louder one?',
    hint: 'Do not think about it: the first impression of loudness is the best one there is.',
    start: facing(order[0]!),
    dials: [],
    takes: order.map((deg, i) => ({ name: ['First', 'Second'][i]!, settings: facing(deg) })),
    air: () => view.air,
    answer: { kind: 'choice', choices: ['First', 'Second'] },
    judge(answer) {
      const ok = answer.kind === 'choice' && answer.choice === (louderFirst ? 0 : 1);
      return {
        right: ok,
        error: ok ? 0 : 1,
        because: `${louderFirst ? 'The first' : 'The second'} was louder: it pointed nearer to the transmitter`,
      };
    },
    truth: {
      settings: facing(offDeg),
      said: `${Math.round(farDeg - offDeg)}° of turn made ${stepDb.toFixed(1)} dB.`,
      picture: viewFromAbove(view, `Plan: the transmitter at ${view.bearingDeg} degrees.`),
    },
  };
}

export const louderOrSofter: Drill = {
  id: 'louder-or-softer',
  title: 'Louder or softer',
  skill: 'hear small steps of loudness from beep to beep',
  unit: 'dB',
  measures: 'of difference heard',
  ladder: { hardest: 0.3, easiest: 12, first: 5, step: 1, ratio: false },
  kind: 'choose',
  guess: 0.5,
  trials: 12,
  example: [
    'You hear two beeps. Between them the antenna turned a little, so one comes in more strongly.',
    'Say which was the louder one. The pair can be played again.',
    'Every sweep is made of such pairs: who hears 2 dB finds the edges of the arc, who needs 6 dB finds a quarter of the horizon.',
  ],
  draw,
  says: (number) =>
    `You hear a step of ${number.toFixed(1)} dB from one beep to the next. ${
      number <= 2
        ? 'That is about as fine as single short beeps allow.'
        : 'Listen in a quieter place, and lower the volume: loud sounds blur steps.'
    }`,
};
