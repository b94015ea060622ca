import { TICKS_PER_S } from '../run/state';
import { clock, linearScore, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import type { WalkEvidence } from './walkEvidence';

/** A share of standing that leaves time to walk; and one that leaves none. */
const FULL_STANDING_SHARE = 0.35;
const NO_MARKS_STANDING_SHARE = 0.75;
/** A look round is not standing about, up to this many pulse intervals; longer it is. */
const LOOK_ROUND_PULSES = 40;
/** In less hunting time than this one look at the map decides the share. */
const LEAST_HUNTING_S = 120;
/** A stand or a walk of this length is worth a moment. */
const LEAST_MOMENT_S = 30;

type Doing = 'waits' | 'looks' | 'stands' | 'walks';

/** *Moves*: how little of the hunting time is spent standing, apart from looks round. */
export function movesPart(walk: WalkEvidence): HabitPart {
  const doing = whatIsDone(walk);
  const count = (what: Doing) => doing.filter((done) => done === what).length;
  const [stood, walked] = [count('stands'), count('walks')];
  if (stood + walked < LEAST_HUNTING_S * TICKS_PER_S) return PART_NOT_SHOWN;
  const score = linearScore(stood / (stood + walked), FULL_STANDING_SHARE, NO_MARKS_STANDING_SHARE);
  return { score, moments: stretches(doing).flatMap(momentOf) };
}

/** What each tick is spent on. The hunt begins with the first sweep or step; changing the antenna takes its time and is left out. */
function whatIsDone({ states, sweeps, walking, pulseS }: WalkEvidence): readonly Doing[] {
  const firsts = [walking.indexOf(1), sweeps[0]?.fromTick ?? -1].filter((tick) => tick >= 0);
  const begin = firsts.length === 0 ? 0 : Math.min(...firsts);
  const doing = states.map(({ tick, busyUntilTick }, i): Doing => {
    if (i < begin || tick < busyUntilTick) return 'waits';
    return walking[i] ? 'walks' : 'stands';
  });
  for (const { fromTick, toTick } of sweeps) {
    if (toTick - fromTick > LOOK_ROUND_PULSES * pulseS * TICKS_PER_S) continue;
    for (let i = fromTick; i <= toTick; i++) if (doing[i] === 'stands') doing[i] = 'looks';
  }
  return doing;
}

type Stretch = { readonly what: Doing; readonly fromTick: number; readonly toTick: number };

function stretches(doing: readonly Doing[]): readonly Stretch[] {
  const starts = doing.flatMap((what, i) => (i === 0 || doing[i - 1] !== what ? [i] : []));
  return starts.map((fromTick, k) => ({ what: doing[fromTick]!, fromTick, toTick: starts[k + 1] ?? doing.length }));
}

function momentOf({ what, fromTick, toTick }: Stretch): readonly Moment[] {
  const [fromS, toS] = [fromTick / TICKS_PER_S, toTick / TICKS_PER_S];
  const weight = toS - fromS;
  if (weight < LEAST_MOMENT_S) return [];
  if (what === 'stands') {
    return [
      {
        fromS,
        toS,
        what: `From ${clock(fromS)} you stood for ${clock(weight)} without a sweep: standing brings no new line.`,
        next: 'Look round once, then walk on and listen as you go.',
        weight,
        good: false,
      },
    ];
  }
  if (what !== 'walks') return [];
  const said = `From ${clock(fromS)} you kept walking for ${clock(weight)}: every step was a new place to hear from.`;
  // A walk counts for less than a stand of the same length: most walks are long, and what went wrong should be seen first.
  return [{ fromS, toS, what: said, next: 'Keep walking between short looks round.', weight: weight / 4, good: true }];
}
