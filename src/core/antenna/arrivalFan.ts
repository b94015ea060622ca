import { toRad } from '../units/angles';

/** As much of an arriving wave as an antenna needs; the complex field is in V/m, the direction the one to look along to face it. */
export type ArrivingField = {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly eastRe: number;
  readonly eastIm: number;
  readonly northRe: number;
  readonly northIm: number;
  readonly upRe: number;
  readonly upIm: number;
};

/** Numbers kept of each wave. */
export const WAVE_STRIDE = 13;

/**
 * Waves laid out for turning an antenna under them: direction east, north, up; the unit vector `v` (upward,
 * across the direction) with `h` = direction x v (level); complex field along v and h. A radial part, which only a very near source
 * has, meets no antenna and is dropped. Order: azimuthDeg, kE, kN, kU, vE, vN, vU, hE, hN, then v re, v im, h re, h im.
 */
export function layOut(waves: readonly ArrivingField[]): Float64Array {
  const flat = new Float64Array(WAVE_STRIDE * waves.length);
  waves.forEach((wave, i) => {
    const azimuth = toRad(wave.azimuthDeg);
    const elevation = toRad(wave.elevationDeg);
    const [sinA, cosA, sinE, cosE] = [Math.sin(azimuth), Math.cos(azimuth), Math.sin(elevation), Math.cos(elevation)];
    const [vE, vN, vU] = [-sinA * sinE, -cosA * sinE, cosE];
    flat.set(
      [
        ((wave.azimuthDeg % 360) + 360) % 360,
        sinA * cosE,
        cosA * cosE,
        sinE,
        vE,
        vN,
        vU,
        cosA,
        -sinA,
        wave.eastRe * vE + wave.northRe * vN + wave.upRe * vU,
        wave.eastIm * vE + wave.northIm * vN + wave.upIm * vU,
        wave.eastRe * cosA - wave.northRe * sinA,
        wave.eastIm * cosA - wave.northIm * sinA,
      ],
      WAVE_STRIDE * i,
    );
  });
  return flat;
}
