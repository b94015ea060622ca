import { loudnessDb } from '../ear/hear';
import { leastGainDb } from '../ear/leastGain';
import { type Listener, thresholdDb, USUAL_LISTENER } from '../ear/loudness';
import { type Heard, RING_HEADINGS } from '../listening/air';
import type { Wave } from '../radio/wave';
import { receive } from '../receiver/receive';
import { clearestDialMHz } from '../receiver/tuning';
import type { Exercise } from '../run/exercise';
import { atTerminal, bestAtPlace, bestHold, tagHere } from '../run/sense';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';

/** What a tag is at a place: its waves, and the sound ring at a gain. */
export type HeardHere = {
  readonly at: MapPoint;
  readonly ring: readonly Heard[];
  readonly waves: readonly Wave[];
  /** The loudest heading, and the true one. */
  readonly bestDeg: number;
  readonly trueDeg: number;
  readonly distanceM: number;
  readonly inSight: boolean;
  /** `null` where no gain lets one hear it. */
  readonly leastGainDb: number | null;
};

export type HearSetting = { readonly tag: number; readonly gainDb: number; readonly attenuatorDb: number };

const CHEST_M = 1.7;

/** At the exercise's beginning, with the antenna it is begun with on its best roll, the dial on the clearest note. */
export function hearHere(exercise: Exercise, at: MapPoint, setting: HearSetting, listener: Listener = USUAL_LISTENER): HeardHere {
  const { scenario, world } = exercise;
  const { pulseMs, heightM } = scenario.tags[setting.tag]!;
  const antenna = scenario.kit.startAntenna;
  const here = tagHere(exercise, setting.tag, at, CHEST_M, 0);
  const best = bestHold(exercise, here, antenna);
  const controls = { gainDb: setting.gainDb, attenuatorDb: setting.attenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) };
  const ring = RING_HEADINGS.map((headingDeg): Heard => {
    const received = receive(atTerminal(exercise, here, { headingDeg, rollDeg: best.rollDeg, raised: false, antenna }), controls);
    const overDb = loudnessDb(received, pulseMs, listener);
    return {
      ...received,
      headingDeg,
      loudnessDb: overDb,
      thresholdDb: thresholdDb(received.noiseDb, listener, pulseMs),
      audible: overDb >= 0,
    };
  });
  return {
    at,
    ring,
    waves: here.arrivals.waves,
    bestDeg: best.headingDeg,
    trueDeg: bearingDeg(at, here.tagAt),
    distanceM: distanceM(at, here.tagAt),
    inSight: lineOfSight(world, pointOver(world, at, CHEST_M), pointOver(world, here.tagAt, heightM)).clear,
    leastGainDb: leastGainDb(bestAtPlace(exercise, here, best, antenna), listener),
  };
}
