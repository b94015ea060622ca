import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { worldDigest } from '../../src/core/world/digest';
import { RELIEF_STYLES, worldOf } from '../core/world/sixGrounds';

const PATH = 'tests/golden/worlds.json';
const actual = Object.fromEntries(RELIEF_STYLES.map((style) => [style, worldDigest(worldOf(style))]));

// Written by a person who has looked at the new grounds, never by a machine.
if (process.env['GOLDEN'] === 'write' && !process.env['CI']) writeFileSync(PATH, `${JSON.stringify(actual, null, 2)}\n`);
const golden = existsSync(PATH) ? (JSON.parse(readFileSync(PATH, 'utf8')) as Record<string, string>) : {};

test.each(RELIEF_STYLES)('the %s ground has the bits it had when it was last looked at', (style) => {
  expect(actual[style]).toBe(golden[style]);
});
