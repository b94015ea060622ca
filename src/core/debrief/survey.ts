import { loudnessDb } from '../ear/hear';
import { type Listener, USUAL_LISTENER } from '../ear/loudness';
import { freeSpaceLossDb } from '../radio/freeSpace';
import { receive } from '../receiver/receive';
import { clearestDialMHz } from '../receiver/tuning';
import type { Exercise } from '../run/exercise';
import { atTerminal, bestHold, tagHere } from '../run/sense';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';
import { opennessAt } from '../world/openness';

/** What a survey can be of; `excess` is loss over free space. */
export const SURVEY_KINDS = ['loudness', 'excess', 'openness', 'apparent-bearing-error'] as const;
export type SurveyKind = (typeof SURVEY_KINDS)[number];

export type SurveySetting = {
  readonly tag: number;
  /** When: moving tags are somewhere else at another time. */
  readonly timeS: number;
  readonly gainDb: number;
  readonly attenuatorDb: number;
  readonly listener?: Listener;
};

/** Where a scale begins and ends, and what it is in. */
export type SurveyScale = { readonly from: number; readonly to: number; readonly unit: string };

export const SURVEY_SCALES: Readonly<Record<SurveyKind, SurveyScale>> = {
  loudness: { from: -10, to: 50, unit: 'dB above just heard' },
  excess: { from: 0, to: 60, unit: 'dB of loss over free space' },
  openness: { from: 0, to: 1, unit: 'share of the ground in view' },
  'apparent-bearing-error': { from: 0, to: 90, unit: 'degrees' },
};

/** The antenna at the chest of one who stands there. */
const HEIGHT_M = 1.7;

/** One quantity at one place; `null` where it is not defined. */
export function surveyAt(exercise: Exercise, what: SurveyKind, at: MapPoint, setting: SurveySetting): number | null {
  if (what === 'openness') return opennessAt(exercise.world, at);
  const { kit, tags } = exercise.scenario;
  const plan = tags[setting.tag]!;
  const here = tagHere(exercise, setting.tag, at, HEIGHT_M, setting.timeS);
  if (what === 'excess') {
    const inFreeSpaceDbm = here.eirpDbm - freeSpaceLossDb(Math.max(1, distanceM(at, here.tagAt)), plan.frequencyMHz);
    return inFreeSpaceDbm - here.isotropicDbm;
  }
  const best = bestHold(exercise, here, kit.startAntenna);
  if (what === 'apparent-bearing-error') return Math.abs(turnDeg(bearingDeg(at, here.tagAt), best.headingDeg));
  const hold = { ...best, raised: false, antenna: kit.startAntenna };
  const { gainDb, attenuatorDb, listener = USUAL_LISTENER } = setting;
  const controls = { gainDb, attenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) };
  return loudnessDb(receive(atTerminal(exercise, here, hold), controls), plan.pulseMs, listener);
}

/** Does one who stands there see the tag over the ground alone? */
export function seesTag({ scenario, world }: Exercise, at: MapPoint, tag: number, tagAt: MapPoint): boolean {
  return lineOfSight(world, pointOver(world, at, HEIGHT_M), pointOver(world, tagAt, scenario.tags[tag]!.heightM)).clear;
}

/**
 * The cells of a square survey of `side` points, row-major from the south-west, coarse to fine: every eighth, then every fourth and
 * so on, so that a picture is there at once and only gets sharper.
 */
export function surveyOrder(side: number): Uint32Array {
  const order = new Uint32Array(side * side);
  const done = new Uint8Array(side * side);
  let count = 0;
  for (const step of [8, 4, 2, 1]) {
    for (let row = 0; row < side; row += step) {
      for (let column = 0; column < side; column += step) {
        const cell = row * side + column;
        if (done[cell]) continue;
        done[cell] = 1;
        order[count++] = cell;
      }
    }
  }
  return order;
}

/** Middle of a cell of a survey. */
export const surveyPlace = (side: number, sizeM: number, cell: number): MapPoint => ({
  eM: (((cell % side) + 0.5) * sizeM) / side,
  nM: ((Math.floor(cell / side) + 0.5) * sizeM) / side,
});
