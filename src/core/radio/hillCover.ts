import { COVER } from '../world/world';

/** Diffuse reflectance of hillsides by cover: our choice, within the 0.02 to 0.2 that was tried. */
export const REFLECTANCE: { readonly [cover: number]: number } = {
  [COVER.open]: 0.05,
  [COVER.wood]: 0.1,
  [COVER.scrub]: 0.07,
  [COVER.wet]: 0.05,
  [COVER.water]: 0.02,
  [COVER.rock]: 0.2,
  [COVER.built]: 0.15,
};

/** Height deviation of the surface within a Fresnel zone by cover, metres: our choice; it dims the mirror part. */
export const ROUGHNESS_M: { readonly [cover: number]: number } = {
  [COVER.open]: 0.25,
  [COVER.wood]: 2,
  [COVER.scrub]: 0.6,
  [COVER.wet]: 0.2,
  [COVER.water]: 0.05,
  [COVER.rock]: 0.6,
  [COVER.built]: 2,
};
