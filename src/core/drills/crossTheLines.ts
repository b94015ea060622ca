import { makeAir } from '../listening/air';
import { keptBy } from '../listening/keptBy';
import type { Picture, PictureMark, Spot } from '../listening/picture';
import { type Dial, FIRST_SETTINGS, GAIN, HEADING, onDial, type Settings } from '../listening/settings';
import { makeSmallScene } from '../listening/smallScene';
import { toRad } from '../units/angles';
import { bearingDeg } from '../units/frames';
import { drawn } from './drawn';
import type { Drill, MarkedLine, Trial } from './drill';
import { EIRP_DBM, leastUpright } from './plainView';

const SIZE_M = 2_400;
const STATIONS = 3;
const NAMES = ['1', '2', '3'] as const;

function draw(seed: string, level: number, listener: { readonly thresholdDb: number }): Trial {
  const by = drawn(seed);
  const tag: Spot = [by.between(-120, 120), by.between(-120, 120)];
  const middle = SIZE_M / 2;
  const scene = makeSmallScene({
    sizeM: SIZE_M,
    cellM: 20,
    tag: {
      at: { eM: middle + tag[0], nM: middle + tag[1] },
      heightM: by.between(0.4, 1.2),
      leanDeg: by.between(0, 30),
      towardDeg: by.bearingDeg(),
    },
  });
  const [firstDeg, spreadDeg] = [by.bearingDeg(), by.between(60, 140)];
  const stations = Array.from({ length: STATIONS }, (_, i): Spot => {
    const deg = firstDeg + (spreadDeg * i) / (STATIONS - 1) + by.between(-8, 8);
    const m = by.between(300, 560);
    return [tag[0] + m * Math.sin(toRad(deg)), tag[1] + m * Math.cos(toRad(deg))].map(Math.round) as unknown as Spot;
  });
  const airAt = ([x, y]: Spot) => makeAir({ waves: [scene.direct({ eM: middle + x, nM: middle + y })], eirpDbm: EIRP_DBM });
  const air = keptBy(
    ({ choice }) => choice,
    ({ choice }) => airAt(stations[choice]!),
  );
  const trueDeg = (choice: number) => {
    const [x, y] = stations[choice]!;
    return bearingDeg({ eM: x, nM: y }, { eM: tag[0], nM: tag[1] });
  };
  const leastDb = leastUpright(airAt(stations[0]!), trueDeg(0), listener);
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: by.bearingDeg(),
    gainDb: onDial(GAIN, leastDb + by.between(12, 28)),
  };
  const station: Dial = { key: 'choice', name: 'Station', from: 0, to: STATIONS - 1, step: 1, unit: '', choices: NAMES };
  const reachM = 1.2 * Math.max(...stations.flat().map(Math.abs));
  return {
    level,
    ask: `Take a bearing at each of three stations, then put the pin where they cross: within ${Math.round(level)} m.`,
    hint: 'Each bearing by its two edges, at a quiet gain. The lines need not meet in one point: the pin belongs in the middle of the triangle, nearer to the shorter lines.',
    start,
    dials: [HEADING, GAIN, station],
    plan: ({ choice }, lines) => stationsFromAbove(stations, choice, lines, reachM, []),
    air,
    answer: { kind: 'pin', stations },
    judge(answer) {
      if (answer.kind !== 'pin') return { right: false, error: 2_000, because: '' };
      const offM = Math.hypot(answer.at[0] - tag[0], answer.at[1] - tag[1]);
      return { right: offM <= level, error: offM, because: `Your pin stood ${Math.round(offM)} m from the transmitter` };
    },
    truth: {
      settings: { ...start, headingDeg: Math.round(trueDeg(0)) % 360, gainDb: onDial(GAIN, leastDb + 10) },
      said: 'The dashed lines are the true ones.',
      picture: stationsFromAbove(stations, 0, [], reachM, [
        ...stations.map((at): PictureMark => ({ kind: 'wave', points: [tag, at], wave: 'direct', strength: 0.8 })),
        { kind: 'tag', at: tag },
      ]),
    },
  };
}

function stationsFromAbove(
  stations: readonly Spot[],
  now: number,
  lines: readonly MarkedLine[],
  reachM: number,
  marks: readonly PictureMark[],
): Picture {
  const drawnLine = ({ from, bearingDeg: deg }: MarkedLine): PictureMark => ({
    kind: 'bearing',
    from,
    to: [from[0] + 1.6 * reachM * Math.sin(toRad(deg)), from[1] + 1.6 * reachM * Math.cos(toRad(deg))],
    back: false,
  });
  return {
    view: 'plan',
    from: [-reachM, -reachM],
    to: [reachM, reachM],
    said: `Plan: three stations, you at station ${now + 1}, ${lines.length} bearings marked.`,
    marks: [
      ...lines.map(drawnLine),
      ...marks,
      ...stations.map((at, i): PictureMark => ({ kind: 'you', at, now: i === now })),
      ...stations.map(([x, y], i): PictureMark => ({ kind: 'words', at: [x + reachM * 0.05, y - reachM * 0.03], text: NAMES[i]! })),
    ],
  };
}

export const crossTheLines: Drill = {
  id: 'cross-the-lines',
  title: 'Cross the lines',
  skill: 'take three bearings and find the place where they meet',
  unit: 'm',
  measures: 'from the transmitter',
  ladder: { hardest: 8, easiest: 300, first: 80, step: 1.35, ratio: true },
  kind: 'set',
  guess: 0,
  trials: 2,
  example: [
    'You stand at station 1. Take the bearing by its edges and mark it: a line is drawn.',
    'The next station follows by itself; turn and take the bearing again. The gain may need a touch.',
    'Three lines seldom meet in one point. The middle of the small triangle is the place to walk to.',
    'Put the pin there, by hand or with the arrow keys.',
  ],
  draw,
  says: (number) =>
    `Your pins stood ${Math.round(number)} m from the transmitter. ${
      number <= 40 ? 'Close enough to see the animal.' : 'Better bearings come from less gain; a degree is 8 m at 450 m.'
    }`,
};
