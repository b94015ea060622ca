import { toRad, wrapBearingDeg } from '../units/angles';
import { toPowerRatio } from '../units/decibels';
import type { Pattern } from './antenna';
import { type ArrivingField, layOut, WAVE_STRIDE } from './arrivalFan';
import { BODY_STEP_DEG } from './body';

/**
 * How an antenna is held. The boom points along `headingDeg` (clockwise from true north), its tip up by `tiltDeg`; seen from behind, the
 * antenna is rolled clockwise by `rollDeg`: 0 is flat (elements level, the antenna's y to the left), 90 upright (its y to the sky).
 */
export type Pose = { readonly headingDeg: number; readonly rollDeg: number; readonly tiltDeg?: number; readonly raised?: boolean };

/** An antenna with a feed line and a person behind it, ready to be turned under arriving waves. */
export type ReceivingAntenna = {
  readonly pattern: Pattern;
  /**
   * Writes the complex voltage V = sum of h(k) . E over the waves, real and imaginary part. Scaled so that the power into a matched
   * receiver is |V|² lambda² / (4 pi 120 pi) watts for fields in V/m.
   */
  readonly voltageInto: (waves: readonly ArrivingField[], pose: Pose, out: Float64Array) => void;
  /** For many headings under the same waves: gives |V|² as a function of how the antenna is held. */
  readonly fan: (waves: readonly ArrivingField[]) => (headingDeg: number, rollDeg: number, raised?: boolean) => number;
};

/** Feed-line pick-up across the antenna's own polarization, dB under the main lobe. */
export const FEED_LINE_FLOOR_DB = 20;

export function makeReceivingAntenna(pattern: Pattern, feedLineFloorDb = FEED_LINE_FLOOR_DB): ReceivingAntenna {
  const voltage = voltageUnder(pattern, feedLineFloorDb);
  const out = new Float64Array(2);
  return {
    pattern,
    voltageInto: (waves, pose, into) =>
      voltage(layOut(waves), pose.headingDeg, pose.tiltDeg ?? 0, pose.rollDeg, pose.raised ?? false, into),
    fan(waves) {
      const flat = layOut(waves);
      return (headingDeg, rollDeg, raised = false) => {
        voltage(flat, headingDeg, 0, rollDeg, raised, out);
        return out[0]! * out[0]! + out[1]! * out[1]!;
      };
    },
  };
}

type VoltageUnder = (flat: Float64Array, headingDeg: number, tiltDeg: number, rollDeg: number, raised: boolean, out: Float64Array) => void;

/**
 * The sum over waves. The feed line is taken as a short wire along the antenna's z with a fixed phase of 90 degrees: it is across the
 * elements for every heading, needs no chance, and adds in power to a wave that meets the elements. Long on purpose: the innermost
 * loop of every sweep.
 */
function voltageUnder(pattern: Pattern, feedLineFloorDb: number): VoltageUnder {
  const [leakRe, leakIm] = feedLine(pattern, feedLineFloorDb);
  const field = new Float64Array(4);
  const frame = new Float64Array(9);
  const shadow = pattern.body;
  return (flat, headingDeg, tiltDeg, rollDeg, raised, out) => {
    frameInto(headingDeg, tiltDeg, rollDeg, frame);
    const fE = frame[0]!;
    const fN = frame[1]!;
    const fU = frame[2]!;
    const lE = frame[3]!;
    const lN = frame[4]!;
    const lU = frame[5]!;
    const uE = frame[6]!;
    const uN = frame[7]!;
    const uU = frame[8]!;
    const body = shadow && !(raised && shadow.goneWhenRaised) ? shadow : undefined;
    const heading = wrapBearingDeg(headingDeg);
    let re = 0;
    let im = 0;
    for (let i = 0; i < flat.length; i += WAVE_STRIDE) {
      const kE = flat[i + 1]!;
      const kN = flat[i + 2]!;
      const kU = flat[i + 3]!;
      const x = fE * kE + fN * kN + fU * kU;
      const y = lE * kE + lN * kN + lU * kU;
      const z = uE * kE + uN * kN + uU * kU;
      pattern.fieldInto(x, y, z, field);
      const upV = uE * flat[i + 4]! + uN * flat[i + 5]! + uU * flat[i + 6]!;
      const upH = uE * flat[i + 7]! + uN * flat[i + 8]!;
      // theta and phi of the antenna against v and h of the wave: one turn about the direction, cosine and sine.
      const across = Math.sqrt(x * x + y * y);
      let c: number;
      let s: number;
      if (across > 1e-9) {
        c = -upV / across;
        s = upH / across;
      } else {
        c = z * (fE * flat[i + 4]! + fN * flat[i + 5]! + fU * flat[i + 6]!); // theta is z times forward there, as in the pattern
        s = -z * (fE * flat[i + 7]! + fN * flat[i + 8]!);
      }
      let factorV = 1;
      let factorH = 1;
      if (body) {
        let off = Math.abs(flat[i]! - heading);
        if (off > 180) off = 360 - off;
        const at = Math.min(off / BODY_STEP_DEG, 180 / BODY_STEP_DEG - 1e-9);
        const low = Math.floor(at);
        const share = at - low;
        factorV = body.vertical[low]! * (1 - share) + body.vertical[low + 1]! * share;
        factorH = body.horizontal[low]! * (1 - share) + body.horizontal[low + 1]! * share;
      }
      const vRe = factorV * flat[i + 9]!;
      const vIm = factorV * flat[i + 10]!;
      const hRe = factorH * flat[i + 11]!;
      const hIm = factorH * flat[i + 12]!;
      const alongVRe = field[0]! * c + field[2]! * s + leakRe * upV;
      const alongVIm = field[1]! * c + field[3]! * s + leakIm * upV;
      const alongHRe = field[2]! * c - field[0]! * s + leakRe * upH;
      const alongHIm = field[3]! * c - field[1]! * s + leakIm * upH;
      re += alongVRe * vRe - alongVIm * vIm + alongHRe * hRe - alongHIm * hIm;
      im += alongVRe * vIm + alongVIm * vRe + alongHRe * hIm + alongHIm * hRe;
    }
    out[0] = re;
    out[1] = im;
  };
}

/** Feed-line field: `floorDb` under the main lobe, a quarter turn ahead of the antenna's own phase there. */
function feedLine(pattern: Pattern, floorDb: number): readonly [number, number] {
  const ahead = new Float64Array(4);
  pattern.fieldInto(1, 0, 0, ahead);
  const [re, im] = Math.hypot(ahead[2]!, ahead[3]!) > Math.hypot(ahead[0]!, ahead[1]!) ? [ahead[2]!, ahead[3]!] : [ahead[0]!, ahead[1]!];
  const size = Math.sqrt(toPowerRatio(pattern.forwardDbi - floorDb)) / Math.hypot(re, im);
  return [-im * size, re * size];
}

/** The antenna's x, y, z in east, north, up. */
function frameInto(headingDeg: number, tiltDeg: number, rollDeg: number, frame: Float64Array): void {
  const [heading, tilt, roll] = [toRad(headingDeg), toRad(tiltDeg), toRad(rollDeg)];
  const [sinH, cosH, sinT, cosT] = [Math.sin(heading), Math.cos(heading), Math.sin(tilt), Math.cos(tilt)];
  const [sinR, cosR] = [Math.sin(roll), Math.cos(roll)];
  const [upE, upN, upU] = [-sinH * sinT, -cosH * sinT, cosT]; // up across the boom before it is rolled; left is (-cosH, sinH, 0)
  frame[0] = sinH * cosT;
  frame[1] = cosH * cosT;
  frame[2] = sinT;
  frame[3] = -cosH * cosR + upE * sinR;
  frame[4] = sinH * cosR + upN * sinR;
  frame[5] = upU * sinR;
  frame[6] = cosH * sinR + upE * cosR;
  frame[7] = -sinH * sinR + upN * cosR;
  frame[8] = upU * cosR;
}
