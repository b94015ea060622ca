import { HABIT_IDS, type HabitId, type HabitResult, type Moment } from '../../core/technique/habit';

export const HABIT_NAMES: Readonly<Record<HabitId, string>> = {
  quietGain: 'Quiet gain',
  setThenSweep: 'Set, then sweep',
  walkAndListen: 'Walk and listen',
  clearView: 'Clear view',
  keepPractising: 'Keep practising',
};

/** What each habit asks, for rating oneself. */
export const HABIT_ASKS: Readonly<Record<HabitId, string>> = {
  quietGain: 'I used as little gain as still heard the beep.',
  setThenSweep: 'I left the knobs alone while the antenna turned.',
  walkAndListen: 'I kept moving, and went where the sound said.',
  clearView: 'I took my bearings from open, high places.',
  keepPractising: 'I have practised on eight or more of the last 28 days.',
};

export type Habits = Readonly<Record<HabitId, HabitResult>>;

/** The one moment that a habit's line carries: its heaviest failing, or where there is none its best. */
export function tellingMoment({ moments }: HabitResult): Moment | null {
  const heaviest = (good: boolean) => moments.filter((moment) => moment.good === good).sort((a, b) => b.weight - a.weight)[0] ?? null;
  return heaviest(false) ?? heaviest(true);
}

const GOOD_ENOUGH = 85;

/** The sentence that matters most: what to do next time about the weakest habit. */
export function mattersMost(habits: Habits): { readonly sentence: string; readonly because: string } {
  const weakest = HABIT_IDS.filter((id) => id !== 'keepPractising' && habits[id].score !== null).sort(
    (a, b) => habits[a].score! - habits[b].score!,
  )[0];
  if (!weakest) {
    return { sentence: 'Too short a run to say much: walk farther and take more bearings.', because: '' };
  }
  const bad = habits[weakest].moments.filter(({ good }) => !good).sort((a, b) => b.weight - a.weight)[0];
  if (habits[weakest].score! >= GOOD_ENOUGH || !bad) {
    return { sentence: 'Every habit this run could show held up. Take a harder exercise.', because: '' };
  }
  return { sentence: bad.next, because: bad.what };
}
