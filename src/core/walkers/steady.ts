import { bestSupportedDirection } from '../fix/support';
import { clearestDialMHz } from '../receiver/tuning';
import { distanceFromLeastGainM } from '../technique/gainDistance';
import { turnDeg } from '../units/angles';
import { distanceM, type MapPoint } from '../units/frames';
import { CLOSE_M, closeIn } from './closeIn';
import { doAndWait, type Script } from './hands';
import { type Decisions, type Hunt, STEADY_DECISIONS } from './hunt';
import { chooseAxis, type Look, lookAllRound, setNet } from './lookRound';
import { nextPlace } from './nextPlace';
import { walkThere } from './onFoot';
import type { Policy, View, Walker } from './policy';

/** Steps between readings: a share of the distance that the gain suggests, within a few minutes' walk. */
const STEP_SHARE = 0.3;
const LEAST_STEP_M = 45;
const MOST_STEP_M = 320;

/** The built-in expert: quiet gain, hands off in the sweep, walks by ear between open places. */
export const steady: Walker = { id: 'steady', play: (first, random) => huntWith(STEADY_DECISIONS, first, random) };

/** The same hunt with other decisions. */
export function* huntWith(decisions: Decisions, first: View, random: () => number): Policy {
  const hunt: Hunt = { view: first, random, decisions, readings: [], leastGainDb: null };
  const tag = first.seen.tagList[0]!;
  hunt.view = (yield* doAndWait([{ type: 'tune', tunedMHz: clearestDialMHz(tag.frequencyMHz) }], 2)).view;
  let axisKnown = false;
  for (;;) {
    if (!axisKnown) axisKnown = yield* chooseAxis(hunt);
    else if (hunt.leastGainDb !== null) yield* setNet(hunt, hunt.leastGainDb + decisions.wantedDb);
    const found = axisKnown ? yield* lookAllRound(hunt) : null;
    if (!found) {
      yield* seekView(hunt);
      continue;
    }
    yield* write(hunt, found);
    if (distanceFromLeastGainM(found.leastGainDb) < CLOSE_M) yield* closeIn(hunt);
    else yield* goOn(hunt, found);
  }
}

function* write(hunt: Hunt, found: Look): Script<void> {
  hunt.leastGainDb = found.leastGainDb;
  hunt.readings.push({ at: hunt.view.seen.at, bearingDeg: found.bearingDeg, leastGainDb: found.leastGainDb });
  hunt.view = yield [{ type: 'turn', toDeg: found.bearingDeg }, { type: 'mark' }];
}

/** Where the readings together point; the last one where they don't agree. */
function direction(hunt: Hunt, found: Look): { readonly alongDeg: number; readonly point: MapPoint | null } {
  const supported = bestSupportedDirection(hunt.readings.slice(-5), hunt.view.seen.at);
  if (!supported || supported.agreeing < 2) return { alongDeg: found.bearingDeg, point: null };
  return { alongDeg: supported.bearingDeg, point: supported.point };
}

function* goOn(hunt: Hunt, found: Look): Script<void> {
  const { seen } = hunt.view;
  const { alongDeg, point } = direction(hunt, found);
  const byGainM = distanceFromLeastGainM(found.leastGainDb);
  const crossedM = point ? distanceM(seen.at, point) : Number.POSITIVE_INFINITY;
  const stepM = Math.min(MOST_STEP_M, Math.max(LEAST_STEP_M, STEP_SHARE * byGainM), Math.max(LEAST_STEP_M, crossedM));
  const wish = { alongDeg, stepM, spreadDeg: 45, score: hunt.decisions.placeScore };
  const to = nextPlace(seen.map, seen.at, wish) ?? nextPlace(seen.map, seen.at, { ...wish, spreadDeg: 105, stepM: LEAST_STEP_M });
  if (to) yield* walkThere(hunt, to, Math.abs(turnDeg(alongDeg, found.bearingDeg)) < 60 ? alongDeg : found.bearingDeg);
  else yield* seekView(hunt);
}

/** Nothing heard, or no way on: up to an open place near by, antenna raised. */
function* seekView(hunt: Hunt): Script<void> {
  const { seen } = hunt.view;
  const alongDeg = 360 * hunt.random();
  const stepM = 120 + 180 * hunt.random();
  const to = nextPlace(seen.map, seen.at, { alongDeg, stepM, spreadDeg: 90, score: hunt.decisions.placeScore });
  if (to) yield* walkThere(hunt, to, alongDeg);
  else hunt.view = (yield* doAndWait([{ type: 'walk', courseDeg: alongDeg, paceMPerS: seen.limits.paceMPerS }], 20)).view;
  hunt.view = yield [{ type: 'raise', raised: true }];
}
