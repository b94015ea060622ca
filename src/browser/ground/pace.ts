import { computed, signal } from '@preact/signals';
import { openRun } from '../currentRun';

/** Paces on foot, metres a second on level open ground. */
const PACES = [
  { name: 'stroll', mPerS: 0.8 },
  { name: 'walk', mPerS: 1.4 },
  { name: 'stride', mPerS: 1.8 },
  { name: 'jog', mPerS: 2.6 },
] as const;

const wanted = signal(1);
/** Paces that the exercise allows; its own limit is the last where it lies between two. */
export const paces = computed(() => {
  const most = openRun.value?.exercise.scenario.limits.paceMPerS ?? 1.4;
  const allowed = PACES.filter(({ mPerS }) => mPerS <= most + 0.001);
  return allowed.length > 0 ? allowed : [{ name: 'walk', mPerS: most }];
});
export const chosenPace = computed(() => paces.value[Math.min(wanted.value, paces.value.length - 1)]!);
export const chosenPaceMPerS = computed(() => chosenPace.value.mPerS);

/** One pace faster or slower; past the fastest comes the slowest again when `round` is asked for. */
export function changePace(by: 1 | -1, round = false): void {
  const count = paces.peek().length;
  const next = Math.min(wanted.peek(), count - 1) + by;
  wanted.value = round ? (next + count) % count : Math.min(count - 1, Math.max(0, next));
}
