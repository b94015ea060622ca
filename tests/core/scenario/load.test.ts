import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultLine, InputFaults } from '../../../src/core/scenario/faults';
import { scenarioJsonSchema } from '../../../src/core/scenario/jsonSchema';
import { loadScenario } from '../../../src/core/scenario/load';
import { migrate, migrations } from '../../../src/core/scenario/migrations';
import { canonicalText, digestOf } from '../../../src/core/scenario/seal';
import { plainScenario } from '../world/fixtureScenario';

function faultsOf(text: string): readonly string[] {
  try {
    loadScenario('fell.json', text);
    return [];
  } catch (error) {
    if (error instanceof InputFaults) return error.faults.map(faultLine);
    throw error;
  }
}

/** The plain exercise with one value replaced at a dotted path. */
function withValue(path: string, value: unknown): string {
  const copy = JSON.parse(JSON.stringify(plainScenario())) as Record<string, unknown>;
  const keys = path.split('.');
  let at = copy;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string, unknown>;
  at[keys.at(-1)!] = value;
  return JSON.stringify(copy);
}

test('a whole exercise loads without a fault and comes back as it was', () => {
  const scenario = plainScenario();
  expect(loadScenario('fell.json', JSON.stringify(scenario))).toEqual(scenario);
});

test.each(readdirSync('scenarios').filter((name) => name.endsWith('.json') && !name.endsWith('schema.json')))(
  'shared scenario %s loads',
  (name) => {
    expect(faultsOf(readFileSync(`scenarios/${name}`, 'utf8'))).toEqual([]);
  },
);

test.each([
  ['an unknown key', withValue('ground.colour', 'red'), 'fell.json: ground.colour: unknown key.'],
  ['a number out of bounds', withValue('tags.0.frequencyMHz', 900), 'fell.json: tags.0.frequencyMHz: too big'],
  ['a tag outside the map', withValue('tags.0.at', [3_500, 10]), 'outside the map of 3000 m'],
  ['no tag', withValue('tags', []), 'fell.json: tags:'],
  ['a missing list of tags', withValue('tags', undefined), 'fell.json: tags:'],
  ['an antenna that is not in the kit', withValue('kit.startAntenna', 'whip'), '"whip" is not in kit.antennas'],
  ['wires above their supports', withValue('ground.powerLines.0.wireHeightM', 20), 'hang above supports'],
  ['too much cover', withValue('ground.cover.wood', 0.9), 'shares add up to'],
  ['a hand Yagi at 40 MHz', withValue('kit.designMHz', 40), 'elements over 1.5 m'],
  ['a companion at another time', withValue('companion', 'before'), 'write "beside" or "afterwards"'],
  ['NaN', JSON.stringify(plainScenario()).replace('"level":2', '"level":NaN'), 'write a number where NaN'],
  ['broken JSON', '{"format": "faintward-scenario",', 'not JSON'],
  ['an empty file', '  ', 'no text'],
  ['twenty megabytes', `"${'x'.repeat(20_000_000)}"`, 'more than the 2000000'],
])('%s gives one clear line', (_what, text, line) => {
  const faults = faultsOf(text);
  expect(faults.length).toBe(1);
  expect(faults[0]).toContain(line);
  expect(faults[0]).toMatch(/^fell\.json: .+\. Mend: .+\.$/);
});

test('all faults of a file are told at once', () => {
  const text = withValue('level', 9).replace('"seed":"plain-ground"', '"seed":""').replace('"mainsHz":50', '"mainsHz":55');
  expect(faultsOf(text).length).toBe(3);
});

test('every migration is tried on a real file of its version', () => {
  // None is there yet; the list decides, so that a new one without its old file fails here.
  for (const { from } of migrations) {
    const file = `tests/core/scenario/versions/v${from}.json`;
    expect(() => loadScenario(file, readFileSync(file, 'utf8'))).not.toThrow();
  }
  const lifted = migrate({ version: 1, a: 1 }, [{ from: 1, name: 'a becomes b', up: ({ a, ...rest }) => ({ ...rest, b: a }) }]);
  expect(lifted).toEqual({ version: 2, b: 1 });
});

test('the digest belongs to the content, not to the order of keys', () => {
  const scenario = plainScenario();
  const turned = JSON.parse(JSON.stringify(Object.fromEntries(Object.entries(scenario).reverse())));
  expect(digestOf(turned)).toBe(digestOf(scenario));
  expect(digestOf({ ...scenario, seed: 'other' })).not.toBe(digestOf(scenario));
  expect(canonicalText({ b: [1, { d: null, c: 'x' }], a: true })).toBe('{"a":true,"b":[1,{"c":"x","d":null}]}');
});

// SHA-256 of the two bytes "{}", as any implementation of FIPS 180-4 gives it.
test('the digest is SHA-256 of the canonical text', () => {
  expect(digestOf({})).toBe('44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a');
});

test('the JSON Schema beside the scenarios is the one that the program has', () => {
  const kept = JSON.parse(readFileSync('scenarios/scenario.schema.json', 'utf8')) as { $schema: string };
  expect(kept).toEqual(JSON.parse(JSON.stringify(scenarioJsonSchema())));
  expect(kept.$schema).toContain('2020-12');
});
