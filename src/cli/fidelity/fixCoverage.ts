import { estimateFix } from '../../core/fix/estimate';
import type { FixInput, FoundFix } from '../../core/fix/fix';
import { randomFor } from '../../core/random/draw';
import { toDeg, toRad } from '../../core/units/angles';

/** Exercises drawn for one number of bearings: a sampling error of 0.6 points at 95 %. */
const EXERCISES = 1_200;

/** Share of drawn exercises whose F-based 95 % area holds the tag, percent: stations all round at 0.5 to 1.5 km, bearing spread 3 to 6 degrees. */
export function areaCoveragePercent(bearings: number): number {
  let held = 0;
  let fixes = 0;
  for (let index = 0; index < EXERCISES; index++) {
    const fix = estimateFix(drawnExercise(bearings, index));
    if (!fix.ok || !fix.ellipse95) continue;
    fixes += 1;
    if (holdsOrigin(fix)) held += 1;
  }
  return (100 * held) / fixes;
}

/** Stations round a tag at the origin, and bearings with normal errors. */
function drawnExercise(bearings: number, index: number): FixInput {
  const random = randomFor(`fix coverage ${bearings}`, 'test', index);
  const sdDeg = 3 + 3 * random();
  const firstDeg = 360 * random();
  const drawn = Array.from({ length: bearings }, (_, i) => {
    const fromTagDeg = firstDeg + (360 * (i + 0.6 * random())) / bearings;
    const distanceM = 500 + 1_000 * random();
    const station = [distanceM * Math.sin(toRad(fromTagDeg)), distanceM * Math.cos(toRad(fromTagDeg))] as const;
    return { station, bearingDeg: fromTagDeg + 180 + sdDeg * normal(random) };
  });
  return { stations: drawn.map(({ station }) => station), bearingsDeg: drawn.map(({ bearingDeg }) => bearingDeg) };
}

/** A standard normal number (Box and Muller 1958). */
const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

function holdsOrigin({ x, y, ellipse95 }: FoundFix): boolean {
  if (!ellipse95) return false;
  const off = toRad(toDeg(Math.atan2(x, y)) - ellipse95.majorAxisBearingDeg);
  const reachM = Math.hypot(x, y);
  return ((reachM * Math.cos(off)) / ellipse95.semiMajorM) ** 2 + ((reachM * Math.sin(off)) / ellipse95.semiMinorM) ** 2 <= 1;
}

/** Median distance between fix and tag over 200 of the same exercises, metres; one without a fix counts as infinitely far off. */
export function medianFixErrorM(bearings: number): number {
  const errorsM: number[] = [];
  for (let index = 0; index < 200; index++) {
    const fix = estimateFix(drawnExercise(bearings, index));
    errorsM.push(fix.ok ? Math.hypot(fix.x, fix.y) : Number.POSITIVE_INFINITY);
  }
  return errorsM.sort((a, b) => a - b)[Math.floor(errorsM.length / 2)]!;
}
