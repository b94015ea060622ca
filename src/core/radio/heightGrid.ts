import { wavelengthM } from './wavelength';

/**
 * Nodes of the terrain field above the ground, rising from 0. `stretch` is the imaginary part of the complex length 1 - j stretch
 * at each node: 0 in the clear, rising through the absorbing top.
 */
export type HeightGrid = { readonly zM: Float64Array; readonly stretch: Float64Array };

/** What the grid must hold: clear height, depth of the absorbing top and widest spacing, all metres. */
export type GridPlan = { readonly clearTopM: number; readonly layerM: number; readonly spacingM: number; readonly frequencyMHz: number };

/** Height up to which the nodes stand closer, so that the field near the ground is resolved, metres. */
const FINE_BELOW_M = 6;
/** Growth of the spacing from node to node: in the passage to the wider part, and in the upper absorbing top. */
const PASSAGE = 1.12;
const TOP_GROWTH = 1.06;
const STRONGEST_STRETCH = 0.7;
/** Nodes of the absorbing top before its spacing grows: steep waves must be gone before it is too wide for them. */
const LEVEL_NODES = 50;

/**
 * Nodes from the ground through the clear part and an absorbing top. Spacing lambda/8 (at most 0.25 m) below 6 m, `spacingM`
 * above, with a gradual passage. High in the top the spacing goes on growing, since only waves near grazing get there.
 */
export function makeHeightGrid({ clearTopM, layerM, spacingM, frequencyMHz }: GridPlan): HeightGrid {
  let h = Math.min(0.25, wavelengthM(frequencyMHz) / 8, spacingM);
  let z = 0;
  const nodes: number[] = [0];
  while (z < clearTopM) {
    if (z > FINE_BELOW_M) h = Math.min(spacingM, h * PASSAGE);
    z += h;
    nodes.push(z);
  }
  const clear = nodes.length;
  const topM = z + layerM;
  while (z < topM || nodes.length < clear + LEVEL_NODES) {
    if (nodes.length > clear + LEVEL_NODES) h *= TOP_GROWTH;
    z += h;
    nodes.push(z);
  }
  const depth = nodes.length - clear;
  return {
    zM: Float64Array.from(nodes),
    stretch: Float64Array.from(nodes, (_, i) => STRONGEST_STRETCH * (Math.max(0, i + 1 - clear) / depth) ** 2),
  };
}
