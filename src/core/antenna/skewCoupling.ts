import { gaussRule } from './quadrature';
import type { Segment } from './segments';

/**
 * Coupling of two segments at any angle, in the same order and units as `parallelCoupling`. Potentials instead of fields: current
 * against current, charge against charge, both with exp(-jkR)/R and the wire's radius in R. The inner integral runs in asinh, the
 * outer crowds its points at both ends, where bent wires meet. Modes must be whole: the potentials at the ends cancel only then.
 * One long function on purpose: innermost loop of the solver for bent wires.
 */
export function skewCoupling(test: Segment, source: Segment, k: number, out: Float64Array): void {
  const [ux, uy, uz] = source.along;
  const cosine = test.along[0] * ux + test.along[1] * uy + test.along[2] * uz;
  const radiusM = Math.max(test.radiusM, source.radiusM);
  const perTest = 1 / Math.sin(k * test.lengthM);
  const perSource = 1 / Math.sin(k * source.lengthM);
  const outer = gaussRule(12);
  out.fill(0, 0, 8);
  for (let i = 0; i < outer.nodes.length; i++) {
    const u = (outer.nodes[i]! + 1) / 2;
    const s = test.lengthM * u * u * (3 - 2 * u);
    const weight = test.lengthM * 3 * u * (1 - u) * outer.weights[i]!;
    const dx = test.start[0] + s * test.along[0] - source.start[0];
    const dy = test.start[1] + s * test.along[1] - source.start[1];
    const dz = test.start[2] + s * test.along[2] - source.start[2];
    const at = dx * ux + dy * uy + dz * uz;
    const aside = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - at * at) + radiusM * radiusM);
    const low = Math.asinh(-at / aside);
    const high = Math.asinh((source.lengthM - at) / aside);
    const inner = gaussRule(Math.min(16, Math.ceil(5 + 1.5 * (high - low))));
    const mid = (low + high) / 2;
    const half = (high - low) / 2;
    const current = [Math.sin(k * (test.lengthM - s)) * perTest, Math.sin(k * s) * perTest];
    const charge = [-Math.cos(k * (test.lengthM - s)) * perTest, Math.cos(k * s) * perTest];
    for (let m = 0; m < inner.nodes.length; m++) {
      const grow = Math.exp(mid + half * inner.nodes[m]!);
      const t = at + (aside * (grow - 1 / grow)) / 2;
      const phase = (-k * aside * (grow + 1 / grow)) / 2;
      const w = weight * half * inner.weights[m]! * k * OHM;
      const re = w * Math.cos(phase);
      const im = w * Math.sin(phase);
      const i0 = Math.sin(k * (source.lengthM - t)) * perSource * cosine;
      const i1 = Math.sin(k * t) * perSource * cosine;
      const c0 = -Math.cos(k * (source.lengthM - t)) * perSource;
      const c1 = Math.cos(k * t) * perSource;
      for (let p = 0; p < 2; p++) {
        const z0 = current[p]! * i0 - charge[p]! * c0;
        const z1 = current[p]! * i1 - charge[p]! * c1;
        out[4 * p]! -= z0 * im; // times j
        out[4 * p + 1]! += z0 * re;
        out[4 * p + 2]! -= z1 * im;
        out[4 * p + 3]! += z1 * re;
      }
    }
  }
}

/** Impedance of free space over 4 pi, ohms. */
const OHM = 29.9792458;
