import { USUAL_LISTENER } from '../ear/loudness';
import { makeAir } from '../listening/air';
import { FIRST_SETTINGS, GAIN, onDial, ROLL, type Settings } from '../listening/settings';
import { makeSmallScene } from '../listening/smallScene';
import { wrapBearingDeg } from '../units/angles';
import { stepAlong } from '../units/frames';
import { drawn, whereReaches } from './drawn';
import { type Drill, planAround, type Trial } from './drill';
import { EIRP_DBM, leastUpright } from './plainView';

const CHOICES = ['Better flat', 'Better upright'] as const;

function draw(seed: string, level: number): Trial {
  const by = drawn(seed);
  const distanceM = by.scaled(150, 900);
  const bearingDeg = by.bearingDeg();
  const sizeM = Math.ceil((2 * distanceM + 200) / 20) * 20;
  const here = { eM: sizeM / 2, nM: sizeM / 2 };
  const at = stepAlong(here, bearingDeg, distanceM);
  const [heightM, side, uprightBetter] = [by.between(0.4, 1.2), by.side(), by.side() > 0];
  // Across the line of sight, so that the lean turns the wave and doesn't only weaken it.
  const towardDeg = wrapBearingDeg(bearingDeg + side * by.between(70, 110));
  const airOf = (leanDeg: number) => {
    const scene = makeSmallScene({ sizeM, cellM: 20, tag: { at, heightM, leanDeg, towardDeg } });
    return makeAir({ waves: [scene.direct(here)], eirpDbm: EIRP_DBM });
  };
  const uprightLessFlatDb = (leanDeg: number) => {
    const air = airOf(leanDeg);
    return air.powerDbm(bearingDeg, 90) - air.powerDbm(bearingDeg, 0);
  };
  const leanDeg = whereReaches(uprightBetter ? level : -level, 20, 90, uprightLessFlatDb);
  const air = airOf(leanDeg);
  const gapDb = air.powerDbm(bearingDeg, 90) - air.powerDbm(bearingDeg, 0);
  const leastDb = Math.min(leastUpright(air, bearingDeg, USUAL_LISTENER), leastUpright(air, bearingDeg, USUAL_LISTENER) + gapDb);
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: bearingDeg,
    gainDb: onDial(GAIN, leastDb + by.between(8, 40)),
    rollDeg: by.oneOf([0, 90]),
  };
  const best = gapDb > 0 ? 90 : 0;
  return {
    level: Math.abs(gapDb),
    ask: 'You point straight at it. Is its whip better heard flat or upright?',
    hint: 'Bring the gain down until the beep is faint on one axis. Then turn the wrist: faint beeps show the difference best.',
    start,
    dials: [GAIN, ROLL],
    air: () => air,
    answer: { kind: 'choice', choices: CHOICES },
    judge(answer) {
      const ok = answer.kind === 'choice' && answer.choice === (best === 90 ? 1 : 0);
      return { right: ok, error: ok ? 0 : 1, because: `${best === 90 ? 'Upright' : 'Flat'} was ${Math.abs(gapDb).toFixed(1)} dB stronger` };
    },
    truth: {
      settings: { ...start, rollDeg: best, gainDb: onDial(GAIN, leastDb + 10) },
      said: `The whip leaned by ${Math.round(leanDeg)}° across your line of sight.`,
      picture: whipFromBehind(side * leanDeg, best),
    },
  };
}

/** As one looks along the antenna: the whip's lean and the rods beside it. */
const whipFromBehind = (leanDeg: number, rollDeg: number) => ({
  ...planAround(3, `Seen from behind you: the whip leans by ${Math.round(Math.abs(leanDeg))} degrees.`, [
    { kind: 'rods' as const, at: [-1.4, 0] as const, leanDeg: 90 - rollDeg },
    { kind: 'words' as const, at: [-2.3, -1.9] as const, text: 'antenna' },
    { kind: 'tag' as const, at: [1.4, -0.6] as const, leanDeg },
    { kind: 'words' as const, at: [0.9, -1.9] as const, text: 'its whip' },
  ]),
  name: 'From behind you',
});

export const whichAxis: Drill = {
  id: 'which-axis',
  title: 'Which axis',
  skill: 'hold the antenna as the whip lies',
  unit: 'dB',
  measures: 'between flat and upright',
  ladder: { hardest: 0.4, easiest: 14, first: 8, step: 1, ratio: false },
  kind: 'choose',
  guess: 0.5,
  trials: 8,
  example: [
    'The antenna already points at the transmitter; only its axis is in question.',
    'Turn the wrist: flat, upright, flat. Listen to two or three beeps each time.',
    'If both sound alike, take gain away until one of them is faint. What is flat out hides every difference.',
    'Nobody knows how an animal lies. On the wrong axis a strong beep may be gone altogether.',
  ],
  draw,
  says: (number) =>
    `You hear the right axis when it is ${number.toFixed(1)} dB better. ${
      number <= 3 ? 'Try both axes before you call a beep faint.' : 'Less gain first: compare the two while they are faint.'
    }`,
};
