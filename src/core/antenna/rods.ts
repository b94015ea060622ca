import { type Drive, rodAcross, type WireChain } from './wireChain';

/** A rod across the boom: place along it, length and diameter in wavelengths at the design frequency. */
export type Rod = { readonly along: number; readonly length: number; readonly diameter: number; readonly drive?: Drive };

export const DRIVEN: Drive = { amplitude: 1, phaseDeg: 0 };

/** Rods at their real size. */
export const rodsAt =
  (rods: readonly Rod[]) =>
  (wavelengthM: number): readonly WireChain[] =>
    rods.map(({ along, length, diameter, drive }) => rodAcross(along * wavelengthM, length * wavelengthM, diameter * wavelengthM, drive));

/** From the first rod to the last, metres, at a design frequency. */
export const boomOf =
  (rods: readonly Rod[]) =>
  (frequencyMHz: number): number =>
    ((Math.max(...rods.map(({ along }) => along)) - Math.min(...rods.map(({ along }) => along))) * 299.792458) / frequencyMHz;

/** Under this design frequency an element is longer than 1.5 m: too long to hold and turn. */
export const LEAST_HAND_YAGI_MHZ = 100;
