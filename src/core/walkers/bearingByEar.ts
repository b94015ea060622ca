import { turnDeg, wrapBearingDeg } from '../units/angles';

/** One pulse of a sweep as a listener judges it. */
export type Judged = { readonly headingDeg: number; readonly loudnessDb: number; readonly audible: boolean };

/** The lobe as one knows it from the hand: 3 dB down 30 degrees aside, then falling off. */
const lobeDb = (offDeg: number): number => -3 * (offDeg / 30) ** 2;
const LOBE_REACH_DEG = 65;
/** A listener judges one short pulse to about this. */
export const JUDGEMENT_SD_DB = 2;

/**
 * The heading that the loudest part of a sweep is centred on: the lobe is laid over what was heard, as one does in halving
 * the arc between its two edges. `null` where fewer than three pulses were heard.
 */
export function bearingByEar(pulses: readonly Judged[]): { readonly bearingDeg: number; readonly peakDb: number } | null {
  const heard = pulses.filter(({ audible }) => audible);
  if (heard.length < 3) return null;
  let best = { bearingDeg: 0, peakDb: 0, cost: Number.POSITIVE_INFINITY };
  for (let bearingDeg = 0; bearingDeg < 360; bearingDeg += 2) {
    const fit = fitAt(pulses, bearingDeg);
    if (fit && fit.cost < best.cost) best = { bearingDeg, ...fit };
  }
  if (!Number.isFinite(best.cost)) return null;
  for (const offDeg of [-1.5, -1, -0.5, 0.5, 1, 1.5]) {
    const fit = fitAt(pulses, best.bearingDeg + offDeg);
    if (fit && fit.cost < best.cost) best = { bearingDeg: best.bearingDeg + offDeg, ...fit };
  }
  return { bearingDeg: wrapBearingDeg(best.bearingDeg), peakDb: best.peakDb };
}

/** Squared misfit of the lobe at a bearing; what lies outside it must not be louder than its edge. */
function fitAt(pulses: readonly Judged[], bearingDeg: number): { peakDb: number; cost: number } | null {
  const near = pulses.filter((pulse) => Math.abs(turnDeg(bearingDeg, pulse.headingDeg)) <= LOBE_REACH_DEG);
  const heard = near.filter(({ audible }) => audible);
  if (heard.length < 3) return null;
  const peakDb = heard.reduce((sum, p) => sum + p.loudnessDb - lobeDb(turnDeg(bearingDeg, p.headingDeg)), 0) / heard.length;
  let cost = 0;
  for (const pulse of pulses) {
    const offDeg = Math.min(LOBE_REACH_DEG, Math.abs(turnDeg(bearingDeg, pulse.headingDeg)));
    const expectedDb = peakDb + lobeDb(offDeg);
    const outside = offDeg >= LOBE_REACH_DEG;
    const foundDb = pulse.audible ? pulse.loudnessDb : Math.min(expectedDb, 0);
    const missDb = outside ? Math.max(0, foundDb - expectedDb) : foundDb - expectedDb;
    cost += Math.min(100, missDb * missDb);
  }
  return { peakDb, cost };
}
