import { notebookFix } from '../fix/notebookFix';
import { distanceFromLeastGainM } from '../technique/gainDistance';
import type { Script } from './hands';
import type { Hunt } from './hunt';
import type { Look } from './lookRound';
import { nextPlace, placeBeyond } from './nextPlace';
import { walkThere } from './onFoot';

/** Lines enough that cross so well, and the fix is said; with so many it is said if there is one at all. */
const LEAST_LINES = 3;
const CROSSED_WELL_DEG = 40;
const MANY_LINES = 7;
/** The way to the next station, a share of what the gain says of the distance. */
const STEP_SHARE = 0.45;
const LEAST_STEP_M = 100;
const MOST_STEP_M = 400;
/** Straight across the bearing the tag comes no nearer; a bound that may be near is left outwards. */
const ACROSS_DEG = 85;
const OUTWARD_DEG = 125;
const NEAR_BOUND_SHARE = 1.5;

/** Says the fix where the lines cross well, else walks across the bearing to the next station, never towards the tag. */
export function* nextStation(hunt: Hunt, found: Look): Script<void> {
  const { seen } = hunt.view;
  const fix = notebookFix(seen.notebook);
  const lines = hunt.readings.length;
  if (fix.ok && lines >= LEAST_LINES && (fix.crossingAngleDeg >= CROSSED_WELL_DEG || lines >= MANY_LINES)) {
    hunt.view = yield [{ type: 'declareFix' }];
    return;
  }
  const awayM = distanceFromLeastGainM(found.leastGainDb);
  const boundM = seen.task.kind === 'fix' ? (seen.task.keepAwayM ?? 0) : 0;
  const stepM = Math.min(MOST_STEP_M, Math.max(LEAST_STEP_M, STEP_SHARE * awayM));
  const sideDeg = awayM < NEAR_BOUND_SHARE * boundM ? OUTWARD_DEG : ACROSS_DEG;
  // Always round the same side: to and fro gives no new line.
  for (const side of [1, -1]) {
    const alongDeg = found.bearingDeg + side * sideDeg;
    const { reads } = hunt.decisions;
    const to = nextPlace(seen.map, seen.at, { alongDeg, stepM, spreadDeg: 25, reads }) ?? placeBeyond(seen.map, seen.at, alongDeg, stepM);
    if (to && (yield* walkThere(hunt, to, found.bearingDeg))) return;
  }
}
