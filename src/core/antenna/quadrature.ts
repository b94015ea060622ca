/** Gauss-Legendre nodes and weights on [-1, 1]. */
export type GaussRule = { readonly nodes: Float64Array; readonly weights: Float64Array };

const rules = new Map<number, GaussRule>();

/** The rule of `count` nodes, exact for polynomials up to degree 2 count - 1 (Abramowitz and Stegun 25.4.29). */
export function gaussRule(count: number): GaussRule {
  const known = rules.get(count);
  if (known) return known;
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let turn = 0; turn < 8; turn++) {
      const { value, derivative } = legendre(count, x);
      slope = derivative;
      x -= value / derivative;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { nodes, weights };
  rules.set(count, rule);
  return rule;
}

/** Legendre polynomial of degree n by the three-term recurrence, with its derivative. */
function legendre(n: number, x: number): { value: number; derivative: number } {
  let before = 1;
  let value = x;
  for (let i = 2; i <= n; i++) [before, value] = [value, ((2 * i - 1) * x * value - (i - 1) * before) / i];
  return { value, derivative: (n * (x * value - before)) / (x * x - 1) };
}
