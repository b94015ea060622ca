import { deflateSync } from 'fflate';
import { expect, test } from 'vitest';
import { packedCard, type ScoreCard, scoreCardOf, unpackedCard } from '../../../src/core/club/scoreCard';
import { wordsOfDigest } from '../../../src/core/scenario/digestWords';
import { InputFaults } from '../../../src/core/scenario/faults';
import { digestOf } from '../../../src/core/scenario/seal';
import { plainScenario } from '../world/fixtureScenario';

const outcome = {
  found: true,
  ending: 'found',
  timeS: 754.25,
  walkedM: 1_200,
  declarations: 1,
  bearingErrorDeg: 6,
  guessErrorM: null,
} as const;
const about = { name: 'Rowan', by: 'person', aided: false, begunAt: '2031-05-12T19:30:05+02:00' } as const;
const scenario = plainScenario();
const card = scoreCardOf(scenario, { technique: 71.44, outcome }, about);

test('a card says what the run came to, and its exercise by title and four words', () => {
  expect(card).toEqual({
    title: scenario.title,
    exercise: digestOf(scenario).slice(0, 8),
    name: 'Rowan',
    by: 'person',
    technique: 71.4,
    found: true,
    timeS: 754.3,
    aided: false,
    on: '2031-05-12',
  });
  expect(wordsOfDigest(card.exercise.padEnd(64, '0'))).toBe(wordsOfDigest(digestOf(scenario)));
  expect(scoreCardOf(scenario, { technique: 71.44, outcome }, { ...about, withInstructor: true })).toEqual({
    ...card,
    withInstructor: true,
  });
  expect(scoreCardOf(scenario, { technique: null, outcome: { ...outcome, fix: null } }, { ...about, begunAt: undefined })).toMatchObject({
    technique: null,
    fixOffM: null,
  });
});

test.each<[string, ScoreCard]>([
  ['as it is', card],
  ['with nothing but what must be', { ...card, name: '', technique: null, on: undefined }],
  ['with an instructor', { ...card, withInstructor: true }],
  ['of a fix', { ...card, found: false, fixOffM: 83.5 }],
  ['in other letters', { ...card, title: 'Ночной лес', name: 'Zoë “夜の丘” 👩‍🌾' }],
])('a card %s comes back as it was', (_what, one) => {
  expect(unpackedCard(packedCard(one))).toEqual(JSON.parse(JSON.stringify(one)));
});

test('the longest names of plain letters leave room in a code of 800 bytes, a usual card takes under 150', () => {
  const letters = (n: number) => Array.from({ length: 60 }, (_, i) => String.fromCharCode(97 + ((i * n) % 26))).join('');
  expect(packedCard({ ...card, title: letters(7), name: letters(11), aided: true, fixOffM: 1_234.5 }).length).toBeLessThan(400);
  expect(packedCard(card).length).toBeLessThan(150);
});

const packed = (text: string): string => `c1.${Buffer.from(deflateSync(new TextEncoder().encode(text))).toString('base64url')}`;
const refusal = (text: string): string => {
  try {
    unpackedCard(text);
    return 'none';
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return error.faults.map(({ path, found, mend }) => `${path}: ${found}: ${mend}`).join('; ');
  }
};

test.each([
  ['nothing', '', /no score card that this version can unpack: point the camera at the code again/],
  ['an exercise', 'd1.abc', /no score card that this version can unpack/],
  ['other letters', 'c1.é', /letters that no score card is packed in/],
  ['half a card', packedCard(card).slice(0, -9), /cut off or changed/],
  ['a bomb', packed(' '.repeat(5_000_000)), /more than (any score card holds|the 1000 of a score card)/],
  ['a long text', `c1.${'A'.repeat(2_000)}`, /2003 characters, more than the 1000 of a score card/],
  ['a score of 300', packed(JSON.stringify({ ...card, technique: 300 })), /technique: .*, found 300/],
  ['a key more', packed(JSON.stringify({ ...card, rank: 1 })), /rank: unknown key/],
  ['a name written backwards', packed(JSON.stringify({ ...card, name: 'Ro\u202enaw' })), /turns the direction of writing/],
  [
    'a name in two scripts',
    packed(JSON.stringify({ ...card, name: 'Rоwan' })),
    /letters of two scripts in one word of a name at line 1.*: point the camera/,
  ],
])('%s is no card, and that is told with its mend', (_what, text, says) => {
  expect(refusal(text)).toMatch(says);
});
