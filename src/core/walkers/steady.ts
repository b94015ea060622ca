import { antennaById } from '../antenna/catalogue';
import { clearestDialMHz } from '../receiver/tuning';
import type { Action } from '../run/actions';
import { distanceFromLeastGainM } from '../technique/gainDistance';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { CLOSE_M, closeIn } from './closeIn';
import { crossingNearM, supportedCourse } from './course';
import { doAndWait, type Script } from './hands';
import { beginHunt, type Decisions, type Hunt, STEADY_DECISIONS } from './hunt';
import { chooseAxis, type Look, lookDoubtingAxis, setNet } from './lookRound';
import { clearerPlace, nextPlace, placeBeyond, setBack, untriedPlace } from './nextPlace';
import { nextStation } from './nextStation';
import { flipped, walkThere } from './onFoot';
import type { Policy, View, Walker } from './policy';

/** Steps between readings: a share of the distance that the gain suggests, within a few minutes' walk. */
const STEP_SHARE = 0.35;
const LEAST_STEP_M = 50;
const MOST_STEP_M = 350;
const FIRST_STEP_M = 120;
/** The first line alone may lead to a hillside that throws the sound back: no farther on it than to a second line. */
const UNSURE_STEP_M = 160;
/** Between free space, 20 dB for ten times the distance, and plane earth, 40. */
const DECADE_DB = 30;
/** Less is a fade, not a step nearer. */
const LEAST_GROWTH_DB = 3;
/** Grown by so much over the last steps, it tells how far the tag is better than the gain does: a lying whip needs more gain than the rule. */
const SURE_GROWTH_DB = 12;
const SURE_GROWTH_SHARE = 0.17;
const LEFT_SHARE = 0.6;
const LONGER = 1.5;
const SHORTER = 0.5;
/** What was ahead is behind: the tag lies between, or one of the two lines lies. */
const TURNED_SHARE = 0.5;
/** Not beyond the crossing of the lines: the tag may lie before it. */
const CROSSED_SHARE = 0.8;
/** A shorter step tells nothing new. */
const LEAST_TO_CROSSING_M = 20;

/** Half a minute for the antenna, and a breath. */
const CHANGE_S = 31;

/** Two ten-minute practices a week, spread over the skills, as the steady one keeps them. */
const STEADY_PRACTICE = { daysPractised: 9, longestGapDays: 4, dueShare: 1, largestSkillShare: 0.4 };

/** The same hunt with other decisions. */
export const walkerWith = (id: string, changed: Partial<Decisions>, practice = STEADY_PRACTICE): Walker => ({
  id,
  practice,
  play: (first, random) => huntWith({ ...STEADY_DECISIONS, ...changed }, first, random),
});

/** The built-in expert: quiet gain, hands off in the sweep, walks by ear between open places. */
export const steady: Walker = walkerWith('steady', {});

function* huntWith(decisions: Decisions, first: View, random: () => number): Policy {
  const hunt = beginHunt(decisions, first, random);
  const { kit, hold, limits } = first.seen;
  // The vehicle stays where it is: the walk is what is rehearsed, with an antenna that can be carried.
  const carried = limits.vehicle && !antennaById(hold.antenna).onFoot ? kit.antennas.find((id) => antennaById(id).onFoot) : undefined;
  if (carried) hunt.view = (yield* doAndWait([{ type: 'changeAntenna', antenna: carried }], CHANGE_S)).view;
  const { frequencyMHz } = first.seen.tagList[first.seen.sought]!;
  hunt.view = (yield* doAndWait([{ type: 'tune', tunedMHz: clearestDialMHz(frequencyMHz) }], 1)).view;
  const silent: MapPoint[] = [];
  let axisKnown = false;
  for (;;) {
    if (hunt.leastGainDb !== null) yield* setNet(hunt, hunt.leastGainDb + decisions.wantedDb);
    const found: Look | null = axisKnown ? yield* lookDoubtingAxis(hunt, hunt.leastGainDb) : yield* chooseAxis(hunt);
    axisKnown ||= found !== null;
    if (!found) {
      silent.push(hunt.view.seen.at);
      yield* seekSound(hunt, silent);
      continue;
    }
    yield* write(hunt, found);
    if (hunt.view.seen.task.kind === 'fix') yield* nextStation(hunt, found);
    else if (decisions.heeds && distanceFromLeastGainM(found.leastGainDb) < CLOSE_M) yield* closeIn(hunt, found);
    else yield* goOn(hunt, found);
  }
}

function* write(hunt: Hunt, found: Look): Script<void> {
  hunt.leastGainDb = found.leastGainDb;
  hunt.readings.push({ at: hunt.view.seen.at, bearingDeg: found.bearingDeg, leastGainDb: found.leastGainDb });
  const { seen } = hunt.view;
  // Where the map shows nobody, one who knows his way draws the line from where he is: the fix is made of such lines.
  const here: readonly Action[] = seen.task.kind === 'fix' && !seen.placeShown ? [{ type: 'believe', at: seen.at }] : [];
  hunt.view = yield [{ type: 'turn', toDeg: found.bearingDeg }, ...here, { type: 'mark' }];
}

function* goOn(hunt: Hunt, found: Look): Script<void> {
  const { seen } = hunt.view;
  const { alongDeg, point } = supportedCourse(hunt, distanceFromLeastGainM(found.leastGainDb));
  const holdDeg = Math.abs(turnDeg(alongDeg, found.bearingDeg)) < 60 ? alongDeg : found.bearingDeg;
  const clearer =
    hunt.decisions.reads === 'open' && setBack(hunt) ? clearerPlace(seen.map, seen.at, alongDeg, seen.limits.paceMPerS) : null;
  if (clearer && (yield* walkThere(hunt, clearer, holdDeg))) return;
  const courseDeg = hunt.decisions.courseDeg(alongDeg, hunt.legs++, hunt.random);
  const stepM = stepOf(hunt, found, point);
  const wish = { alongDeg: courseDeg, stepM, spreadDeg: 40, reads: hunt.decisions.reads };
  const to = nextPlace(seen.map, seen.at, wish);
  if (to && (yield* walkThere(hunt, to, holdDeg))) return;
  const beyond =
    placeBeyond(seen.map, seen.at, courseDeg, stepM) ?? nextPlace(seen.map, seen.at, { ...wish, spreadDeg: 110, stepM: LEAST_STEP_M });
  if (beyond && (yield* walkThere(hunt, beyond, holdDeg))) return;
  yield* seekSound(hunt, [seen.at]);
}

/**
 * How far to walk before the next reading: a share of what the gain suggests, at least; longer each time while the sound grows
 * little, for in full view a tag is far louder than the rule has it; a share of what is left where it grows; not past the crossing.
 */
function stepOf(hunt: Hunt, found: Look, point: MapPoint | null): number {
  const { view, decisions, readings } = hunt;
  const [last, base] = [readings.at(-2), readings.at(-3) ?? readings.at(-2)];
  const { at } = view.seen;
  const grownDb = base ? base.leastGainDb - found.leastGainDb : 0;
  const byGrowthM = last && base ? growthStepM(distanceM(last.at, at), distanceM(base.at, at), grownDb) : FIRST_STEP_M;
  if (last && flipped(last.bearingDeg, found.bearingDeg)) return Math.max(LEAST_STEP_M, TURNED_SHARE * distanceM(last.at, at));
  const nearM = decisions.heeds ? crossingNearM(hunt) : null;
  if (nearM !== null) return Math.max(LEAST_TO_CROSSING_M, nearM);
  const byGainM = (grownDb >= SURE_GROWTH_DB ? SURE_GROWTH_SHARE : STEP_SHARE) * distanceFromLeastGainM(found.leastGainDb);
  const crossedM = point && decisions.heeds ? CROSSED_SHARE * distanceM(at, point) : Number.POSITIVE_INFINITY;
  return Math.min(last ? MOST_STEP_M : UNSURE_STEP_M, Math.max(LEAST_STEP_M, Math.min(crossedM, Math.max(byGainM, byGrowthM))));
}

/** A share of the distance that is left if the sound grew by so much since a place so far back; the last step bounds it. */
function growthStepM(lastM: number, backM: number, grownDb: number): number {
  if (grownDb < LEAST_GROWTH_DB) return LONGER * lastM;
  const leftM = backM / (10 ** (grownDb / DECADE_DB) - 1);
  return Math.min(LONGER * lastM, Math.max(SHORTER * lastM, LEFT_SHARE * leftM));
}

/** Nothing heard, or no way on: to a place not tried before, antenna raised. */
function* seekSound(hunt: Hunt, tried: readonly MapPoint[]): Script<void> {
  const { seen } = hunt.view;
  hunt.view = yield [{ type: 'raise', raised: true }];
  const to = untriedPlace(hunt, tried);
  if (to && (yield* walkThere(hunt, to, bearingDeg(seen.at, to)))) return;
  const walk = { type: 'walk', courseDeg: 360 * hunt.random(), paceMPerS: seen.limits.paceMPerS } as const;
  hunt.view = (yield* doAndWait([walk], 20)).view;
}
