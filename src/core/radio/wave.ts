/**
 * One wave at a point. The field is what 1 W e.i.r.p. at the tag would give, V/m, phase referred to the point;
 * components east, north, up, real and imaginary parts apart. The direction is the one to look along to face the wave.
 */
export type Wave = {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly eastRe: number;
  readonly eastIm: number;
  readonly northRe: number;
  readonly northIm: number;
  readonly upRe: number;
  readonly upIm: number;
  readonly kind: WaveKind;
  /** What each cause took from this wave, positive dB. */
  readonly lossDb: LossBudget;
};

export type WaveKind = 'direct' | 'hillside' | 'wall' | 'wire' | 'pole' | 'scatter';

/** In the order the debrief draws them. Only causes that took part are present; the sum is the whole loss to the field. */
export type LossBudget = {
  readonly freeSpace: number;
  readonly ground?: number;
  readonly terrain?: number;
  readonly wood?: number;
  readonly building?: number;
  readonly reflection?: number;
  readonly polarization?: number;
};

/** Every wave at a point, and what the model says of its own range of validity. */
export type Arrivals = { readonly waves: readonly Wave[]; readonly warnings: readonly string[] };
