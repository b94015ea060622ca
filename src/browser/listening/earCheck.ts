import { computed, signal } from '@preact/signals';
import type { Question } from '../../core/listening/question';
import { randomFor } from '../../core/random/draw';
import { PERIOD_S, playing, startSound } from './roomSound';
import { shown } from './roomState';

/** A check by ear under way. Its questions were drawn just now and live nowhere else. */
type Check = { readonly questions: readonly Question[]; readonly at: number; readonly chosen: readonly (number | null)[] };

export const check = signal<Check | null>(null);
/** Which take of the question plays, or null between. */
export const takeNow = signal<number | null>(null);

export const question = computed(() => check.value?.questions[check.value.at] ?? null);
export const chosenNow = computed(() => check.value?.chosen[check.value.at] ?? null);
export const rightSoFar = computed(() => {
  const now = check.value;
  return now ? now.questions.filter(({ answer }, i) => now.chosen[i] === answer).length : 0;
});

const BEEPS_A_TAKE = 3;
let timer = 0;
let drawn = 0;

export function openCheck(): void {
  startSound();
  drawn++;
  const questions = shown.peek().questions(randomFor(`${Date.now()}`, 'draw', drawn));
  check.value = { questions, at: 0, chosen: questions.map(() => null) };
  playTakes();
}

export function closeCheck(): void {
  clearTimeout(timer);
  takeNow.value = null;
  playing.value = null;
  check.value = null;
}

/** Plays the takes of the question one after another, three beeps each. */
export function playTakes(): void {
  const takes = question.peek()?.takes ?? [];
  clearTimeout(timer);
  const play = (index: number) => {
    takeNow.value = index < takes.length ? index : null;
    playing.value = { take: takes[index]?.settings ?? null };
    if (index < takes.length) timer = window.setTimeout(() => play(index + 1), BEEPS_A_TAKE * PERIOD_S * 1000);
  };
  play(0);
}

/** @returns whether there is such a choice */
export function chooseAnswer(choice: number): boolean {
  const now = check.peek();
  const asked = question.peek();
  if (!now || !asked || choice >= asked.choices.length) return false;
  if (chosenNow.peek() === null) check.value = { ...now, chosen: now.chosen.map((before, i) => (i === now.at ? choice : before)) };
  return true;
}

export function nextQuestion(): void {
  const now = check.peek();
  if (!now) return;
  if (now.at + 1 >= now.questions.length) closeCheck();
  else {
    check.value = { ...now, at: now.at + 1 };
    playTakes();
  }
}
