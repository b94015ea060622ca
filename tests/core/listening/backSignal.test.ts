import { expect, test } from 'vitest';
import { leastGainDb } from '../../../src/core/ear/leastGain';
import { USUAL_LISTENER } from '../../../src/core/ear/loudness';
import { meetingOf } from '../../../src/core/fix/bearingLine';
import { heardRound, PULSE_MS } from '../../../src/core/listening/air';
import { backSignal, frontAndBack } from '../../../src/core/listening/backSignal';
import { heardSides } from '../../../src/core/listening/soundRing';
import { sampledBeep } from './sampledBeep';

const at = (gainDb: number, headingDeg: number, walkM = 0) => sampledBeep(backSignal, { gainDb, headingDeg, walkM });
const air = backSignal.air(backSignal.start);
const least = leastGainDb(
  {
    powerDbm: air.powerDbm(0, 90),
    outsideNoiseDbm: air.outsideNoiseDbm,
    ownNoiseDbm: air.ownNoiseDbm,
    buzzDbm: Number.NEGATIVE_INFINITY,
    pulseMs: PULSE_MS,
  },
  USUAL_LISTENER,
)!;

test('at full gain the samples in front and behind differ by less than 1 dB', () => {
  expect(Math.abs(at(90, 0).beepDb - at(90, 180).beepDb)).toBeLessThan(1);
  expect(at(90, 180).heard.flatOut).toBe(true);
});

test('10 dB over least gain the front is heard and the back is not', () => {
  const gainDb = Math.ceil(least + 10);
  expect(at(gainDb, 0).heard.audible).toBe(true);
  expect(at(gainDb, 180).heard.audible).toBe(false);
  expect(at(gainDb, 0).beepDb - at(gainDb, 180).beepDb).toBeGreaterThan(10);
  expect(at(gainDb, 180).beepDb).toBeLessThan(-55); // under what the usual ear hears in quiet
});

test('100 m on, the true bearings cross within 30 m of the transmitter and the back bearings lead apart', () => {
  const sides = [0, 100].map((walkM) => {
    const settings = { ...backSignal.start, gainDb: 40, walkM };
    return heardSides(heardRound(backSignal.air(settings), settings));
  });
  const stations = [
    { eM: 0, nM: 0 },
    { eM: 100, nM: 0 },
  ];
  const lines = (side: number) => stations.map((place, i) => ({ at: place, bearingDeg: sides[i]![side]!.headingDeg }));
  const crossing = meetingOf(lines(0)[0]!, lines(0)[1]!);
  expect(crossing.kind).toBe('ahead');
  if (crossing.kind === 'ahead') expect(Math.hypot(crossing.point.eM, crossing.point.nM - 300)).toBeLessThan(30);
  expect(meetingOf(lines(1)[0]!, lines(1)[1]!).kind).toBe('behind');
});

test('the sentence follows the sound: as loud behind, softer behind, one side left, nothing', () => {
  const said = (gainDb: number) => {
    const settings = { ...backSignal.start, gainDb };
    const ring = heardRound(backSignal.air(settings), settings);
    return backSignal
      .says({ air: backSignal.air(settings), settings, now: ring[0]!, ring })
      .map((piece) => (typeof piece === 'string' ? piece : piece.strong))
      .join('');
  };
  expect(said(84)).toContain('as loud behind');
  expect(said(40)).toContain('18 dB softer');
  expect(said(12)).toContain('the true side is left');
  expect(said(0)).toContain('nothing at all');
});

test('gain never changes what the antenna takes: front over back before the limiter is the same at 90 and 12 dB', () => {
  const gap = (gainDb: number) => {
    const { front, back } = frontAndBack({ ...backSignal.start, gainDb });
    return front.driveDb - back.driveDb;
  };
  expect(gap(90)).toBeCloseTo(gap(12), 6);
});
