import { toRad } from '../units/angles';
import { toDb } from '../units/decibels';
import type { Pattern } from './antenna';

/** Elements level (h) or standing (v). */
export type Mount = 'h' | 'v';

/** Gain in one direction: along the mount's own polarization, and across it. Never under -99.99 dBi. */
export type CutPoint = { readonly deg: number; readonly coDbi: number; readonly crossDbi: number };

export type PatternCuts = {
  readonly impedanceOhm: readonly [number, number];
  readonly forwardDbi: number;
  readonly frontToBackDb: number;
  /** Full width of the main lobe where it is 3 dB down, azimuth; null where it never falls so far. */
  readonly widthDeg: number | null;
  readonly azimuth: readonly CutPoint[];
  readonly elevation: readonly CutPoint[];
};

const FAINTEST_DBI = -99.99;
const HALF_POWER_DB = 10 * Math.log10(2);

/**
 * Both cuts of a pattern in free space, without feed line and body. Azimuth turns from ahead to the left, elevation from ahead over
 * the zenith to behind. Co-polar is the level field (phi) for mount h, the standing one (theta) for v.
 * @param stepDeg above 0; the last angle is under 360
 */
export function patternCuts(pattern: Pattern, mount: Mount, stepDeg: number): PatternCuts {
  const gain = gainOf(pattern, mount);
  const azimuth = (deg: number) => gain(Math.cos(toRad(deg)), Math.sin(toRad(deg)), 0);
  const elevation = (deg: number) => gain(Math.cos(toRad(deg)), 0, Math.sin(toRad(deg)));
  const cut = (at: typeof azimuth): CutPoint[] =>
    Array.from({ length: Math.ceil(360 / stepDeg - 1e-9) }, (_, i) => {
      const deg = Math.round(i * stepDeg * 1e6) / 1e6;
      const { co, cross } = at(deg);
      return { deg, coDbi: dbi(co), crossDbi: dbi(cross) };
    });
  const total = (deg: number) => {
    const { co, cross } = azimuth(deg);
    return co + cross;
  };
  return {
    impedanceOhm: [round(pattern.impedanceOhm[0], 3), round(pattern.impedanceOhm[1], 3)],
    forwardDbi: round(pattern.forwardDbi, 3),
    frontToBackDb: 0 + round(toDb(total(0)) - Math.max(FAINTEST_DBI, toDb(total(180))), 3),
    widthDeg: widthDeg((deg) => toDb(total(deg))),
    azimuth: cut(azimuth),
    elevation: cut(elevation),
  };
}

const round = (value: number, digits: number): number => Math.round(value * 10 ** digits) / 10 ** digits;
const dbi = (ratio: number): number => round(Math.max(FAINTEST_DBI, toDb(ratio)), 3);

/** Gain along and across the mount's polarization, as power ratios; direction in the world, forward x, zenith z. */
function gainOf(pattern: Pattern, mount: Mount): (x: number, y: number, z: number) => { co: number; cross: number } {
  const field = new Float64Array(4);
  return (x, y, z) => {
    if (mount === 'h') {
      pattern.fieldInto(x, y, z, field);
      return { co: field[2]! ** 2 + field[3]! ** 2, cross: field[0]! ** 2 + field[1]! ** 2 };
    }
    // Standing: the antenna's y points up, its z to the right, so the world's up is its y.
    pattern.fieldInto(x, z, -y, field);
    return standing(field, x, z, -y);
  };
}

/** Splits a field into the parts along and across the antenna's own y, seen as the zenith. */
function standing(field: Float64Array, x: number, y: number, z: number): { co: number; cross: number } {
  const across = Math.hypot(x, y);
  const [cosPhi, sinPhi] = across > 1e-12 ? [x / across, y / across] : [1, 0];
  const fromY = Math.sqrt(Math.max(0, 1 - y * y));
  if (fromY < 1e-9) return { co: field[2]! ** 2 + field[3]! ** 2, cross: field[0]! ** 2 + field[1]! ** 2 }; // towards the zenith, as from ahead
  const c = (z * sinPhi) / fromY; // y . theta and y . phi over their joint size
  const s = cosPhi / fromY;
  const co = (field[0]! * c + field[2]! * s) ** 2 + (field[1]! * c + field[3]! * s) ** 2;
  const cross = (field[2]! * c - field[0]! * s) ** 2 + (field[3]! * c - field[1]! * s) ** 2;
  return { co, cross };
}

/** First angle on each side of ahead where the gain has fallen by half, to 0.01 degree, added up. */
function widthDeg(levelDb: (deg: number) => number): number | null {
  const half = levelDb(0) - HALF_POWER_DB;
  const side = (sign: number): number => {
    let deg = 1;
    while (deg <= 180 && levelDb(sign * deg) > half) deg++;
    if (deg > 180) return Number.NaN;
    let [inside, outside] = [deg - 1, deg];
    for (let i = 0; i < 20; i++) {
      const middle = (inside + outside) / 2;
      if (levelDb(sign * middle) > half) inside = middle;
      else outside = middle;
    }
    return outside;
  };
  const both = side(1) + side(-1);
  return Number.isNaN(both) ? null : round(both, 2);
}
