import type { Pattern } from './antenna';
import { powerOf } from './pattern';
import { gaussRule } from './quadrature';

/** Mean gain over the whole sphere as a power ratio: 1 for an antenna without loss. Gauss rule in height, even steps round. */
export function meanGain(pattern: Pattern, rings = 32): number {
  const rule = gaussRule(rings);
  const field = new Float64Array(4);
  let sum = 0;
  for (let ring = 0; ring < rings; ring++) {
    const z = rule.nodes[ring]!;
    const across = Math.sqrt(1 - z * z);
    for (let i = 0; i < 2 * rings; i++) {
      const angle = (Math.PI * i) / rings;
      pattern.fieldInto(across * Math.cos(angle), across * Math.sin(angle), z, field);
      sum += rule.weights[ring]! * powerOf(field);
    }
  }
  return sum / (4 * rings);
}
