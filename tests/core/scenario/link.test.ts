import { readdirSync, readFileSync } from 'node:fs';
import { deflateSync } from 'fflate';
import { expect, test } from 'vitest';
import { randomFor } from '../../../src/core/random/draw';
import { InputFaults } from '../../../src/core/scenario/faults';
import { LONGEST_LINK, packedScenario, QR_BYTES, unpackedScenario } from '../../../src/core/scenario/link';
import { loadScenario } from '../../../src/core/scenario/load';
import { digestOf } from '../../../src/core/scenario/seal';
import { plainScenario } from '../world/fixtureScenario';

const shared = readdirSync('scenarios').filter((name) => name.endsWith('.json') && !name.includes('schema'));
const scenarioOf = (name: string) => loadScenario(name, readFileSync(`scenarios/${name}`, 'utf8'));
const linked = (bytes: Uint8Array): string => `d1.${Buffer.from(bytes).toString('base64url')}`;

test.each(shared)('%s in a link has the same digest when it is unpacked, and takes at most 2,000 letters', (name) => {
  const scenario = scenarioOf(name);
  const packed = packedScenario(scenario);
  expect(packed).toMatch(/^d1\.[A-Za-z0-9_-]+$/);
  expect(packed.length).toBeLessThanOrEqual(2_000);
  expect(digestOf(unpackedScenario(packed))).toBe(digestOf(scenario));
});

test('every shared exercise leaves room for an address in the 800 bytes of a QR code', () => {
  for (const name of shared) expect(packedScenario(scenarioOf(name)).length, name).toBeLessThan(QR_BYTES - 100);
});

test('titles and briefs in any script come back letter by letter', () => {
  const scenario = { ...plainScenario(), title: 'Überm Moor 🦊', brief: 'Шум — "лес" & <ветер>' };
  expect(unpackedScenario(packedScenario(scenario))).toEqual(scenario);
});

test('a bomb is refused: 40 MB of one letter, and an honest size at too high a ratio', () => {
  const bomb = deflateSync(new Uint8Array(40_000_000).fill(97));
  expect(bomb.length).toBeLessThan(40_000);
  expect(() => unpackedScenario(linked(bomb))).toThrow(/unpacks to more than any exercise holds/);
  expect(() => unpackedScenario(linked(deflateSync(new Uint8Array(200_000).fill(97))))).toThrow(/unpacks to more/);
});

test.each<[string, string, RegExp]>([
  ['nothing', '', /no exercise/],
  ['another packing', 'z9.AAAA', /no exercise/],
  ['letters of no alphabet', 'd1.ab!cd', /letters/],
  ['only the beginning', packedScenario(plainScenario()).slice(0, 200), /cut off or changed/],
  ['more than is read', `d1.${'A'.repeat(LONGEST_LINK)}`, /more than the/],
  ['a packed text that is no exercise', linked(deflateSync(new TextEncoder().encode('{"format":"x"}'))), /link: format/],
])('a link with %s is told in a clear line', (_what, packed, says) => {
  expect(() => unpackedScenario(packed)).toThrow(InputFaults);
  expect(() => unpackedScenario(packed)).toThrow(says);
});

test('of 300 links with one letter changed none breaks in another way than by faults, and none is another exercise unseen', () => {
  const scenario = plainScenario();
  const packed = packedScenario(scenario);
  for (let i = 0; i < 300; i++) {
    const random = randomFor(`link-${i}`, 'test');
    const at = 3 + Math.floor(random() * (packed.length - 3));
    const changed = packed.slice(0, at) + 'ABCwxyz019-_'[Math.floor(random() * 12)] + packed.slice(at + 1);
    try {
      const read = unpackedScenario(changed);
      if (JSON.stringify(read) !== JSON.stringify(scenario)) expect(digestOf(read)).not.toBe(digestOf(scenario));
    } catch (error) {
      expect(error).toBeInstanceOf(InputFaults);
    }
  }
});
