import { readFileSync } from 'node:fs';
import { type Airspace, makeAirspace } from '../../src/core/radio/arrivals';
import { deltaBullingtonDb } from '../../src/core/radio/deltaBullington';
import { GROUND, permittivity } from '../../src/core/radio/ground';
import { pathColumns } from '../../src/core/radio/path';
import { terrainField } from '../../src/core/radio/terrainField';
import { openExercise } from '../../src/core/run/exercise';
import { tagAt } from '../../src/core/run/tagMotion';
import { loadScenario } from '../../src/core/scenario/load';
import type { MapPoint } from '../../src/core/units/frames';
import { generateWorld } from '../../src/core/world/generate';
import { plainScenario } from '../core/world/fixtureScenario';

/** One measured speed: milliseconds, and the goal it is held against. */
export type Timed = { readonly name: string; readonly ms: number; readonly goalMs: number };

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

/** Median of the waves at a place, milliseconds, the field known and the code warm. */
function placeMs(space: Airspace, places: readonly MapPoint[]): number {
  for (let round = 0; round < 4; round++) for (const at of places) space.arrivalsAt(at, 1.7);
  const took = places.map((at) => bestMs(1, () => void space.arrivalsAt(at, 1.7)));
  return took.sort((a, b) => a - b)[places.length >> 1]!;
}

/** The same for 400 places spread over the map of a shipped exercise. */
function mapMs(file: string): number {
  const scenario = loadScenario(file, readFileSync(`scenarios/${file}.json`, 'utf8'));
  const world = generateWorld(scenario);
  const space = makeAirspace({ scenario, world, tagIndex: 0, tagAt: tagAt(scenario, 0, 0) });
  // steps of two irrational shares fill a square evenly
  const share = (i: number, by: number) => world.sizeM * (0.05 + 0.9 * ((i * by) % 1));
  return placeMs(
    space,
    Array.from({ length: 400 }, (_, i) => ({ eM: share(i, 0.618034), nM: share(i, 0.754878) })),
  );
}

/** Delta-Bullington over 200 hilly points: a thousand calls, the best of many such lots, milliseconds. */
function deltaBullingtonMs(): number {
  const distancesM = Array.from({ length: 200 }, (_, i) => 25 * i);
  const heightsM = distancesM.map((x) => 30 * Math.sin(x / 400) + 10 * Math.sin(x / 97));
  const path = { distancesM, heightsM, txHeightM: 1, rxHeightM: 1.7, frequencyMHz: 150 };
  return bestMs(300, () => {
    for (let i = 0; i < 1_000; i++) deltaBullingtonDb(path, GROUND['medium-dry'], 'h');
  });
}

/** All columns of a thousand profiles, half a kilometre to 2 km, one after another, milliseconds. */
function thousandPathsMs(): number {
  const paths = Array.from({ length: 1_000 }, (_, n) => {
    const distancesM = Array.from({ length: 21 + ((n * 37) % 60) }, (_, i) => 25 * i);
    return { distancesM, heightsM: distancesM.map((x) => 30 * Math.sin(x / (180 + (n % 90))) + 8 * Math.sin(n + x / 77)) };
  });
  const ends = { frequencyMHz: 150, polarization: 'v' as const, txHeightM: 0.5, rxHeightM: 1.7, ground: GROUND.wet };
  return bestMs(1, () => {
    for (const path of paths) pathColumns({ ...ends, ...path });
  });
}

/** Milliseconds until the waves at a standing walker are known at each new place of a tag that walks on, mean of 20 places. */
function movingTagMs(): number {
  const plain = plainScenario();
  const points: [number, number][] = [[2_250, 2_100]];
  const movement = { kind: 'path' as const, points, speedMPerS: 1, pauseS: 0 };
  const scenario = { ...plain, tags: [{ ...plain.tags[0]!, movement }] };
  const exercise = openExercise(scenario);
  const hear = (timeS: number) => exercise.airspace(0, tagAt(scenario, 0, timeS)).arrivalsAt({ eM: 1_500, nM: 1_300 }, 1.7);
  hear(0);
  return bestMs(1, () => void Array.from({ length: 20 }, (_, i) => hear(12 * (i + 1)))) / 20;
}

/** A shipped exercise from its text to the first waves at its start, nothing known before, milliseconds. */
function readyToWalkMs(file: string): number {
  const text = readFileSync(`scenarios/${file}.json`, 'utf8');
  return bestMs(2, () => {
    const scenario = loadScenario(file, text);
    const [eM, nM] = scenario.start.at;
    openExercise(scenario)
      .airspace(0, tagAt(scenario, 0, 0))
      .arrivalsAt({ eM, nM }, 1.7);
  });
}

/** Speeds of the propagation model. Figures, not tests: other work on the machine moves them. */
export function figures(): readonly Timed[] {
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
  const walk = Array.from({ length: 400 }, (_, i) => ({ eM: 700 + 0.37 * i, nM: 900 + 0.21 * i }));
  return [
    { name: 'radial 5 km, 150 MHz, flat, both polarizations', ms: bestMs(7, radial(0, 5_000)), goalMs: 60 },
    { name: 'radial 5 km, 150 MHz, hills of 80 m', ms: bestMs(5, radial(40, 5_000)), goalMs: 60 },
    { name: 'radial 1 km, 150 MHz, flat', ms: bestMs(7, radial(0, 1_000)), goalMs: 8 },
    { name: 'path columns, 2 km profile', ms: bestMs(5, () => void pathColumns(profile)), goalMs: 30 },
    { name: 'delta-Bullington, 200 points, 1,000 calls (200,000 a second)', ms: deltaBullingtonMs(), goalMs: 5 },
    { name: 'path columns, 1,000 profiles of 0.5 to 2 km in one process', ms: thousandPathsMs(), goalMs: 30_000 },
    { name: 'ready to walk, Two ridges (3 km), one core', ms: readyToWalkMs('two-ridges'), goalMs: 3_000 },
    { name: 'moving tag, first waves at each new place', ms: movingTagMs(), goalMs: 1_000 },
    { name: 'first arrivals of a tag on a 3 km map', ms: bestMs(2, () => void space().arrivalsAt(at, 1.7)), goalMs: 3_000 },
    { name: 'all waves at a place 1.6 km off, beside a power line, median of a walk', ms: placeMs(warm, walk), goalMs: 0.2 },
    { name: 'all waves at a place, Open fell, median of its map', ms: mapMs('open-fell'), goalMs: 0.2 },
    { name: 'all waves at a place, Two ridges, median of its map', ms: mapMs('two-ridges'), goalMs: 0.2 },
  ];
}

if (process.argv[1]?.endsWith('radio.ts')) {
  for (const { name, ms, goalMs } of figures()) console.log(`${name}: ${ms.toFixed(ms < 1 ? 2 : 1)} ms (goal ${goalMs})`);
}
