import { toDeg, toRad, wrapBearingDeg } from '../units/angles';
import type { Complex } from '../units/complex';
import type { LossBudget, Wave, WaveKind } from './wave';
import { SPACE_IMPEDANCE_OHM, wavelengthM } from './wavelength';

/** East, north, up. */
export type Vector = readonly [number, number, number];

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const along = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const lengthOfVector = (a: Vector): number => Math.sqrt(dot(a, a));
export const unit = (a: Vector): Vector => along(a, 1 / lengthOfVector(a));
/** The part of `a` at right angles to the unit vector `k`: (I - kk) a. */
export const across = (a: Vector, k: Vector): Vector => minus(a, along(k, dot(a, k)));

/** Unit vector of a bearing and an elevation. */
export function lookVector(azimuthDeg: number, elevationDeg: number): Vector {
  const flat = Math.cos(toRad(elevationDeg));
  return [flat * Math.sin(toRad(azimuthDeg)), flat * Math.cos(toRad(azimuthDeg)), Math.sin(toRad(elevationDeg))];
}

/** Unit vector of a whip that leans `leanDeg` from upright towards a bearing. */
export const whipVector = (whip: { readonly leanDeg: number; readonly towardDeg: number }): Vector =>
  lookVector(whip.towardDeg, 90 - whip.leanDeg);

/** Horizontal unit vector to the right of someone who looks along the bearing. */
export const rightOf = (azimuthDeg: number): Vector => [Math.cos(toRad(azimuthDeg)), -Math.sin(toRad(azimuthDeg)), 0];

/** Upward unit vector at right angles to the look direction, in its vertical plane. */
export function upOf(azimuthDeg: number, elevationDeg: number): Vector {
  const lift = Math.sin(toRad(elevationDeg));
  return [-lift * Math.sin(toRad(azimuthDeg)), -lift * Math.cos(toRad(azimuthDeg)), Math.cos(toRad(elevationDeg))];
}

/** A wave from its real and imaginary field vectors, V/m for 1 W e.i.r.p. */
export function waveOf(kind: WaveKind, azimuthDeg: number, elevationDeg: number, re: Vector, im: Vector, lossDb: LossBudget): Wave {
  return {
    azimuthDeg,
    elevationDeg,
    eastRe: re[0],
    eastIm: im[0],
    northRe: re[1],
    northIm: im[1],
    upRe: re[2],
    upIm: im[2],
    kind,
    lossDb,
  };
}

/** |E|^2 of a wave, (V/m)^2 for 1 W e.i.r.p. */
export const fieldSquared = (w: Wave): number =>
  w.eastRe ** 2 + w.eastIm ** 2 + w.northRe ** 2 + w.northIm ** 2 + w.upRe ** 2 + w.upIm ** 2;

/** Power that an isotropic antenna matched in polarization takes from a wave, dBm: |E|^2 lambda^2 / (4 pi 120 pi). */
export function wavePowerDbm(wave: Wave, eirpDbm: number, frequencyMHz: number): number {
  return eirpDbm + 10 * Math.log10((fieldSquared(wave) * wavelengthM(frequencyMHz) ** 2) / (4 * Math.PI * SPACE_IMPEDANCE_OHM));
}

/** Whole loss of a wave to the field, positive dB: the sum of its budget. */
export const wholeLossDb = (loss: LossBudget): number => Object.values(loss).reduce((sum, part) => sum + part, 0);

/** Complex field vector apart from its direction. */
export type Field = { readonly re: Vector; readonly im: Vector };
export const fieldOf = (w: Wave): Field => ({ re: [w.eastRe, w.northRe, w.upRe], im: [w.eastIm, w.northIm, w.upIm] });
export const fieldPower = ({ re, im }: Field): number => dot(re, re) + dot(im, im);
/** Component of a field along a real vector. */
export const partAlong = ({ re, im }: Field, by: Vector): Complex => ({ re: dot(re, by), im: dot(im, by) });
/** A complex amplitude on a real vector. */
export const fieldAlong = (by: Vector, a: Complex): Field => ({ re: along(by, a.re), im: along(by, a.im) });
export const addFields = (a: Field, b: Field): Field => ({ re: plus(a.re, b.re), im: plus(a.im, b.im) });
/** A field times a complex number. */
export const turnField = ({ re, im }: Field, by: Complex): Field => ({
  re: minus(along(re, by.re), along(im, by.im)),
  im: plus(along(re, by.im), along(im, by.re)),
});
/** Bearing and elevation of a vector, degrees. */
export const directionOf = (v: Vector): { azimuthDeg: number; elevationDeg: number } => ({
  azimuthDeg: wrapBearingDeg(toDeg(Math.atan2(v[0], v[1]))),
  elevationDeg: toDeg(Math.atan2(v[2], Math.hypot(v[0], v[1]))),
});
