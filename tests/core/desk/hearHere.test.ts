import { expect, test } from 'vitest';
import { blankExercise } from '../../../src/core/desk/blankExercise';
import { withField } from '../../../src/core/desk/field';
import { hearHere } from '../../../src/core/desk/hearHere';
import { loudest } from '../../../src/core/listening/soundRing';
import { openExercise } from '../../../src/core/run/exercise';
import { turnDeg } from '../../../src/core/units/angles';

const flat = withField(withField(blankExercise('ring'), 'ground.relief.strengthM', 0), 'ground.cover.wood', 0);
const exercise = openExercise(flat);
const AT = { eM: 1_100, nM: 900 };
const hear = (gainDb: number, attenuatorDb = 0) => hearHere(exercise, AT, { tag: 0, gainDb, attenuatorDb });

test('on flat open ground the ring’s loudest heading is the true one, and the place is told as it is', () => {
  const here = hear(20);
  expect(here.trueDeg).toBe(0);
  expect(here.distanceM).toBe(400);
  expect(here.inSight).toBe(true);
  expect(here.ring).toHaveLength(120);
  expect(Math.abs(turnDeg(here.trueDeg, loudest(here.ring).headingDeg))).toBeLessThanOrEqual(6);
  expect(Math.abs(turnDeg(here.bestDeg, loudest(here.ring).headingDeg))).toBeLessThanOrEqual(6);
  expect(here.waves.some(({ kind }) => kind === 'direct')).toBe(true);
  expect(structuredClone(here)).toEqual(here);
});

test('the ring opens at least gain and not 1 dB under it', () => {
  const least = hear(20).leastGainDb!;
  const gainAt = (netDb: number) => hear(netDb + 30, 30).ring.some(({ audible }) => audible);
  const plain = (netDb: number) => (netDb >= 0 ? hear(netDb).ring.some(({ audible }) => audible) : gainAt(netDb));
  expect(plain(least + 1)).toBe(true);
  expect(plain(least - 1)).toBe(false);
});

test('with much gain the ring is flat out all round, with little it is not', () => {
  expect(hear(90).ring.every(({ flatOut }) => flatOut)).toBe(true);
  expect(hear(20).ring.some(({ audible }) => !audible)).toBe(true);
});
