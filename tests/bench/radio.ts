import { makeAirspace } from '../../src/core/radio/arrivals';
import { GROUND, permittivity } from '../../src/core/radio/ground';
import { pathColumns } from '../../src/core/radio/path';
import { terrainField } from '../../src/core/radio/terrainField';
import { generateWorld } from '../../src/core/world/generate';
import { plainScenario } from '../core/world/fixtureScenario';

/** One measured speed: milliseconds, and the goal it is held against. */
export type Figure = { readonly name: string; readonly ms: number; readonly goalMs: number };

/** Best of several runs, milliseconds. */
function bestMs(runs: number, work: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const from = performance.now();
    work();
    best = Math.min(best, performance.now() - from);
  }
  return best;
}

/** Median of the waves at 800 places along a walk, milliseconds, the field known and the code warm. */
function placeMs(space: ReturnType<typeof makeAirspace>): number {
  const place = (i: number) => ({ eM: 700 + 0.37 * (i % 400), nM: 900 + 0.21 * (i % 400) });
  for (let i = 0; i < 400; i++) space.arrivalsAt(place(i), 1.7);
  const took = Array.from({ length: 800 }, (_, i) => bestMs(1, () => void space.arrivalsAt(place(i), 1.7)));
  return took.sort((a, b) => a - b)[400]!;
}

/** Speeds of the propagation model. Figures, not tests: other work on the machine moves them. */
export function figures(): readonly Figure[] {
  const radial = (reliefM: number, lengthM: number) => () => {
    const distancesM = Array.from({ length: lengthM / 10 + 1 }, (_, i) => 10 * i);
    terrainField({
      frequencyMHz: 150,
      txHeightM: 0.5,
      distancesM,
      heightsM: distancesM.map((x) => reliefM * Math.sin(x / 400)),
      permittivities: [permittivity(GROUND['medium-dry'], 150)],
      outHeightsM: [0.5, 1.7, 4, 8, 16, 32],
    });
  };
  const scenario = plainScenario();
  const world = generateWorld(scenario);
  const space = () => makeAirspace({ scenario, world, tagIndex: 0, tagAt: { eM: 2_050, nM: 1_900 } });
  const warm = space();
  const at = { eM: 700, nM: 900 };
  warm.arrivalsAt(at, 1.7);
  const profile = {
    frequencyMHz: 150,
    polarization: 'v' as const,
    txHeightM: 0.5,
    rxHeightM: 1.7,
    distancesM: Array.from({ length: 81 }, (_, i) => 25 * i),
    heightsM: Array.from({ length: 81 }, (_, i) => 30 * Math.sin(i / 9)),
    ground: GROUND.wet,
  };
  return [
    { name: 'radial 5 km, 150 MHz, flat, both polarizations', ms: bestMs(7, radial(0, 5_000)), goalMs: 60 },
    { name: 'radial 5 km, 150 MHz, hills of 80 m', ms: bestMs(5, radial(40, 5_000)), goalMs: 60 },
    { name: 'radial 1 km, 150 MHz, flat', ms: bestMs(7, radial(0, 1_000)), goalMs: 8 },
    { name: 'path columns, 2 km profile', ms: bestMs(5, () => void pathColumns(profile)), goalMs: 30 },
    { name: 'first arrivals of a tag on a 3 km map', ms: bestMs(2, () => void space().arrivalsAt(at, 1.7)), goalMs: 3_000 },
    { name: 'all waves at a place 1.6 km off, beside a power line, median of a walk', ms: placeMs(warm), goalMs: 0.2 },
  ];
}

if (process.argv[1]?.endsWith('radio.ts')) {
  for (const { name, ms, goalMs } of figures()) console.log(`${name}: ${ms.toFixed(ms < 1 ? 2 : 1)} ms (goal ${goalMs})`);
}
