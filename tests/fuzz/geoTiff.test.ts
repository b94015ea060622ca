import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readGeoTiff } from '../../src/browser/geoTiff/readGeoTiff';
import { randomFor } from '../../src/core/random/draw';
import { InputFaults } from '../../src/core/scenario/faults';
import { MOST_MS_PER_MB } from './tryInput';

const { sample } = JSON.parse(readFileSync('tests/fuzz/seeds.json', 'utf8')) as { readonly sample: string };
const FOLDER = 'tests/core/elevation/tiffs';
const samples = readdirSync(FOLDER).map((file) => readFileSync(`${FOLDER}/${file}`));
const SAMPLE = 1_500;

/** A file with some bytes changed, half of them among its tags; cut off now and then. */
function spoilt(number: number): ArrayBuffer {
  const draw = randomFor(sample, 'test', number);
  const bytes = Uint8Array.from(samples[Math.floor(draw() * samples.length)]!);
  for (let i = 0; i < 1 + Math.floor(6 * draw() ** 2); i++) {
    const head = draw() < 0.5 ? 700 : bytes.length;
    bytes[Math.floor(draw() * head)] = draw() < 0.5 ? 0xff : Math.floor(256 * draw());
  }
  return bytes.buffer.slice(0, draw() < 0.1 ? Math.floor(draw() * bytes.length) : bytes.length);
}

test(`${SAMPLE} spoilt GeoTIFFs are read or refused with a reason, in time and without more room than a grid takes`, async () => {
  const harmful: string[] = [];
  let refused = 0;
  for (let i = 0; i < SAMPLE; i++) {
    const from = performance.now();
    try {
      const { heightsM } = await readGeoTiff('hostile', spoilt(i), 'metres', () => {});
      if (heightsM.length > 4_000_000) harmful.push(`${i}: ${heightsM.length} cells`);
    } catch (error) {
      if (!(error instanceof InputFaults)) harmful.push(`${i}: ${String(error)}`);
      else if (error.faults.some(({ found, mend }) => found === '' || mend === '')) harmful.push(`${i}: a fault that says nothing`);
      else refused++;
    }
    const ms = performance.now() - from;
    if (ms > 4 * MOST_MS_PER_MB) harmful.push(`${i}: ${ms.toFixed(0)} ms`);
  }
  expect(harmful).toEqual([]);
  expect(refused).toBeGreaterThan(SAMPLE / 4);
});
