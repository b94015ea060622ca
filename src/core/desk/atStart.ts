import { leastGainDb } from '../ear/leastGain';
import { USUAL_LISTENER } from '../ear/loudness';
import { receive } from '../receiver/receive';
import { clearestDialMHz } from '../receiver/tuning';
import type { Exercise } from '../run/exercise';
import { atTerminal, bestAtPlace, bestHold, tagHere } from '../run/sense';
import { soughtTag } from '../run/task';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM } from '../units/frames';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';
import { quickestWalk } from '../world/reachable';

/** What the tag that is sought is at the start, antenna and knobs as the exercise gives them. */
export type AtStart = {
  readonly distanceM: number;
  /** Seconds of the quickest walk at full pace; `null` where no way leads to the tag. */
  readonly walkS: number | null;
  readonly inSight: boolean;
  /** `null` where no gain lets one hear it. */
  readonly leastGainDb: number | null;
  /** Gain less attenuation as set, less least gain; `null` where that is. */
  readonly excessDb: number | null;
  /** How much louder the best heading is than its opposite, as the knobs are set, dB after the limiter. */
  readonly frontOverBackDb: number;
  /** Of the loudest heading against the truth, degrees, 0 to 180. */
  readonly loudestOffDeg: number;
};

const CHEST_M = 1.7;

export function atStart(exercise: Exercise): AtStart {
  const { scenario, world } = exercise;
  const { kit, start, limits, tags } = scenario;
  const at = { eM: start.at[0], nM: start.at[1] };
  const sought = soughtTag(scenario);
  const here = tagHere(exercise, sought, at, CHEST_M, 0);
  const best = bestHold(exercise, here, kit.startAntenna);
  const least = leastGainDb(bestAtPlace(exercise, here, best, kit.startAntenna), USUAL_LISTENER);
  const setting = { gainDb: kit.startGainDb, attenuatorDb: kit.startAttenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) };
  const levelDb = (headingDeg: number) =>
    receive(atTerminal(exercise, here, { ...best, headingDeg, raised: false, antenna: kit.startAntenna }), setting).levelDb;
  return {
    distanceM: distanceM(at, here.tagAt),
    walkS: quickestWalk(world, at, here.tagAt, limits.paceMPerS)?.seconds ?? null,
    inSight: lineOfSight(world, pointOver(world, at, CHEST_M), pointOver(world, here.tagAt, tags[sought]!.heightM)).clear,
    leastGainDb: least,
    excessDb: least === null ? null : kit.startGainDb - kit.startAttenuatorDb - least,
    frontOverBackDb: levelDb(best.headingDeg) - levelDb((best.headingDeg + 180) % 360),
    loudestOffDeg: Math.abs(turnDeg(bearingDeg(at, here.tagAt), best.headingDeg)),
  };
}
