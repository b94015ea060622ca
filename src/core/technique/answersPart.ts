import { type RunState, TICKS_PER_S } from '../run/state';
import type { MapPoint } from '../units/frames';
import { groundHeightM } from '../world/height';
import type { World } from '../world/world';
import { clock, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import { BETTER_VIEW_PERCENTILES } from './legs';
import type { Outlook } from './outlook';
import { LEAST_CONTRAST } from './placesPart';
import type { Setback } from './setbacks';
import type { SuggestedDistance } from './suggestedDistance';

/** Height that is worth as much as a better view: it clears the next bank or wall. */
const HIGHER_M = 10;
const WITHIN_S = 180;
/** The way after a setback is looked at this often. */
const LOOK_EVERY_S = 5;
const ANSWER_WEIGHT = 60;

type Ground = { readonly world: World; readonly outlook: Outlook };

/**
 * *Answers*: after a contradiction or a lost signal, does the learner gain 20 percentiles of openness or 10 m of height within
 * three minutes? Asked only where some place within three minutes' walk would have given that, and the run went on so long.
 */
export function answersPart(
  states: readonly RunState[],
  setbacks: readonly Setback[],
  ground: Ground,
  distance: SuggestedDistance,
): HabitPart {
  const answers = setbacks.flatMap((setback) => {
    const from = states[setback.tick]!.at;
    if (distance.isClose(setback.tick) || !outlookCouldBeGained(ground, from)) return [];
    const lastTick = setback.tick + WITHIN_S * TICKS_PER_S;
    const isUp = states.slice(setback.tick, lastTick + 1).some(({ hold }) => (hold.aloftM ?? 0) >= HIGHER_M);
    const gained = isUp || placesAfter(states, setback.tick, lastTick).some((at) => isClearer(ground, from, at));
    return gained || lastTick < states.length ? [{ setback, gained }] : [];
  });
  if (answers.length === 0) return PART_NOT_SHOWN;
  return { score: (100 * answers.filter(({ gained }) => gained).length) / answers.length, moments: answers.map(momentOf) };
}

const outlookCouldBeGained = (ground: Ground, from: MapPoint): boolean => {
  const places = ground.outlook.reachable(from, WITHIN_S);
  return places.some((at) => isHigher(ground, from, at)) || places.some((at) => isClearer(ground, from, at));
};

const isHigher = ({ world }: Ground, from: MapPoint, at: MapPoint): boolean =>
  groundHeightM(world, at) - groundHeightM(world, from) >= HIGHER_M;

function isClearer(ground: Ground, from: MapPoint, at: MapPoint): boolean {
  if (isHigher(ground, from, at)) return true;
  const { outlook } = ground;
  if (outlook.contrastAround(from) < LEAST_CONTRAST) return false; // on flat ground percentiles are chance
  return outlook.percentileAmong(at, from) - outlook.percentileAmong(from, from) >= BETTER_VIEW_PERCENTILES;
}

function placesAfter(states: readonly RunState[], fromTick: number, toTick: number): readonly MapPoint[] {
  const places: MapPoint[] = [];
  for (let tick = fromTick; tick <= Math.min(toTick, states.length - 1); tick += LOOK_EVERY_S * TICKS_PER_S) places.push(states[tick]!.at);
  return places;
}

function momentOf({ setback, gained }: { readonly setback: Setback; readonly gained: boolean }): Moment {
  const fromS = setback.tick / TICKS_PER_S;
  const happened = setback.kind === 'lost' ? 'the signal was lost' : 'two readings contradicted each other';
  const what = gained
    ? `At ${clock(fromS)} ${happened}, and within three minutes you were higher or in a clearer view.`
    : `At ${clock(fromS)} ${happened}, and for three minutes you stayed low, though a clearer view was near.`;
  const next = gained
    ? 'Go on so: when the sound lies, go where the ground sees far.'
    : 'Go up or out into the open at once, and read again there.';
  return { fromS, toS: fromS + WITHIN_S, what, next, weight: gained ? ANSWER_WEIGHT / 2 : ANSWER_WEIGHT, good: gained };
}
