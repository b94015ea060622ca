import type { Exercise } from './exercise';
import type { RunState } from './state';

/** What an instructor may do to a run that he watches: kept in the log like anything the learner does, so that a replay meets it again. */
export type Deed =
  /** Sees where the tag is from here on: what follows may have been said aloud. */
  | { readonly type: 'watch' }
  /** A tag sends so much weaker than the exercise says, dB; 0 gives its strength back. */
  | { readonly type: 'weaken'; readonly tag: number; readonly byDb: number }
  /** All sparking supports buzz so much louder than the exercise says, dB; 0 ends it. */
  | { readonly type: 'raiseLineNoise'; readonly byDb: number }
  | { readonly type: 'hint'; readonly text: string }
  /** The run rests until it is let go on; no time of the run passes. */
  | { readonly type: 'holdUp'; readonly held: boolean };

/** A deed and when it was done. */
export type Intervention = { readonly atTick: number; readonly deed: Deed };

/** More brings no tag out of the model's range, and every one out of hearing. */
export const MOST_WEAKENED_DB = 60;
export const MOST_LINE_NOISE_DB = 40;
/** A hint is read while walking: two lines of a phone's screen. */
export const LONGEST_HINT = 160;
/** More of them than any evening brings are not taken. */
const MOST_INTERVENTIONS = 500;

const DEEDS: readonly string[] = ['watch', 'weaken', 'raiseLineNoise', 'hint', 'holdUp'] satisfies readonly Deed['type'][];
export const isDeed = <T extends { readonly type: string }>(action: T): action is Extract<T, Deed> => DEEDS.includes(action.type);

const inRange = (value: number, most: number): number => Math.min(most, Math.max(0, Math.round(value * 10) / 10));

/** A hint as it is kept: one line, no longer than is read while walking; empty where nothing was said. */
export const hintText = (text: string): string => [...text.replace(/\s+/g, ' ').trim()].slice(0, LONGEST_HINT).join('');

/** Takes a deed into the run; what would change nothing is not kept. */
export function interventionsWith(state: Pick<RunState, 'tick' | 'interventions'>, tags: number, deed: Deed): readonly Intervention[] {
  const { interventions, tick: atTick } = state;
  const kept = plainDeed(deed, tags);
  const changes = changesAt(interventions, atTick);
  const isNothing =
    kept === null ||
    interventions.length >= MOST_INTERVENTIONS ||
    (kept.type === 'watch' && interventions.some((past) => past.deed.type === 'watch')) ||
    (kept.type === 'weaken' && (changes.weakenedDb.get(kept.tag) ?? 0) === kept.byDb) ||
    (kept.type === 'raiseLineNoise' && changes.lineNoiseRaisedDb === kept.byDb) ||
    (kept.type === 'holdUp' && isHeldUp(interventions) === kept.held);
  return isNothing ? interventions : [...interventions, { atTick, deed: kept }];
}

/** Within its bounds; `null` where there is nothing to do. */
function plainDeed(deed: Deed, tags: number): Deed | null {
  if (deed.type === 'weaken') return deed.tag < tags ? { ...deed, byDb: inRange(deed.byDb, MOST_WEAKENED_DB) } : null;
  if (deed.type === 'raiseLineNoise') return { ...deed, byDb: inRange(deed.byDb, MOST_LINE_NOISE_DB) };
  if (deed.type !== 'hint') return deed;
  const text = hintText(deed.text);
  return text === '' ? null : { ...deed, text };
}

export const isHeldUp = (interventions: readonly Intervention[]): boolean =>
  interventions.reduce((held, { deed }) => (deed.type === 'holdUp' ? deed.held : held), false);

/** What an instructor has changed of the exercise by some time: dB by tag number, and of all lines. */
export type Changes = { readonly weakenedDb: ReadonlyMap<number, number>; readonly lineNoiseRaisedDb: number };

export function changesAt(interventions: readonly Intervention[], tick: number): Changes {
  const weakenedDb = new Map<number, number>();
  let lineNoiseRaisedDb = 0;
  for (const { atTick, deed } of interventions) {
    if (atTick > tick) break;
    if (deed.type === 'weaken') weakenedDb.set(deed.tag, deed.byDb);
    if (deed.type === 'raiseLineNoise') lineNoiseRaisedDb = deed.byDb;
  }
  return { weakenedDb, lineNoiseRaisedDb };
}

type Until = Pick<RunState, 'tick' | 'interventions'>;

/** The exercise as it sounds at a time of the run: tags as weak and lines as loud as an instructor has made them. */
export function asIntervened(exercise: Exercise, { interventions, tick }: Until): Exercise {
  if (interventions.length === 0) return exercise;
  const { weakenedDb, lineNoiseRaisedDb } = changesAt(interventions, tick);
  const losses = exercise.scenario.tags.map((_, tag) => weakenedDb.get(tag) ?? 0);
  if (lineNoiseRaisedDb === 0 && losses.every((byDb) => byDb === 0)) return exercise;
  return changedBy(exercise, losses, lineNoiseRaisedDb);
}

/** The exercise as its list of tags says, with lines as loud as they are: what a walker reckons with who has not been told more. */
export function asListedAndHeard(exercise: Exercise, { interventions, tick }: Until): Exercise {
  const { lineNoiseRaisedDb } = changesAt(interventions, tick);
  return lineNoiseRaisedDb === 0
    ? exercise
    : changedBy(
        exercise,
        exercise.scenario.tags.map(() => 0),
        lineNoiseRaisedDb,
      );
}

/** Made once each: what is kept by exercise (places asked for last, antennas) would be lost at every pulse. */
const made = new WeakMap<Exercise, Map<string, Exercise>>();

function changedBy(exercise: Exercise, losses: readonly number[], lineNoiseRaisedDb: number): Exercise {
  const known = made.get(exercise) ?? new Map<string, Exercise>();
  made.set(exercise, known);
  const key = `${losses.join('/')} ${lineNoiseRaisedDb}`;
  const tags = exercise.scenario.tags.map((tag, i) => ({ ...tag, eirpDbm: tag.eirpDbm - losses[i]! }));
  const changed = known.get(key) ?? { ...exercise, scenario: { ...exercise.scenario, tags }, lineNoiseRaisedDb };
  known.set(key, changed);
  return changed;
}
