import { levelStepDb } from '../ear/loudness';
import type { Air, Heard } from './air';
import { heardAt } from './air';
import type { Settings } from './settings';

/** Something to be played without being shown. */
export type Take = { readonly name: string; readonly settings: Settings };

/** A question by ear. Nothing of it is kept anywhere: it is drawn, played and judged from the same computation. */
export type Question = {
  readonly ask: string;
  readonly takes: readonly Take[];
  readonly choices: readonly string[];
  readonly answer: number;
  /** What was so, with its numbers. */
  readonly because: string;
};

/** Differences under the ear's own step are no difference; beeps under the threshold are silence. */
export function loudestOf(heard: readonly Heard[]): number | null {
  const loudness = heard.map(({ loudnessDb }) => loudnessDb);
  const best = loudness.indexOf(Math.max(...loudness));
  const top = heard[best]!;
  if (!top.audible) return null;
  const rivals = heard.filter((other, i) => i !== best && other.audible && top.levelDb - other.levelDb < levelStepDb(top.loudnessDb));
  return rivals.length > 0 ? null : best;
}

/** "Which was loudest?": the answer is the take, or the last choice where no ear could say. */
export function whichIsLoudest(ask: string, air: (settings: Settings) => Air, takes: readonly Take[], alike: string): Question {
  const heard = takes.map(({ settings }) => heardAt(air(settings), settings, settings.headingDeg));
  const loudest = loudestOf(heard);
  return {
    ask,
    takes,
    choices: [...takes.map(({ name }) => name), alike],
    answer: loudest ?? takes.length,
    because: takes.map(({ name }, i) => `${name}: ${loudnessWord(heard[i]!)}`).join('. '),
  };
}

/** Yes or no about one beep. */
export const yesOrNo = (ask: string, takes: readonly Take[], yes: boolean, because: string): Question => ({
  ask,
  takes,
  choices: ['Yes', 'No'],
  answer: yes ? 0 : 1,
  because,
});

/** How loud a beep is, in words with its number. */
export function loudnessWord(heard: Heard): string {
  if (!heard.audible) return 'not heard';
  if (heard.flatOut) return 'flat out';
  return `${Math.round(heard.loudnessDb)} dB over just heard`;
}

/** One of the items, by a draw. */
export const oneOf = <T>(items: readonly T[], random: () => number): T =>
  items[Math.min(items.length - 1, Math.floor(random() * items.length))]!;
