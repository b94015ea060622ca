import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { lineNoiseAt } from '../../../src/core/radio/gapNoise';
import { GROUND } from '../../../src/core/radio/ground';
import { pathColumns } from '../../../src/core/radio/path';
import type { Wave } from '../../../src/core/radio/wave';
import { fieldSquared } from '../../../src/core/radio/waveVector';
import { randomFor } from '../../../src/core/random/draw';
import { openExercise } from '../../../src/core/run/exercise';
import { tagHere } from '../../../src/core/run/sense';
import { loadScenario } from '../../../src/core/scenario/load';
import { goldenAnswers } from '../../golden/goldenAnswers';

const PATH = 'tests/core/radio/goldenArrivals.json';
/** A high line with its gap noise; metal barns and walls; hillsides that echo; a hill between; woodland. */
const GROUNDS = ['the-farm-line', 'farmyard', 'echo-scar', 'blind-over-saddock', 'ashgill-wood'];
const PLACES = 9;
const PROFILES = 12;
const DIGITS = 6;

type Told = Readonly<Record<string, number | string>>;

/** The field of the waves of one kind, V/m for 1 W: in sum with its phases, in power, and how many there are. */
function kindTold(waves: readonly Wave[]): Told {
  const sum = (of: (wave: Wave) => number) => Number(waves.reduce((all, wave) => all + of(wave), 0).toPrecision(DIGITS));
  const losses: Record<string, number> = {};
  for (const { lossDb } of waves) for (const [cause, db] of Object.entries(lossDb)) losses[cause] = (losses[cause] ?? 0) + (db as number);
  return {
    waves: waves.length,
    power: sum(fieldSquared),
    east: `${sum((w) => w.eastRe)} ${sum((w) => w.eastIm)}`,
    north: `${sum((w) => w.northRe)} ${sum((w) => w.northIm)}`,
    up: `${sum((w) => w.upRe)} ${sum((w) => w.upIm)}`,
    turned: sum((w) => fieldSquared(w) * Math.cos((w.azimuthDeg * Math.PI) / 180)),
    lifted: sum((w) => fieldSquared(w) * w.elevationDeg),
    lossesDb: Object.entries(losses)
      .map(([cause, db]) => `${cause} ${db.toPrecision(DIGITS)}`)
      .sort()
      .join(', '),
  };
}

function places(name: string): Record<string, unknown> {
  const path = `scenarios/${name}.json`;
  const scenario = loadScenario(path, readFileSync(path, 'utf8'));
  const exercise = openExercise(scenario);
  const random = randomFor(`golden ${name}`, 'test');
  const told: Record<string, unknown> = {};
  for (let i = 0; i < PLACES; i++) {
    const [tag] = scenario.tags;
    // Near and far by turns: near a tag the flat earth answers, far off the terrain.
    const reachM = i % 3 === 0 ? 120 : scenario.ground.sizeM / 3;
    const inside = (m: number) => Math.min(scenario.ground.sizeM - 20, Math.max(20, Math.round(m)));
    const at = { eM: inside(tag!.at[0] + reachM * (2 * random() - 1)), nM: inside(tag!.at[1] + reachM * (2 * random() - 1)) };
    const heightM = [0.6, 1.7, 2.4, 9][i % 4]!;
    const { arrivals } = tagHere(exercise, 0, at, heightM, 0);
    const kinds = [...new Set(arrivals.waves.map(({ kind }) => kind))].sort();
    const noise = lineNoiseAt(scenario, exercise.world, tag!.frequencyMHz, at, heightM);
    told[`${at.eM} ${at.nM}, ${heightM} m`] = {
      ...Object.fromEntries(kinds.map((kind) => [kind, kindTold(arrivals.waves.filter((wave) => wave.kind === kind))])),
      lineNoise: noise.map(
        ({ azimuthDeg, elevationDeg, powerDbm }) => `${azimuthDeg.toFixed(3)} ${elevationDeg.toFixed(3)} ${powerDbm.toFixed(4)}`,
      ),
    };
  }
  return told;
}

/** Drawn profiles, their lengths and steps uneven, in all columns of `path`. */
function profiles(): Record<string, unknown> {
  const random = randomFor('golden profiles', 'test');
  const grounds = Object.values(GROUND);
  return Object.fromEntries(
    Array.from({ length: PROFILES }, (_, i) => {
      const count = 20 + Math.floor(60 * random());
      const stepM = 8 + 20 * random();
      const steepM = 4 * random() ** 2;
      let heightM = 100;
      const heightsM = Array.from({ length: count }, () => (heightM += steepM * stepM * 0.15 * (random() - 0.5)));
      const distancesM = heightsM.map((_height, k) => k * stepM);
      const columns = pathColumns({
        frequencyMHz: [40, 72, 150, 217, 433][i % 5]!,
        polarization: i % 2 === 0 ? 'v' : 'h',
        txHeightM: 0.5 + 3 * random(),
        rxHeightM: 1 + 8 * random(),
        distancesM,
        heightsM,
        ground: grounds[i % grounds.length]!,
      });
      return [
        i,
        Object.fromEntries(
          Object.entries(columns).map(([name, value]) => [name, typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value]),
        ),
      ];
    }),
  );
}

const actual: Record<string, unknown> = JSON.parse(
  JSON.stringify({ ...Object.fromEntries(GROUNDS.map((name) => [name, places(name)])), profiles: profiles() }),
);
// A run of last month is checked by hearing it again: waves that come out otherwise are a decision, written down by a person who has looked at why.
const golden = goldenAnswers(PATH, actual) ?? {};

test.each([...GROUNDS, 'profiles'])('%s: the same places have the waves that they had', (name) => {
  expect(golden[name]).toBeDefined();
  expect(actual[name]).toEqual(golden[name]);
});
