import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { faultLine, type InputFaults } from '../../src/core/scenario/faults';
import { jsonFrom } from '../../src/core/scenario/jsonText';
import { loadScenario } from '../../src/core/scenario/load';
import { plainScenario } from '../core/world/fixtureScenario';
import { FORMATS } from './formats';
import { hostileText } from './hostileText';
import { keptInputs } from './keptInputs';
import { prototypesNow, tryInput } from './tryInput';

const { sample } = JSON.parse(readFileSync('tests/fuzz/seeds.json', 'utf8')) as { readonly sample: string };
/** A sample that every test run can pay for; `npm run fuzz` tries 100,000 and more. */
const SAMPLE = 1_200;

test.each(FORMATS.map((format) => [format.name, format] as const))('the good samples of %s are read', (_name, { samples, read }) => {
  expect(tryInput(read, samples[0]!)).toMatchObject({ kind: 'read' });
});

test.each(FORMATS.map((format) => [format.name, format] as const))(
  `${SAMPLE} spoilt files of %s are read or refused with a reason: none crashes the reader, none touches a prototype`,
  (_name, { samples, read, packed }) => {
    const before = prototypesNow();
    const harmful: string[] = [];
    let refused = 0;
    for (let i = 0; i < SAMPLE; i++) {
      const { kind, why } = tryInput(read, hostileText(samples, sample, i, packed));
      if (kind === 'crash') harmful.push(`${i}: ${why}`);
      if (kind === 'refused') refused++;
    }
    expect(harmful).toEqual([]);
    expect(refused).toBeGreaterThan(SAMPLE / 2);
    expect(prototypesNow()).toBe(before);
  },
);

test('every kept input is refused with a reason, and its file is of a format that there is', () => {
  const kept = keptInputs();
  expect(kept.length).toBeGreaterThanOrEqual(30);
  const harmful = kept.filter(({ format, text }) => {
    const { read } = FORMATS.find(({ name }) => name === format)!;
    return tryInput(read, text).kind !== 'refused';
  });
  expect(harmful.map(({ file }) => file)).toEqual([]);
});

const faultsOf = (text: string): readonly string[] => {
  try {
    loadScenario('fell.json', text);
    return [];
  } catch (error) {
    return (error as InputFaults).faults.map(faultLine);
  }
};
const plain = JSON.stringify(plainScenario());
const withName = (name: string) => JSON.stringify({ ...plainScenario(), title: name });

test.each<[string, string, RegExp]>([
  ['2 million lists inside one another', '['.repeat(1_999_999), /more than 16 lists and objects inside one another at line 1/],
  ['half a million empty lists', `[${'[],'.repeat(500_000)}[]]`, /more than the 60000 values that are read/],
  ['a key twice', plain.replace('"level":', '"level":1,"level":'), /the key "level" twice in one object at line 1/],
  ['a key twice, once in escapes', plain.replace('"level":', '"lev\\u0065l":1,"level":'), /the key "level" twice/],
  ['the key of the prototype', plain.replace('"level":', '"__proto__":{"found":true},"level":'), /the key "__proto__"/],
  ['the same in escapes', plain.replace('"level":', '"\\u005f_proto__":{"found":true},"level":'), /the key "__proto__"/],
  ['a number that no double holds', plain.replace('"level":2', '"level":1e999'), /larger than any that can be computed with/],
  ['a million digits', plain.replace('"level":2', `"level":${'9'.repeat(1_000_000)}`), /a number of more than 60 characters/],
  ['a name written backwards', withName('Open \u202efell'), /turns the direction of writing/],
  ['the same in escapes', withName('Open ?fell').replace('?', '\\u202e'), /turns the direction of writing/],
  ['an invisible space', withName('Open\u200b fell'), /an invisible character/],
  ['a letter borrowed from another script', withName('Oреn fell'), /letters of two scripts in one word of a name/],
  ['a bell', withName('Open \u0007 fell'), /a control character/],
  ['half a letter pair', withName('Open ?').replace('?', '\\ud83e'), /half a character/],
  ['marks that cover the page', withName(`Open ${'e\u0301\u0302\u0303\u0304\u0305\u0306'}`), /more than four marks/],
  ['two tags whose names look alike', withTags('Merle', 'МЕRLE'.replace('R', 'R')), /letters of two scripts|looks like that of tag 0/],
  ['two tags of names in two scripts that look alike', withTags('cope', 'соре'), /tags\.1\.name: a name that looks like that of tag 0/],
])('%s gives one clear line', (_what, text, says) => {
  const faults = faultsOf(text);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(says);
});

function withTags(first: string, second: string): string {
  const [tag] = plainScenario().tags;
  return JSON.stringify({
    ...plainScenario(),
    tags: [
      { ...tag, name: first },
      { ...tag, name: second },
    ],
  });
}

test.each(['Überm Moor 🦊', 'Ночной лес', 'Merle 2 µV', 'שדה פתוח', 'Ανοιχτό λιβάδι', '夜の丘 2', 'Zoë’s “far” fell', '👩‍🌾 farm'])(
  'an honest name is let be: %s',
  (name) => {
    expect(loadScenario('fell.json', withName(name)).title).toBe(name);
  },
);

test('-0 is read as 0, as a digest reads it', () => {
  expect(jsonFrom('x', '{"a": [-0, -0.0, -1]}')).toEqual({ a: [0, 0, -1] });
});
