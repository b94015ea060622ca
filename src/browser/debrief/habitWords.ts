import type { HabitId } from '../../core/technique/habit';

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

/** Numbers and their units kept on one line. */
export const unbroken = (sentence: string): string => sentence.replaceAll(/(\d) (s|m|dB|%|degrees)(?=\W|$)/g, '$1\u00a0$2');
