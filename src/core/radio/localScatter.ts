import { type Complex, complex } from '../units/complex';
import { COVER, type World } from '../world/world';
import { smoothStep } from './handOver';
import { hashShare } from './integerHash';
import type { Wave } from './wave';
import { wavelengthM, waveNumber } from './wavelength';
import { addFields, fieldAlong, fieldOf, fieldPower, partAlong, rightOf, upOf, waveOf } from './waveVector';

/** Plane waves of the scatter, in equal sectors of azimuth with one random angle in each. */
export const SCATTER_WAVES = 16;
const HIGHEST_DEG = 15;

/** Where scatter is asked for: keys of the tag, map place and frequency. */
export type ScatterPlace = { readonly tagKey: number; readonly eM: number; readonly nM: number; readonly frequencyMHz: number };

/** A scatter wave before its strength: direction and complex amplitude with mean square 1/SCATTER_WAVES. */
export type ScatterRay = {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly amplitude: Complex;
  readonly crossTurn: number;
};

/** Scatter cells are so many metres wide: several wavelengths, so that fading within one is that of plane waves. */
const cellM = (frequencyMHz: number): number => Math.max(60, 8 * wavelengthM(frequencyMHz));

/**
 * Scatter rays at a place. Directions belong to the tag, phases to (tag, cell, wave) by an integer hash; between cells amplitudes
 * pass smoothly, power kept. The same place always fades the same way.
 */
export function scatterRays({ tagKey, eM, nM, frequencyMHz }: ScatterPlace): readonly ScatterRay[] {
  const k = waveNumber(frequencyMHz);
  const size = cellM(frequencyMHz);
  const [x, y] = [eM / size - 0.5, nM / size - 0.5];
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [smoothStep(0, 1, x - x0), smoothStep(0, 1, y - y0)];
  const corners = [
    [x0, y0, (1 - fx) * (1 - fy)],
    [x0 + 1, y0, fx * (1 - fy)],
    [x0, y0 + 1, (1 - fx) * fy],
    [x0 + 1, y0 + 1, fx * fy],
  ] as const;
  const norm = 1 / Math.sqrt(SCATTER_WAVES * corners.reduce((sum, [, , w]) => sum + w * w, 0));
  return Array.from({ length: SCATTER_WAVES }, (_, i) => {
    const azimuthDeg = ((i + hashShare(tagKey, i, 3)) * 360) / SCATTER_WAVES;
    const elevationDeg = HIGHEST_DEG * hashShare(tagKey, i, 5);
    const flat = Math.cos((elevationDeg * Math.PI) / 180);
    const [east, north] = [flat * Math.sin((azimuthDeg * Math.PI) / 180), flat * Math.cos((azimuthDeg * Math.PI) / 180)];
    let [re, im] = [0, 0];
    for (const [cx, cy, weight] of corners) {
      // looking towards the wave, its phase grows along the look direction
      const phase = 2 * Math.PI * hashShare(tagKey, cx, cy, i) + k * (east * eM + north * nM);
      re += norm * weight * Math.cos(phase);
      im += norm * weight * Math.sin(phase);
    }
    return { azimuthDeg, elevationDeg, amplitude: { re, im }, crossTurn: 2 * Math.PI * hashShare(tagKey, i, 7) };
  });
}

/** Surroundings of a receiver as shares 0 to 1. */
export type Surroundings = {
  readonly wood: number;
  readonly scrub: number;
  readonly wet: number;
  readonly hills: number;
  readonly shadow: number;
};

/** Shares of cover round a point, bilinear between cell centres. */
export function coverShares(world: World, eM: number, nM: number): { wood: number; scrub: number; wet: number } {
  const { columns, rows, cellM: size, values } = world.cover;
  const x = Math.min(columns - 1, Math.max(0, eM / size - 0.5));
  const y = Math.min(rows - 1, Math.max(0, nM / size - 0.5));
  const [x0, y0] = [Math.min(columns - 2, Math.floor(x)), Math.min(rows - 2, Math.floor(y))];
  const out = { wood: 0, scrub: 0, wet: 0 };
  for (const [dx, dy] of [
    [0, 0],
    [1, 0],
    [0, 1],
    [1, 1],
  ] as const) {
    const share = (dx ? x - x0 : 1 - x + x0) * (dy ? y - y0 : 1 - y + y0);
    const cover = values[(y0 + dy) * columns + x0 + dx]!;
    if (cover === COVER.wood) out.wood += share;
    if (cover === COVER.scrub) out.scrub += share;
    if (cover === COVER.wet) out.wet += share;
  }
  return out;
}

/**
 * Coherent over scattered power, dB: open 22, scrub 12, woodland 0, deep shadow -3. Our choice, but for open ground bounded by
 * measurement: bearings by two edges there have a deviation of 3.9 degrees, the ear's part included (Springer 1979). Scatter alone
 * gives 11 degrees at 10 dB, 2.6 at 20 and 2.0 at 22 (three-element Yagi, edges 10 dB down, 400 places).
 */
export function coherentOverScatterDb({ wood, scrub, shadow }: Surroundings): number {
  const byCoverDb = 22 - 22 * wood - 10 * scrub;
  return byCoverDb + (Math.min(byCoverDb, -3) - byCoverDb) * shadow;
}

/** How far the cross-polarized part of scatter lies below the other, dB: 20 open, 12 hills and woodland, 8 dense wet woodland. Our choice (P.1406, from memory). */
export const crossPolarDb = ({ wood, wet, hills, shadow }: Surroundings): number =>
  Math.max(8, 20 - 8 * Math.max(wood, hills, shadow) - 4 * Math.min(wood, wet));

/**
 * Scatter waves at a receiver for the coherent waves there: their power is the sum of the waves' powers over K, shared out by the rays;
 * each has the polarization of the strongest coherent wave with a part across it.
 */
export function scatterWaves(coherent: readonly Wave[], place: ScatterPlace, around: Surroundings): readonly Wave[] {
  const strongest = coherent.reduce((best, wave) => (fieldPower(fieldOf(wave)) > fieldPower(fieldOf(best)) ? wave : best));
  // shadow is what the direct wave stands in; an echo in clear view of the receiver has the K of the cover alone
  const inView = { ...around, shadow: 0 };
  const power = coherent.reduce((sum, wave) => {
    const kDb = coherentOverScatterDb(wave.kind === 'direct' ? around : inView);
    return sum + fieldPower(fieldOf(wave)) / 10 ** (kDb / 10);
  }, 0);
  const [up, right] = [upOf(strongest.azimuthDeg, strongest.elevationDeg), rightOf(strongest.azimuthDeg)];
  const [v, h] = [partAlong(fieldOf(strongest), up), partAlong(fieldOf(strongest), right)];
  const size = Math.max(1e-30, Math.sqrt(v.re ** 2 + v.im ** 2 + h.re ** 2 + h.im ** 2));
  const crossed = 10 ** (-crossPolarDb(around) / 20);
  const norm = Math.sqrt(power / (1 + crossed ** 2)) / size;
  return scatterRays(place).map((ray) => {
    const turn = complex(crossed * Math.cos(ray.crossTurn), crossed * Math.sin(ray.crossTurn));
    // across (v, h) in the sense of complex vectors lies (-h*, v*)
    const upPart = { re: v.re - (h.re * turn.re + h.im * turn.im), im: v.im - (h.re * turn.im - h.im * turn.re) };
    const rightPart = { re: h.re + (v.re * turn.re + v.im * turn.im), im: h.im + (v.re * turn.im - v.im * turn.re) };
    const by = (a: Complex): Complex => ({
      re: norm * (a.re * ray.amplitude.re - a.im * ray.amplitude.im),
      im: norm * (a.re * ray.amplitude.im + a.im * ray.amplitude.re),
    });
    const field = addFields(
      fieldAlong(upOf(ray.azimuthDeg, ray.elevationDeg), by(upPart)),
      fieldAlong(rightOf(ray.azimuthDeg), by(rightPart)),
    );
    const takenDb = 10 * Math.log10(fieldPower(fieldOf(strongest)) / Math.max(1e-30, fieldPower(field)));
    const lossDb = { ...strongest.lossDb, reflection: (strongest.lossDb.reflection ?? 0) + takenDb };
    return waveOf('scatter', ray.azimuthDeg, ray.elevationDeg, field.re, field.im, lossDb);
  });
}
