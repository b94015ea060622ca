import { computed, signal } from '@preact/signals';
import { type Verdict, verdictOf } from '../../core/desk/verdict';
import { isDone } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import { type Rehearsing, rehearse } from '../workers/rehearse';
import { draft, land, sound } from './deskState';

/** Walks that a verdict rests on; a few give a first idea. */
export const WALK_COUNTS = [4, 20] as const;
export const walkCount = signal<number>(20);

/** Walks on their way. */
export const going = signal<{ readonly walks: number; readonly found: number; readonly of: number; readonly share: number } | null>(null);
export const rehearsalFault = signal('');

const given = signal<{ readonly of: Scenario; readonly verdict: Verdict } | null>(null);
/** What the rehearsals said, as long as the exercise is the one that was rehearsed; undone back to it, it is there again. */
export const verdict = computed<Verdict | null>(() => (given.value && given.value.of === draft.value ? given.value.verdict : null));
/** There is one, of another state of the exercise. */
export const outdated = computed(() => given.value !== null && verdict.value === null);

let now: Rehearsing | null = null;

export function beginRehearsal(): void {
  const [of, scenario, ground] = [draft.peek(), sound.peek(), land.peek()];
  if (!of || !scenario || !ground || now) return;
  const count = walkCount.peek();
  rehearsalFault.value = '';
  going.value = { walks: 0, found: 0, of: count, share: 0 };
  now = rehearse(scenario, ground.world, count, (walks, share) => {
    const found = walks.filter(({ ending }) => isDone(ending)).length;
    going.value = { walks: walks.length, found, of: count, share };
  });
  now.result
    .then(
      (rehearsed) => {
        if (rehearsed) given.value = { of, verdict: verdictOf(scenario, rehearsed.start, rehearsed.walks) };
      },
      (fault: unknown) => {
        rehearsalFault.value = fault instanceof Error ? fault.message : String(fault);
      },
    )
    .finally(() => {
      now = null;
      going.value = null;
    });
}

/** Ends the rehearsal; the walks that are over are judged. */
export const stopRehearsal = (): void => now?.stop();
