import { createNoise2D, type NoiseFunction2D } from 'simplex-noise';
import { type Purpose, randomFor } from '../random/draw';

/** A smooth random field of the map, about -1..1, named by seed, purpose and index. */
export const noiseField = (seed: string, purpose: Purpose, index: number): NoiseFunction2D =>
  createNoise2D(randomFor(seed, purpose, index));

/** Sum of octaves, each twice as fine and `gain` times as strong; scaled back to about -1..1. */
export function fractal(noise: NoiseFunction2D, x: number, y: number, octaves: number, gain: number): number {
  let sum = 0;
  let strength = 1;
  let total = 0;
  let scale = 1;
  for (let i = 0; i < octaves; i++) {
    sum += strength * noise(x * scale + 17.3 * i, y * scale - 9.1 * i);
    total += strength;
    strength *= gain;
    scale *= 2;
  }
  return sum / total;
}

/**
 * What `fractal` gives at the first `count` of `xs` and one `y`, to the bit, put into `values`: octave by octave, since noise is
 * the dearest part of making a world and a short loop round it is soon compiled and stays fast.
 */
export function fractalAlong(
  noise: NoiseFunction2D,
  xs: Float64Array,
  count: number,
  y: number,
  octaves: number,
  gain: number,
  values: Float64Array,
): void {
  let strength = 1;
  let total = 0;
  let scale = 1;
  values.fill(0, 0, count);
  for (let i = 0; i < octaves; i++) {
    addOctave(noise, xs, count, scale, 17.3 * i, y * scale - 9.1 * i, strength, values);
    total += strength;
    strength *= gain;
    scale *= 2;
  }
  for (let i = 0; i < count; i++) values[i]! /= total;
}

function addOctave(
  noise: NoiseFunction2D,
  xs: Float64Array,
  count: number,
  scale: number,
  shift: number,
  y: number,
  strength: number,
  sums: Float64Array,
): void {
  for (let i = 0; i < count; i++) sums[i]! += strength * noise(xs[i]! * scale + shift, y);
}

/** Octaves of folded noise, 0..1: sharp crests where the noise crosses zero; finer crests only grow on higher ground. */
export function crests(noise: NoiseFunction2D, x: number, y: number, octaves: number, gain: number): number {
  let sum = 0;
  let strength = 1;
  let total = 0;
  let scale = 1;
  let above = 1;
  for (let i = 0; i < octaves; i++) {
    const folded = 1 - Math.abs(noise(x * scale + 31.7 * i, y * scale + 5.3 * i));
    sum += strength * folded * folded * above;
    total += strength;
    above = Math.min(1, Math.max(0, folded * 1.4));
    strength *= gain;
    scale *= 2;
  }
  return sum / total;
}

/** 0 below `low`, 1 above `high`, a smooth S between. */
export function smoothStep(low: number, high: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
