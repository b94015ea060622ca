import { toRad } from '../units/angles';
import { besideCylinder, type Cylinder } from './lossyCylinder';

/**
 * What the walker's body does to waves, as an amplitude factor on their vertical and horizontal fields. Entry i holds for waves that
 * come from i times BODY_STEP_DEG off the heading, either side; the walker stands behind the antenna.
 */
export type BodyShadow = {
  readonly vertical: Float64Array;
  readonly horizontal: Float64Array;
  /** An outstretched arm lifts a small antenna over the body; a Yagi's rear lobe still meets the walker. */
  readonly goneWhenRaised: boolean;
};

export const BODY_STEP_DEG = 2;
const ENTRIES = 180 / BODY_STEP_DEG + 1;
const OFF_HEADING_DEG = Array.from({ length: ENTRIES }, (_, i) => i * BODY_STEP_DEG);

/** A person as an upright cylinder 0.3 m thick of wet tissue (muscle at 150 MHz about 60 and 0.8 S/m, values from memory). */
export const BODY: Cylinder = { radiusM: 0.15, relativePermittivity: 60, conductivitySPerM: 0.8 };
/** From the body's axis to an antenna held close. */
const HELD_CLOSE_M = 0.5;

/** The body behind a whip or loop held close, computed for this project from the exact series: -7.7 dB from behind at 150 MHz. */
export function shadowHeldClose(frequencyMHz: number): BodyShadow {
  const ratios = besideCylinder(BODY, frequencyMHz, HELD_CLOSE_M, OFF_HEADING_DEG);
  return {
    vertical: Float64Array.from(ratios, (ratio) => ratio.vertical),
    horizontal: Float64Array.from(ratios, (ratio) => ratio.horizontal),
    goneWhenRaised: true,
  };
}

/** Loss of a Yagi's rear lobe right behind, dB, for waves of vertical and horizontal polarization: our choice within 1.5 to 3 dB. */
const REAR_LOSS_DB = { vertical: 3, horizontal: 1.5 };

/** The body behind a hand Yagi: nothing ahead of the elements, the rear lobe 1.5 to 3 dB down, a smooth change between. */
export const SHADOW_BEHIND_YAGI: BodyShadow = {
  vertical: rearFactors(REAR_LOSS_DB.vertical),
  horizontal: rearFactors(REAR_LOSS_DB.horizontal),
  goneWhenRaised: false,
};

function rearFactors(lossDb: number): Float64Array {
  return Float64Array.from(OFF_HEADING_DEG, (deg) => {
    const share = deg <= 90 ? 0 : Math.sin(toRad(deg - 90)) ** 2;
    return 10 ** ((-lossDb * share) / 20);
  });
}
