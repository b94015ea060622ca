import { NET_GAIN_RANGE_DB } from '../receiver/receive';
import { antennaHeightM } from '../run/state';
import type { Evidence } from '../technique/habit';
import { listenedPulses } from '../technique/tunedTag';
import { distanceM, type MapPoint } from '../units/frames';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';

/** One class of distance: what least gain the run met there. */
export type GainRow = {
  readonly fromM: number;
  readonly toM: number;
  readonly pulses: number;
  /** Share of them with the tag in line of sight over the ground. */
  readonly inSightShare: number;
  /** Quartiles of the least gain, dB. */
  readonly lowDb: number;
  readonly middleDb: number;
  readonly highDb: number;
};

/** A straight line of least gain over the logarithm of distance. */
export type GainFit = {
  readonly atM: number;
  readonly atDb: number;
  readonly perDecadeDb: number;
  readonly perDoublingDb: number;
  /** Were only pulses in line of sight taken, or all, for want of those? */
  readonly inSight: boolean;
};

export type GainDistance = { readonly rows: readonly GainRow[]; readonly fit: GainFit | null };

/** Plane earth: 40 dB for ten times the distance, 12 dB for twice. */
export const PLANE_EARTH_PER_DECADE_DB = 40;

/** Classes of half an octave, from 25 m on. */
const FIRST_M = 25;
const LEAST_PULSES = 5;
/** No line through less than a doubling of distance. */
const LEAST_RATIO = 2;
/** Pulses a few steps apart tell the same: one every so many metres is enough. */
const EVERY_M = 3;

type Met = { readonly distanceM: number; readonly leastDb: number; readonly inSight: boolean };

/** The table of least gain over distance that a run gives, with its fitted line; `fit` is `null` for a run that met too little. */
export function gainDistanceOf(evidence: Evidence): GainDistance {
  const met = metOf(evidence);
  const classes = new Map<number, Met[]>();
  for (const one of met) {
    const number = Math.max(0, Math.floor(2 * Math.log2(one.distanceM / FIRST_M)));
    classes.set(number, [...(classes.get(number) ?? []), one]);
  }
  const rows = [...classes.entries()]
    .filter(([, all]) => all.length >= LEAST_PULSES)
    .sort(([a], [b]) => a - b)
    .map(([number, all]) => rowOf(number, all));
  // At the end of its range the receiver says only that the tag is near.
  const within = met.filter(({ leastDb }) => leastDb > NET_GAIN_RANGE_DB.from);
  const seen = within.filter(({ inSight }) => inSight);
  return { rows, fit: fitOf(seen, true) ?? fitOf(within, false) };
}

function metOf(evidence: Evidence): readonly Met[] {
  const { world, scenario } = evidence.exercise;
  const met: Met[] = [];
  let last: MapPoint | null = null;
  for (const { pulse, state } of listenedPulses(evidence)) {
    const { leastGainDb, distanceM: m, tag, tagAt } = pulse.truth;
    if (leastGainDb === null || m < 1 || (last && distanceM(last, state.at) < EVERY_M)) continue;
    last = state.at;
    const ends = [pointOver(world, state.at, antennaHeightM(state.hold)), pointOver(world, tagAt, scenario.tags[tag]!.heightM)] as const;
    met.push({ distanceM: m, leastDb: leastGainDb, inSight: lineOfSight(world, ...ends).clear });
  }
  return met;
}

function rowOf(number: number, all: readonly Met[]): GainRow {
  const sorted = all.map(({ leastDb }) => leastDb).sort((a, b) => a - b);
  const quartile = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!;
  return {
    fromM: number === 0 ? 0 : FIRST_M * 2 ** (number / 2),
    toM: FIRST_M * 2 ** ((number + 1) / 2),
    pulses: all.length,
    inSightShare: all.filter(({ inSight }) => inSight).length / all.length,
    lowDb: quartile(0.25),
    middleDb: quartile(0.5),
    highDb: quartile(0.75),
  };
}

function fitOf(met: readonly Met[], inSight: boolean): GainFit | null {
  // Long waits at one distance must not pull the line: each half octave counts once, by its mean.
  const classes = new Map<number, Met[]>();
  for (const one of met) {
    const number = Math.floor(2 * Math.log2(one.distanceM / FIRST_M));
    classes.set(number, [...(classes.get(number) ?? []), one]);
  }
  const points = [...classes.values()]
    .filter((all) => all.length >= LEAST_PULSES)
    .map((all) => ({ x: mean(all.map(({ distanceM }) => Math.log10(distanceM))), y: mean(all.map(({ leastDb }) => leastDb)) }));
  const xs = points.map(({ x }) => x);
  if (points.length < 3 || 10 ** (Math.max(...xs) - Math.min(...xs)) < LEAST_RATIO) return null;
  const [middleX, middleY] = [mean(xs), mean(points.map(({ y }) => y))];
  const across = points.reduce((sum, { x }) => sum + (x - middleX) ** 2, 0);
  const perDecadeDb = points.reduce((sum, { x, y }) => sum + (x - middleX) * (y - middleY), 0) / across;
  return { atM: 10 ** middleX, atDb: middleY, perDecadeDb, perDoublingDb: perDecadeDb * Math.log10(2), inSight };
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Least gain that a line gives at a distance, dB. */
export const onLineDb = (fit: Pick<GainFit, 'atM' | 'atDb'>, perDecadeDb: number, m: number): number =>
  fit.atDb + perDecadeDb * Math.log10(m / fit.atM);
