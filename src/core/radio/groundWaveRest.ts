import { add, type Complex, complex, divide, exponential, multiply, scale, squareRoot, subtract } from '../units/complex';
import type { Polarization } from './ground';
import { nortonReflection, sommerfeldReflection } from './groundReflection';
import { smoothStep } from './handOver';

/** Nodes of the table: wave number times distance, in equal ratios; height over distance, as squares of equal steps up to 1. */
const FIRST_KRHO = 2.5;
const LAST_KRHO = 320;
const RANGES = 13;
const SLOPES = 9;
const RATIO = Math.log(LAST_KRHO / FIRST_KRHO) / (RANGES - 1);

/** Norton's form is left alone beyond the second; between them the rest passes out. */
const GOES_FROM = 160;
const GONE_AT = LAST_KRHO;

/** What the closed form lacks, times kr, at the nodes [range * SLOPES + slope], for one ground. */
type Table = { readonly eps: Complex } & { readonly [part in `${Polarization}${'Re' | 'Im'}`]: Float64Array };

/** The grounds met last, newest first: a handful at one frequency. */
const KEPT = 12;
const kept: Table[] = [];

/**
 * What Sommerfeld's integral gives beyond Norton's closed form, over exp(-jkr)/r of the image: a smooth rest from a table kept
 * for each ground, and the wave that runs through the ground. Near the tag the level field would else be up to 4 dB wrong.
 * Lengths times the wave number: distance over the ground, and the sum of both heights.
 */
export function groundWaveRest(eps: Complex, polarization: Polarization, kRho: number, kHeight: number): Complex {
  const kr = Math.hypot(kRho, kHeight);
  const through = throughGround(eps, kRho, kHeight, kr);
  if (kRho >= GONE_AT) return through;
  const slope = kHeight / kRho;
  const steep = slope > 1 ? 1 / slope ** 4 : 1;
  const share = (steep * (1 - smoothStep(GOES_FROM, GONE_AT, kRho))) / Math.max(FIRST_KRHO, kr);
  const table = tableOf(eps);
  const x = Math.log(Math.max(FIRST_KRHO, kRho) / FIRST_KRHO) / RATIO;
  const y = Math.sqrt(Math.min(1, slope)) * (SLOPES - 1);
  const rest = at(table, polarization, x, y);
  return add(scale(rest, share), through);
}

/**
 * The wave that runs in the ground and leaves it all along, 2j n exp(-k(H sqrt(eps - 1) + j n rho)) / ((eps - 1) (k rho)^2) with
 * n = sqrt(eps): the same for both polarizations to its first order. Derived for this project from the integral round the second branch point.
 */
function throughGround(eps: Complex, kRho: number, kHeight: number, kr: number): Complex {
  const rho = Math.max(FIRST_KRHO, kRho);
  const n = squareRoot(eps);
  const less = subtract(eps, complex(1));
  const fall = add(scale(squareRoot(less), -kHeight), complex(n.im * kRho, -n.re * kRho + kr));
  return multiply(divide(scale(complex(-n.im, n.re), (2 * kr) / (rho * rho)), less), exponential(fall));
}

function tableOf(eps: Complex): Table {
  const found = kept.findIndex((table) => table.eps.re === eps.re && table.eps.im === eps.im);
  if (found === 0) return kept[0]!;
  const table = found > 0 ? kept.splice(found, 1)[0]! : makeTable(eps);
  kept.unshift(table);
  kept.length = Math.min(kept.length, KEPT);
  return table;
}

/** An empty table: a node costs an integral, and a place needs a few of them only. */
function makeTable(eps: Complex): Table {
  const make = () => new Float64Array(RANGES * SLOPES).fill(Number.NaN);
  return { eps, vRe: make(), vIm: make(), hRe: make(), hIm: make() };
}

/** Works out a node that is not there yet; it is the same whenever it is asked for. */
function fillNode(table: Table, node: number): void {
  if (!Number.isNaN(table.vRe[node]!)) return;
  const kRho = FIRST_KRHO * Math.exp(Math.floor(node / SLOPES) * RATIO);
  const kHeight = kRho * ((node % SLOPES) / (SLOPES - 1)) ** 2;
  const kr = Math.hypot(kRho, kHeight);
  const exact = sommerfeldReflection(table.eps, kRho, kHeight);
  for (const pol of ['v', 'h'] as const) {
    const { ray, surface } = nortonReflection(table.eps, pol, kr, kHeight / kr, kRho / kr);
    const rest = subtract(exact[pol], add(ray, surface));
    table[`${pol}Re`][node] = kr * rest.re;
    table[`${pol}Im`][node] = kr * rest.im;
  }
}

/** Cubic through four neighbours each way (Catmull and Rom), so that neither value nor slope steps; ends repeat their last node. */
function at(table: Table, polarization: Polarization, x: number, y: number): Complex {
  const i = Math.min(RANGES - 2, Math.floor(x));
  const j = Math.min(SLOPES - 2, Math.floor(y));
  const [re, im] = [table[`${polarization}Re`], table[`${polarization}Im`]];
  const [along, across] = [cubic(x - i), cubic(y - j)];
  let [sumRe, sumIm] = [0, 0];
  for (let a = 0; a < 4; a++) {
    const row = SLOPES * Math.min(RANGES - 1, Math.max(0, i + a - 1));
    for (let b = 0; b < 4; b++) {
      const weight = along[a]! * across[b]!;
      if (weight === 0) continue;
      const node = row + Math.min(SLOPES - 1, Math.max(0, j + b - 1));
      fillNode(table, node);
      sumRe += weight * re[node]!;
      sumIm += weight * im[node]!;
    }
  }
  return complex(sumRe, sumIm);
}

const cubic = (t: number): readonly number[] => [
  t * (-0.5 + t * (1 - 0.5 * t)),
  1 + t * t * (-2.5 + 1.5 * t),
  t * (0.5 + t * (2 - 1.5 * t)),
  t * t * (-0.5 + 0.5 * t),
];
