import { signal } from '@preact/signals';
import type { Scenario } from '../../core/scenario/schema';

/** An exercise of the person's own that is to be shared: `#/share/own`. */
export const ownExercise = signal<Scenario | null>(null);
