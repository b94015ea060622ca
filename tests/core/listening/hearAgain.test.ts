import { expect, test } from 'vitest';
import { heardAt } from '../../../src/core/listening/air';
import { DEMONSTRATIONS } from '../../../src/core/listening/catalogue';
import { dialsOf } from '../../../src/core/listening/demonstrationDials';
import { gainOver, overDbOf } from '../../../src/core/listening/gainOver';
import { demonstrationFor, type HeardThen, SITUATIONS } from '../../../src/core/listening/hearAgain';
import { readSettings } from '../../../src/core/listening/settings';
import { type Surroundings, situationOf } from '../../../src/core/listening/situation';

const THEN: HeardThen = { gainDb: 70, attenuatorDb: 0, rollDeg: 90, distanceM: 420, offDeg: 12, offsetHz: 0, excessDb: 40 };
const ABOUT: Surroundings = { audible: true, flatOut: false, wiresM: Number.POSITIVE_INFINITY, inWood: false, axisLossDb: 0 };

/** The settings with which the room opens an address. */
function opened(address: string) {
  const [path, query] = address.split('?') as [string, string];
  const demonstration = DEMONSTRATIONS.find(({ id }) => path === `#/listen/${id}`)!;
  const read = readSettings(query, demonstration.start, dialsOf(demonstration));
  const overDb = overDbOf(query);
  return { demonstration, settings: overDb === null ? read : gainOver(demonstration, read, overDb) };
}

test.each(SITUATIONS)('%s opens a demonstration by its own title, every setting on its dial', (situation) => {
  const { address, title, id } = demonstrationFor(situation, THEN);
  const { demonstration, settings } = opened(address);
  expect([demonstration.id, demonstration.title]).toEqual([id, title]);
  for (const part of address.split('?')[1]!.split('&')) {
    const [key, value] = part.split('=');
    if (key === 'overDb') continue;
    expect(dialsOf(demonstration).map((dial) => dial.key as string)).toContain(key);
    expect([key, settings[key as keyof typeof settings]]).toEqual([key, Number(value)]);
  }
});

test('every demonstration is some situation’s', () => {
  expect(new Set(SITUATIONS.map((situation) => demonstrationFor(situation, THEN).id))).toEqual(new Set(DEMONSTRATIONS.map(({ id }) => id)));
});

test('40 dB over least gain in the run is 40 dB over least gain in the room, flat out in front and behind', () => {
  const { demonstration, settings } = opened(demonstrationFor('saturated', { ...THEN, offDeg: -170 }).address);
  expect(settings.headingDeg).toBe(190);
  const heard = [0, 180].map((deg) => heardAt(demonstration.air(settings), settings, deg));
  expect(heard.map(({ audible }) => audible)).toEqual([true, true]);
  expect(settings.gainDb - opened(demonstrationFor('saturated', { ...THEN, excessDb: 10 }).address).settings.gainDb).toBeCloseTo(30, 0);
});

test('too much gain at 420 m opens the 400 m of the page, at 1 km the 800 m', () => {
  const choice = (distanceM: number) => opened(demonstrationFor('too much gain', { ...THEN, distanceM }).address).settings.choice;
  expect([choice(150), choice(420), choice(1_000)]).toEqual([0, 1, 2]);
});

test('close by, distance, gain and attenuator are those of the moment', () => {
  const { settings } = opened(demonstrationFor('close', { ...THEN, distanceM: 17, attenuatorDb: 20, gainDb: 12 }).address);
  expect([settings.walkM, settings.attenuatorDb, settings.gainDb]).toEqual([18, 20, 12]);
});

test('on the wrong axis the roll is kept and the whip lies across it', () => {
  const at = (rollDeg: number) => opened(demonstrationFor('wrong axis', { ...THEN, rollDeg }).address).settings;
  expect([at(90).rollDeg, at(90).choice, at(0).rollDeg, at(0).choice]).toEqual([90, 2, 0, 0]);
});

test.each([
  ['quietGain', {}, { flatOut: true }, 'saturated'],
  ['quietGain', {}, {}, 'too much gain'],
  ['quietGain', { excessDb: -8 }, { audible: false }, 'not heard'],
  ['quietGain', { distanceM: 30 }, { flatOut: true }, 'close'],
  ['quietGain', { offsetHz: 1_800 }, {}, 'off the note'],
  ['setThenSweep', {}, {}, 'too much gain'],
  ['walkAndListen', { offDeg: 175 }, {}, 'back signal'],
  ['walkAndListen', { offDeg: 70 }, {}, 'bounce'],
  ['walkAndListen', { offDeg: 5 }, {}, 'crossing'],
  ['walkAndListen', { offDeg: 70 }, { inWood: true }, 'woodland fade'],
  ['clearView', {}, { wiresM: 40 }, 'wires near'],
  ['clearView', {}, {}, 'low place'],
  ['clearView', {}, { axisLossDb: 15 }, 'wrong axis'],
] as const)('%s with %o and %o was: %s', (habit, then, about, situation) => {
  expect(situationOf(habit, { ...THEN, ...then }, { ...ABOUT, ...about })).toBe(situation);
});
