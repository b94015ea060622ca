import { expect, test } from 'vitest';
import { quietGain, sameArcAtDeg } from '../../../src/core/listening/quietGain';
import { sampledBeep } from './sampledBeep';

const at = (gainDb: number, headingDeg: number) => sampledBeep(quietGain, { gainDb, headingDeg }).beepDb;

test('loud, 60 degrees off the bearing sound within 0.5 dB of it; quiet, they are more than 2 dB softer', () => {
  expect(at(84, 0) - at(84, 60)).toBeLessThan(0.5);
  expect(at(20, 0) - at(20, 60)).toBeGreaterThan(2);
});

test('the arc in which nothing changes never narrows as gain rises from 50 dB', () => {
  const arcs = [50, 60, 70, 80, 90].map((gainDb) => sameArcAtDeg(quietGain.start, gainDb));
  for (let i = 1; i < arcs.length; i++) expect(arcs[i]!).toBeGreaterThanOrEqual(arcs[i - 1]!);
  expect(arcs[0]!).toBeLessThan(70);
  expect(arcs.at(-1)!).toBeGreaterThan(180);
});
