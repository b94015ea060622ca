import { gaussRule } from './quadrature';
import type { Segment } from './segments';

/**
 * Coupling of two parallel segments, the four combinations of their sine halves: out[2 (2 p + q)], out[2 (2 p + q) + 1] is the
 * complex impedance in ohms between the half of `test` that is 1 at its end p and the half of `source` that is 1 at its end q
 * (0 start, 1 end).
 *
 * The field along a sine current comes from its two ends alone, E = -[I' exp(-jkR)/R] / (4 pi j omega eps) (Schelkunoff and Friis,
 * "Antennas: theory and practice", 1952, ch. 12, from memory); charges at the ends are left out, since they cancel in a whole mode.
 * The remaining integral over the test segment runs in t = asinh(distance along / distance aside), in which the peak beside an end
 * is flat. One long function on purpose: it is called about a thousand times a solution.
 */
export function parallelCoupling(test: Segment, source: Segment, k: number, out: Float64Array): void {
  const [tx, ty, tz] = test.along;
  const sameWay = tx * source.along[0] + ty * source.along[1] + tz * source.along[2] > 0 ? 1 : -1;
  const dx = source.start[0] - test.start[0];
  const dy = source.start[1] - test.start[1];
  const dz = source.start[2] - test.start[2];
  const startAt = dx * tx + dy * ty + dz * tz; // where the source starts, measured along the test segment
  const aside2 = Math.max(0, dx * dx + dy * dy + dz * dz - startAt * startAt);
  const radiusM = Math.max(test.radiusM, source.radiusM);
  const aside = Math.sqrt(aside2 + radiusM * radiusM);

  const kd = k * source.lengthM;
  const slopes = [-Math.cos(kd) / Math.sin(kd), -1 / Math.sin(kd), 1 / Math.sin(kd), Math.cos(kd) / Math.sin(kd)];
  const perSine = 1 / Math.sin(k * test.lengthM);
  out.fill(0, 0, 8);
  for (let end = 0; end < 2; end++) {
    const at = startAt + sameWay * end * source.lengthM;
    const low = Math.asinh(-at / aside);
    const high = Math.asinh((test.lengthM - at) / aside);
    const rule = gaussRule(Math.min(24, Math.max(4, Math.ceil(4 + 2.2 * (high - low)))));
    const mid = (low + high) / 2;
    const half = (high - low) / 2;
    let re0 = 0;
    let im0 = 0;
    let re1 = 0;
    let im1 = 0;
    for (let i = 0; i < rule.nodes.length; i++) {
      const grow = Math.exp(mid + half * rule.nodes[i]!);
      const s = at + (aside * (grow - 1 / grow)) / 2;
      const phase = (-k * aside * (grow + 1 / grow)) / 2;
      const weight = half * rule.weights[i]! * perSine;
      const w0 = weight * Math.sin(k * (test.lengthM - s));
      const w1 = weight * Math.sin(k * s);
      const c = Math.cos(phase);
      const d = Math.sin(phase);
      re0 += w0 * c;
      im0 += w0 * d;
      re1 += w1 * c;
      im1 += w1 * d;
    }
    const sign = (end === 0 ? -1 : 1) * sameWay;
    for (let q = 0; q < 2; q++) {
      const by = sign * slopes[2 * q + end]! * OHM;
      // times -j: the factor 1 / (4 pi j omega eps) times k
      out[2 * q]! += by * im0;
      out[2 * q + 1]! -= by * re0;
      out[4 + 2 * q]! += by * im1;
      out[4 + 2 * q + 1]! -= by * re1;
    }
  }
}

/** Impedance of free space over 4 pi, ohms. */
const OHM = 29.9792458;
