/** A point in the antenna's own frame, metres: x forward along the boom, y left, z up when held flat. */
export type Point3 = readonly [number, number, number];

/** A voltage across a gap of no width: between two corners' legs, or in the middle of a single leg where `atCorner` is absent. */
export type Drive = { readonly amplitude: number; readonly phaseDeg: number; readonly atCorner?: number };

/**
 * Straight round wires joined end to end: a rod has two corners, a loop comes back to its first (`closed`).
 * Wires are perfect conductors in free space; chains do not touch each other.
 */
export type WireChain = {
  readonly corners: readonly Point3[];
  readonly closed: boolean;
  readonly radiusM: number;
  readonly drive?: Drive;
};

/** A rod across the boom, parallel to y: how every Yagi element is written. */
export function rodAcross(alongM: number, lengthM: number, diameterM: number, drive?: Drive): WireChain {
  const corners: readonly Point3[] = [
    [alongM, -lengthM / 2, 0],
    [alongM, lengthM / 2, 0],
  ];
  const rod = { corners, closed: false, radiusM: diameterM / 2 };
  return drive ? { ...rod, drive } : rod;
}
