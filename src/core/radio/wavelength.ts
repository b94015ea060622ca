/** Speed of light, m/s divided by 1e6: metres times megahertz. */
export const LIGHT_M_MHZ = 299.792458;

/** Wave impedance of free space as P.525 uses it, ohm. */
export const SPACE_IMPEDANCE_OHM = 120 * Math.PI;

/** Earth radius with standard refraction, metres (ITU-R P.526: 4/3 of the true radius, rounded to 8500 km). */
export const EARTH_RADIUS_M = 8_500_000;

/** Wavelength in metres. */
export const wavelengthM = (frequencyMHz: number): number => LIGHT_M_MHZ / frequencyMHz;

/** Wave number 2 pi / lambda, rad/m. */
export const waveNumber = (frequencyMHz: number): number => (2 * Math.PI * frequencyMHz) / LIGHT_M_MHZ;

/** Frequency that has, at the exact speed of light, the wavelength which 3e8 m/s gives: the published validation of P.526 uses that value. */
export const roundLightFrequencyMHz = (frequencyMHz: number): number => (frequencyMHz * LIGHT_M_MHZ) / 300;
