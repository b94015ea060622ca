import { estimateFix, UNMEASURED_SD_DEG } from '../fix/estimate';
import type { Fix } from '../fix/fix';
import { bearingDeg, distanceM } from '../units/frames';
import { type Air, heardAt, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { leastGainHere } from './leastGainHere';
import { madeOnce, madeOnceFor } from './madeOnce';
import type { Picture, PictureMark, Spot } from './picture';
import { oneOf, type Question, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { makeSmallScene } from './smallScene';

const EIRP_DBM = 6;
const AWAY_M = 500;
const COUNTS = [2, 3, 4] as const;
/** Gain over least gain at which the edges are taken, dB. */
const EXCESS_DB = 10;
const SPREAD = { from: 10, to: 150, step: 10 } as const;

const TAG = { eM: 800, nM: 800 };
const scene = madeOnce(() => makeSmallScene({ sizeM: 1_600, tag: { at: TAG } }));

/** Stations on a bow round the tag, `spreadDeg` from the first to the last, tag at the origin; the last is where one listens. */
export function stationsOf({ choice, walkM: spreadDeg }: Settings): readonly Spot[] {
  const count = COUNTS[choice] ?? 2;
  return Array.from({ length: count }, (_, i): Spot => {
    const rad = (Math.PI / 180) * (180 - spreadDeg / 2 + (spreadDeg * i) / (count - 1));
    return [AWAY_M * Math.sin(rad), AWAY_M * Math.cos(rad)];
  });
}

const airAt = ([e, n]: Spot): Air => makeAir({ waves: [scene().direct({ eM: TAG.eM + e, nM: TAG.nM + n })], eirpDbm: EIRP_DBM });
const air = keptBy(
  ({ choice, walkM }) => `${choice}/${walkM}`,
  (settings) => airAt(stationsOf(settings).at(-1)!),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 25, walkM: 90, choice: 1 };

/** The bearing an ear takes at a station: half way between the edges where it just falls silent, at 10 dB over least gain. */
const bearingTaken = (station: Spot): number => bearingAt(station.join('/'));
const bearingAt = madeOnceFor((place: string): number => {
  const station = place.split('/').map(Number) as [number, number];
  const here = airAt(station);
  const truth = bearingDeg({ eM: station[0], nM: station[1] }, { eM: 0, nM: 0 });
  const least = leastGainHere(here, here.powerDbm(truth, start.rollDeg)) ?? 80;
  const settings = { ...start, gainDb: least + EXCESS_DB };
  const edge = (way: 1 | -1): number => {
    let [heard, gone] = [0, 100];
    while (gone - heard > 0.25) {
      const middle = (heard + gone) / 2;
      if (heardAt(here, settings, truth + way * middle).audible) heard = middle;
      else gone = middle;
    }
    return heard;
  };
  return truth + (edge(1) - edge(-1)) / 2;
});

/** The fix from the stations' bearings and its area for a learner's usual spread of bearings. */
export const fixOf = (settings: Settings): Fix => {
  const stations = stationsOf(settings);
  return estimateFix({ stations, bearingsDeg: stations.map(bearingTaken), learnerSdDeg: UNMEASURED_SD_DEG });
};

/** Area of the 95 % ellipse, hectares; null where there is no fix. */
export function areaHa(fix: Fix): number | null {
  if (!fix.ok || !fix.learnerEllipse) return null;
  return (Math.PI * fix.learnerEllipse.semiMajorM * fix.learnerEllipse.semiMinorM) / 10_000;
}

function says({ settings }: Listened): readonly Piece[] {
  const fix = fixOf(settings);
  const count = COUNTS[settings.choice] ?? 2;
  if (!fix.ok) return [{ strong: 'No fix. ' }, fix.reason];
  const area = areaHa(fix)!;
  const words = area < 1 ? `${Math.round(area * 100) / 100} ha` : `${Math.round(area * 10) / 10} ha`;
  return [
    `${count === 2 ? 'Two' : count === 3 ? 'Three' : 'Four'} bearings, crossing at ${Math.round(fix.crossingAngleDeg)}°, leave `,
    { strong: words },
    count === 2 ? ' to search, and nothing to check them by. Take a third.' : ' to search. Spread wider and add one: watch it shrink.',
  ];
}

const SPREADS_DEG = Array.from({ length: 8 }, (_, i) => SPREAD.from + 2 * i * SPREAD.step);
const areaAt = madeOnceFor((choice: number) => madeOnceFor((walkM: number) => areaHa(fixOf({ ...start, choice, walkM }))));

function chart({ settings }: Listened): Chart {
  const lines = COUNTS.map((count, choice) => ({
    kind: choice === settings.choice ? ('heard' as const) : ('law' as const),
    name: `${count} bearings`,
    points: SPREADS_DEG.flatMap((walkM) => {
      const area = areaAt(choice)(walkM);
      return area === null ? [] : [[walkM, area] as const];
    }),
  }));
  const now = areaAt(settings.choice)(settings.walkM);
  return {
    name: 'Area left to search',
    x: { from: 0, to: 150, name: 'spread of stations', unit: 'degrees', at: [0, 50, 100, 150] },
    y: { from: 0, to: 12, name: '95 % area', unit: 'ha', at: [0, 4, 8, 12] },
    lines,
    dots: now === null ? [] : [{ kind: 'now', name: `${now.toFixed(1)} ha`, x: settings.walkM, y: now }],
  };
}

function picture({ settings }: Listened): Picture {
  const stations = stationsOf(settings);
  const fix = fixOf(settings);
  const marks: PictureMark[] = stations.map((from) => {
    const rad = (bearingTaken(from) * Math.PI) / 180;
    return { kind: 'bearing', from, to: [from[0] + 760 * Math.sin(rad), from[1] + 760 * Math.cos(rad)], back: false };
  });
  if (fix.ok && fix.learnerEllipse)
    marks.unshift({ kind: 'outline', land: 'area', points: ellipsePoints(fix.x, fix.y, fix.learnerEllipse) });
  return {
    view: 'plan',
    from: [-620, -580],
    to: [620, 420],
    said: `Plan: ${stations.length} stations ${settings.walkM} degrees apart round the transmitter${fix.ok ? ', their bearings and the area they leave' : ', too close together for a fix'}.`,
    marks: [
      ...marks,
      { kind: 'tag', at: [0, 0] },
      ...stations.map((at, i): PictureMark => ({ kind: 'you', at, now: i === stations.length - 1 })),
      { kind: 'words', at: [stations.at(-1)![0] - 130, stations.at(-1)![1] - 16], text: 'you' },
      { kind: 'words', at: [72, -14], text: 'transmitter' },
    ],
  };
}

function ellipsePoints(
  x: number,
  y: number,
  ellipse: { semiMajorM: number; semiMinorM: number; majorAxisBearingDeg: number },
): readonly Spot[] {
  const axis = (ellipse.majorAxisBearingDeg * Math.PI) / 180;
  return Array.from({ length: 48 }, (_, i): Spot => {
    const t = (i * Math.PI) / 24;
    const [a, b] = [ellipse.semiMajorM * Math.cos(t), ellipse.semiMinorM * Math.sin(t)];
    return [x + a * Math.sin(axis) + b * Math.cos(axis), y + a * Math.cos(axis) - b * Math.sin(axis)];
  });
}

function questions(random: () => number): readonly Question[] {
  const facing = (settings: Settings, offDeg: number): Settings => {
    const station = stationsOf(settings).at(-1)!;
    const truth = bearingDeg({ eM: station[0], nM: station[1] }, { eM: 0, nM: 0 });
    return { ...settings, headingDeg: Math.round(truth + offDeg + 360) % 360 };
  };
  const at = (choice: number, walkM: number): Settings => ({ ...start, choice, walkM });
  const takesOf = (settings: Settings) => [{ name: 'At the last station', settings: facing(settings, 0) }];
  const [narrow, wide] = [at(0, oneOf([10, 15, 40], random)), at(0, oneOf([60, 90, 120], random))];
  const narrowFix = fixOf(narrow);
  const [few, many] = [areaHa(fixOf(wide))!, areaHa(fixOf({ ...wide, choice: 2 }))!];
  const off = oneOf([0, 60, 180], random);
  const turned = facing(at(1, 90), off);
  const straight = heardAt(air(turned), turned, turned.headingDeg);
  const best = heardAt(air(turned), turned, facing(at(1, 90), 0).headingDeg);
  return [
    yesOrNo(
      `Two bearings from stations ${narrow.walkM}° apart. Is there a fix?`,
      takesOf(narrow),
      narrowFix.ok,
      narrowFix.ok ? `They cross at ${Math.round(narrowFix.crossingAngleDeg)}°` : 'They cross at too small an angle',
    ),
    yesOrNo(
      `Two stations ${wide.walkM}° apart, or four over the same bow. Do four halve the area?`,
      takesOf(wide),
      many <= few / 2,
      `${few.toFixed(2)} ha with two, ${many.toFixed(2)} ha with four`,
    ),
    yesOrNo(
      'First the loudest heading, then another. Is the second one the bearing to mark?',
      [
        { name: 'Loudest', settings: facing(at(1, 90), 0) },
        { name: 'Another', settings: turned },
      ],
      best.levelDb - straight.levelDb < 1,
      off === 0 ? 'It was the same heading' : `It was ${off}° off`,
    ),
  ];
}

export const crossingBearings: Demonstration = {
  id: 'crossing-bearings',
  title: 'Crossing bearings',
  scene: `stations on a bow, ${AWAY_M} m from the transmitter`,
  listenFor: 'At the last station turn through the beep: the middle between its two edges is the bearing that is drawn.',
  start,
  dials: [
    { key: 'walkM', name: 'Spread', ...SPREAD, unit: '°' },
    { key: 'choice', name: 'Bearings', from: 0, to: 2, step: 1, unit: '', choices: COUNTS.map(String) },
  ],
  air,
  says,
  ways: [
    { name: 'Two, close together', sets: { choice: 0, walkM: 30 } },
    { name: 'Four, well spread', sets: { choice: 2, walkM: 120 } },
  ],
  picture,
  chart,
  ahead: () => COUNTS.flatMap((_, choice) => SPREADS_DEG.map((walkM) => () => areaAt(choice)(walkM))),
  talkingPoints: [
    'Two lines always meet. Only the third says whether they should have.',
    'Aim for 60 to 120 degrees between the outer stations; under 20 there is no fix at all.',
    'The area counts on a usual spread of 5 degrees a bearing: yours may be better once it has been measured.',
    'Walk towards the fix and take the next bearing nearer: the same degrees are fewer metres there.',
  ],
  handoutGainsDb: [80, 60, 40, 25],
  questions,
};

/** Metres from the fix to the transmitter; null where there is no fix. */
export function fixErrorM(settings: Settings): number | null {
  const fix = fixOf(settings);
  return fix.ok ? distanceM({ eM: fix.x, nM: fix.y }, { eM: 0, nM: 0 }) : null;
}
