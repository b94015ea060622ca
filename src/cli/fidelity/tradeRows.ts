import { leastGainDb } from '../../core/ear/leastGain';
import { USUAL_LISTENER } from '../../core/ear/loudness';
import { makeAirspace } from '../../core/radio/arrivals';
import type { Wave } from '../../core/radio/wave';
import { fieldOf, partAlong, rightOf, upOf } from '../../core/radio/waveVector';
import { randomFor } from '../../core/random/draw';
import { FULL_GAIN_DB } from '../../core/receiver/limiter';
import { receive } from '../../core/receiver/receive';
import { clearestDialMHz } from '../../core/receiver/tuning';
import { type Exercise, openExercise } from '../../core/run/exercise';
import { atTerminal, type BestHold, bestAtPlace, bestHold, type TagHere, tagHere } from '../../core/run/sense';
import type { AntennaId } from '../../core/scenario/schema';
import { type MapPoint, stepAlong } from '../../core/units/frames';
import { drawnGround } from './drawnGround';
import { medianFixErrorM } from './fixCoverage';
import { yagi } from './loudest';
import { once } from './once';
import type { CheckRow } from './row';

const TRADE = { mark: 'T', source: 'common practice, no source' } as const;

const TAG: MapPoint = { eM: 500, nM: 500 };
const ANTENNAS: readonly AntennaId[] = ['yagi3', 'yagi2', 'phased2', 'yagi5', 'loop', 'whip'];
const CHEST_M = 1.7;
/** The attenuator helps where full gain drives the limiter over its ceiling by so much or more, dB. */
const OVERDRIVE_DB = 20;

/** Flat wet ground of 6 km with nothing on it, a tag of 10 mW with its whip upright at 0.5 m. */
const open = once((): Exercise => {
  const drawn = drawnGround(
    'open-ground',
    {
      sizeM: 6_000,
      cellM: 20,
      relief: { style: 'smooth', strengthM: 0, roughness: 0, baseHeightM: 100 },
      cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      fieldWalls: false,
      buildings: [],
    },
    { at: [TAG.eM, TAG.nM], whip: { leanDeg: 0, towardDeg: 0 } },
  );
  return openExercise({ ...drawn, radio: { ...drawn.radio, groundClass: 'wet' } });
});

type Stand = { readonly here: TagHere; readonly best: BestHold };

function standAt(distanceM: number, antenna: AntennaId = 'yagi3', towardDeg = 45): Stand {
  const here = tagHere(open(), 0, stepAlong(TAG, towardDeg, distanceM), CHEST_M, 0);
  return { here, best: bestHold(open(), here, antenna) };
}

const leastAt = ({ here, best }: Stand): number => leastGainDb(bestAtPlace(open(), here, best, 'yagi3'), USUAL_LISTENER) ?? Number.NaN;

/** Level out of the receiver with the antenna turned from its best heading, and how far the pulse drives the limiter, dB re its ceiling. */
function heard({ here, best }: Stand, turnDeg: number, gainDb: number, attenuatorDb = 0): { levelDb: number; driveDb: number } {
  const hold = { headingDeg: best.headingDeg + turnDeg, rollDeg: best.rollDeg, raised: false, antenna: 'yagi3' as const };
  return receive(atTerminal(open(), here, hold), { gainDb, attenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) });
}

const frontOverBackDb = (stand: Stand, gainDb: number, attenuatorDb = 0): number =>
  heard(stand, 0, gainDb, attenuatorDb).levelDb - heard(stand, 180, gainDb, attenuatorDb).levelDb;

/** Front over back at least gain + 10 dB, the attenuator in where gain alone cannot go so low. */
function frontOverBackQuietDb(stand: Stand): number {
  const netDb = leastAt(stand) + 10;
  return netDb >= 0 ? frontOverBackDb(stand, netDb) : frontOverBackDb(stand, netDb + 30, 30);
}

/** How far the best-placed antennas lie apart at a place, dB. */
function antennasApartDb(distanceM: number, towardDeg: number): number {
  const powers = ANTENNAS.map((antenna) => standAt(distanceM, antenna, towardDeg).best.powerDbm);
  return Math.max(...powers) - Math.min(...powers);
}

/**
 * Angle between the roll at which the hand Yagi hears most of a whip's wave and the wave's own axis, degrees, the largest over 20
 * whips drawn evenly over all directions, seen from 300 m over open ground.
 */
function rollOffAxisDeg(): number {
  const random = randomFor('whips', 'test');
  return Math.max(
    ...Array.from({ length: 20 }, () => {
      const whip = { leanDeg: (Math.acos(random()) * 180) / Math.PI, towardDeg: 359 * random() };
      const scenario = { ...open().scenario, tags: [{ ...open().scenario.tags[0]!, whip }] };
      const space = makeAirspace({ scenario, world: open().world, tagIndex: 0, tagAt: TAG });
      const wave = space.arrivalsAt(stepAlong(TAG, 45, 300), CHEST_M).waves.find(({ kind }) => kind === 'direct')!;
      const hears = yagi.fan([wave]);
      let [best, roll] = [-1, 0];
      for (let deg = 0; deg < 180; deg++) {
        const value = hears(wave.azimuthDeg, deg);
        if (value > best) [best, roll] = [value, deg];
      }
      const off = Math.abs(roll - axisRollDeg(wave));
      return Math.min(off, 180 - off);
    }),
  );
}

/** Roll of the long axis of a wave's polarization ellipse: 0 level, 90 upright, 0 to 180 to the right. */
function axisRollDeg(wave: Wave): number {
  const field = fieldOf(wave);
  const [v, h] = [partAlong(field, upOf(wave.azimuthDeg, wave.elevationDeg)), partAlong(field, rightOf(wave.azimuthDeg))];
  const tilt = 0.5 * Math.atan2(2 * (v.re * h.re + v.im * h.im), h.re ** 2 + h.im ** 2 - v.re ** 2 - v.im ** 2);
  return ((-tilt * 180) / Math.PI + 360) % 180;
}

/** What those who listen outdoors know, on flat ground in view of a tag of 10 mW. */
export const tradeRows: readonly CheckRow[] = [
  {
    claim: 'least gain 500 m from a tag in view: below a fifth of the gain range (18 dB)',
    unit: 'dB',
    value: () => leastAt(standAt(500)),
    reference: -6,
    tolerance: 24,
    ...TRADE,
  },
  {
    claim: 'least gain 4 km from it: above a third of the gain range (30 dB)',
    unit: 'dB',
    value: () => leastAt(standAt(4_000)),
    reference: 60,
    tolerance: 30,
    ...TRADE,
  },
  {
    claim: `500 m from it full gain drives the receiver over its ceiling by ${OVERDRIVE_DB} dB or more: the attenuator helps`,
    unit: 'dB',
    value: () => heard(standAt(500), 0, FULL_GAIN_DB).driveDb,
    reference: OVERDRIVE_DB + 30,
    tolerance: 30,
    ...TRADE,
  },
  {
    claim: '300 m from it, front over back at full gain: under 1 dB',
    unit: 'dB',
    value: () => frontOverBackDb(standAt(300), FULL_GAIN_DB),
    reference: 0,
    tolerance: 1,
    ...TRADE,
  },
  {
    claim: '300 m from it, front over back at least gain + 10 dB: over 10 dB',
    unit: 'dB',
    value: () => frontOverBackQuietDb(standAt(300)),
    reference: 30,
    tolerance: 20,
    ...TRADE,
  },
  {
    claim: 'transmitter first, antenna second: antennas at 5 places differ by less than tags of -10 and +10 dBm, at most',
    unit: 'dB',
    value: () =>
      Math.max(
        ...(
          [
            [500, 20],
            [1_000, 35],
            [2_000, 45],
            [3_000, 60],
            [4_000, 45],
          ] as const
        ).map(([far, deg]) => antennasApartDb(far, deg)),
      ),
    reference: 10,
    tolerance: 10,
    ...TRADE,
  },
  {
    claim: 'antennas on the same axis hear most: roll at the loudest off the axis of the direct wave, worst of 20 drawn whips',
    unit: 'degrees',
    value: rollOffAxisDeg,
    reference: 0,
    tolerance: 10,
    ...TRADE,
  },
  {
    claim: 'four well-spread stations against two: median fix error over 200 drawn exercises (no fix counts as far off), half or less',
    unit: 'times',
    value: () => medianFixErrorM(4) / medianFixErrorM(2),
    reference: 0.25,
    tolerance: 0.25,
    ...TRADE,
  },
];
