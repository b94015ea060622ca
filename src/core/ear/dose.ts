/** Sound exposure of a week that adults may have: 80 dBA for 40 hours, 1.6 Pa²h. Source: WHO/ITU-T H.870. */
export const WEEKLY_DOSE_PA2H = 1.6;

const REFERENCE_PA = 20e-6;

/** Exposure of some hours at a level, Pa²h. */
export const exposurePa2h = (levelDba: number, hours: number): number => hours * REFERENCE_PA ** 2 * 10 ** (levelDba / 10);

/** Hours at a level that use up the week's dose. */
export const doseHours = (levelDba: number): number => WEEKLY_DOSE_PA2H / exposurePa2h(levelDba, 1);
