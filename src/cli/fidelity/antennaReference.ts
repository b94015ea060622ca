/**
 * Gain of the level field in dBi, free space, at 0, 5 … 180 degrees: azimuth from ahead to the left, elevation from ahead over the zenith.
 * Computed independently for this project with a moment-method code of the NEC-2 kind, 21 segments an element.
 */
export type ReferenceCut = { readonly azimuthDbi: readonly number[]; readonly elevationDbi: readonly number[] };

/** Three elements (place, length, diameter in wavelengths): (-0.18, 0.495, 0.003) (0, 0.470, 0.003) (0.15, 0.455, 0.003). */
export const YAGI3_REFERENCE: ReferenceCut = {
  azimuthDbi: [
    8.77, 8.68, 8.43, 8.01, 7.43, 6.66, 5.71, 4.58, 3.24, 1.68, -0.11, -2.17, -4.53, -7.26, -10.45, -14.29, -19.21, -26.62, -60.0, -29.16,
    -24.21, -21.64, -20.09, -19.17, -18.77, -18.77, -18.93, -18.66, -17.39, -15.34, -13.14, -11.18, -9.58, -8.36, -7.5, -7.0, -6.83,
  ],
  elevationDbi: [
    8.77, 8.73, 8.62, 8.44, 8.19, 7.85, 7.43, 6.93, 6.33, 5.63, 4.82, 3.9, 2.87, 1.72, 0.47, -0.88, -2.29, -3.69, -5.03, -6.23, -7.28,
    -8.22, -9.15, -10.18, -11.4, -12.83, -14.27, -15.13, -14.73, -13.3, -11.62, -10.1, -8.88, -7.96, -7.33, -6.95, -6.83,
  ],
};

/** One rod of 0.472 wavelength, diameter 0.003. */
export const DIPOLE_REFERENCE: ReferenceCut = {
  azimuthDbi: [
    2.13, 2.08, 1.94, 1.7, 1.36, 0.93, 0.39, -0.25, -1.0, -1.87, -2.87, -4.03, -5.38, -6.99, -8.95, -11.48, -15.02, -21.06, -60.0, -21.06,
    -15.02, -11.48, -8.95, -6.99, -5.38, -4.03, -2.87, -1.87, -1.0, -0.25, 0.39, 0.93, 1.36, 1.7, 1.94, 2.08, 2.13,
  ],
  elevationDbi: [
    2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13,
    2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13, 2.13,
  ],
};
