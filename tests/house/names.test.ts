import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

/** Names that fit anything say nothing. */
const SAYS_NOTHING = /(^|\/)(utils?|helpers?|common|misc|manager|shared|lib|types|constants|index)\.tsx?$/i;

test('no file has a name that fits anything', () => {
  expect(files.filter((name) => SAYS_NOTHING.test(name))).toEqual([]);
});

test.each(files)('%s stops at 300 lines', (name) => {
  expect(readFileSync(`src/${name}`, 'utf8').split('\n').length).toBeLessThanOrEqual(301);
});
