import { expect, test } from 'vitest';
import { worldDigest } from '../../src/core/world/digest';
import { RELIEF_STYLES, worldOf } from '../core/world/sixGrounds';
import { goldenAnswers } from './goldenAnswers';

const PATH = 'tests/golden/worlds.json';
const actual = Object.fromEntries(RELIEF_STYLES.map((style) => [style, worldDigest(worldOf(style))]));

const golden = goldenAnswers(PATH, actual, (grounds) => JSON.stringify(grounds, null, 2)) ?? {};

test.each(RELIEF_STYLES)('the %s ground has the bits it had when it was last looked at', (style) => {
  expect(actual[style]).toBe(golden[style]);
});
