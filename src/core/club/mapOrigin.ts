import { toDeg, toRad } from '../units/angles';

/** Where the south-west corner of every exercise's map is put on the globe, degrees. */
export type MapOrigin = { readonly latDeg: number; readonly lonDeg: number };

/** Exercises are invented land and lie nowhere. 0° north 0° east is open sea, so that nobody takes them for a real place. */
export const NOWHERE: MapOrigin = { latDeg: 0, lonDeg: 0 };

/** WGS 84: semi-major axis, metres, and first eccentricity squared (NIMA TR8350.2). */
const AXIS_M = 6_378_137;
const ECCENTRICITY_SQUARED = 0.006_694_379_990_14;

/** Past this the local metres of a map no longer go east and north in one scale. */
export const LARGEST_LATITUDE_DEG = 80;

const rounded = (deg: number): number => Math.round(deg * 1e8) / 1e8;

/**
 * Latitude and longitude of a map point, its metres laid off along the ellipsoid's two radii of curvature at the origin; 1e-8
 * degrees are a millimetre. @throws RangeError for an origin beyond 80° or off the globe
 */
export function placeOnGlobe({ latDeg, lonDeg }: MapOrigin, eM: number, nM: number): { readonly lat: number; readonly lon: number } {
  if (!(Math.abs(latDeg) <= LARGEST_LATITUDE_DEG && Math.abs(lonDeg) <= 180)) throw new RangeError(`no map at ${latDeg}, ${lonDeg}`);
  const sine = Math.sin(toRad(latDeg));
  const flat = 1 - ECCENTRICITY_SQUARED * sine * sine;
  const acrossM = AXIS_M / Math.sqrt(flat);
  const alongM = (acrossM * (1 - ECCENTRICITY_SQUARED)) / flat;
  const lon = lonDeg + toDeg(eM / (acrossM * Math.cos(toRad(latDeg))));
  return { lat: rounded(latDeg + toDeg(nM / alongM)), lon: rounded(lon >= 180 ? lon - 360 : lon) };
}

/** What every export with places says of them. */
export const placesNote = ({ latDeg, lonDeg }: MapOrigin): string =>
  `The ground of these exercises is invented. Its local metres are laid off on WGS 84 from latitude ${latDeg}, longitude ${lonDeg}, ` +
  'the south-west corner of every map: distances and bearings are right, the place on the globe means nothing.';
