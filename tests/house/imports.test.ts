import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

/** The folders of the core in reading order: each imports only from those above it. */
const ORDER = [
  'units',
  'random',
  'scenario',
  'elevation',
  'world',
  'antenna',
  'radio',
  'receiver',
  'ear',
  'voice',
  'run',
  'fix',
  'technique',
  'walkers',
  'listening',
  'drills',
  'logbook',
  'debrief',
  'desk',
  'club',
];

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

const coreFiles = filesIn('src/core');

test.each(coreFiles)('core/%s imports only from folders above its own', (file) => {
  const own = file.split('/')[0]!;
  expect(ORDER).toContain(own);
  const above = ORDER.slice(0, ORDER.indexOf(own));
  for (const [, folder] of readFileSync(`src/core/${file}`, 'utf8').matchAll(/from '\.\.\/(\w+)\//g)) expect(above).toContain(folder);
});

/** Each outside library has one door. */
const DOORS: Readonly<Record<string, readonly string[]>> = {
  zod: ['core/scenario/', 'core/run/record.ts', 'core/club/savedTable.ts', 'core/club/scoreCard.ts', 'core/logbook/bookFile.ts'],
  'ts-fsrs': ['core/logbook/schedule.ts'],
  seedrandom: ['core/random/draw.ts'],
  fflate: ['core/scenario/packing.ts'],
  'simplex-noise': ['core/world/'],
  '@noble/hashes': ['core/scenario/seal.ts'],
  phaser: ['browser/ground/'],
  tone: ['browser/sound/'],
  idb: ['browser/storage/'],
  uplot: ['browser/debrief/charts/'],
  geotiff: ['browser/geoTiff/'],
  uqr: ['browser/share/'],
  'd3-contour': ['browser/map/'],
  cac: ['cli/main.ts'],
  pngjs: ['cli/survey.ts'],
};

const sources = filesIn('src').map((name) => [name, readFileSync(`src/${name}`, 'utf8')] as const);

test.each(Object.entries(DOORS))('%s comes in by its own door only', (library, doors) => {
  const users = sources.filter(([, text]) => new RegExp(`(from|import)\\s*\\(?'${library}[/']`).test(text)).map(([name]) => name);
  expect(users.filter((name) => !doors.some((door) => name.startsWith(door)))).toEqual([]);
});

test('core reaches neither browser nor command line, and they not one another', () => {
  const crossings = sources.filter(([name, text]) => {
    const own = name.split('/')[0];
    const others = ['browser', 'cli', 'tests'].filter((folder) => folder !== own);
    return others.some((folder) => new RegExp(`from '(\\.\\./)+${folder}/`).test(text));
  });
  expect(crossings.map(([name]) => name)).toEqual([]);
});
