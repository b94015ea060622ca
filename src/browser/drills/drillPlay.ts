import { batch } from '@preact/signals';
import type { Answer, Drill, Trial } from '../../core/drills/drill';
import {
  beginSession,
  hintNow,
  isOver,
  nextTrial,
  numberOf,
  rightShareOf,
  type Session,
  type SessionKind,
  withAnswer,
} from '../../core/drills/session';
import type { Spot } from '../../core/listening/picture';
import { cardOf } from '../../core/logbook/card';
import { listenerHere } from '../listenerHere';
import { askToPersist, entryNow, keepInBook, openBook } from '../storage/book';
import { settings as deviceSettings } from '../storage/settings';
import { startBeeps } from './drillSound';
import {
  amount,
  hinted,
  layOut,
  lines,
  listener,
  pin,
  session,
  set,
  settings,
  stage,
  takeMoves,
  takeNow,
  trial,
  verdict,
} from './drillState';
import { playTakes, stopTakes } from './takes';

let begunMs = 0;
/** What was given at each trial, for whoever wants more than the session's number. */
export type GivenAt = { readonly trial: Trial; readonly answer: Answer };
let givenSoFar: readonly GivenAt[] = [];
let onOver: ((given: readonly GivenAt[]) => void) | null = null;
/** The next situation, drawn while the last one is looked at. */
let upcoming: { readonly after: Session; readonly trial: Trial } | null = null;
let ahead = 0;

const seedNow = (): string => entryNow().id;

/** Lays out a session of a drill: the staircase goes on where it stood. Nothing sounds before `begin`. */
export async function openDrill(drill: Drill, kind: SessionKind, over: ((given: readonly GivenAt[]) => void) | null = null): Promise<void> {
  const [book, who] = await Promise.all([openBook(), listenerHere()]);
  const card = cardOf(book, drill.id);
  const fresh = beginSession(drill, { seed: seedNow(), kind, sessionsBefore: card.sessions.length, stair: card.stair });
  upcoming = null;
  [givenSoFar, onOver] = [[], over];
  batch(() => {
    listener.value = who.listener;
    session.value = fresh;
    stage.value = 'waiting';
    layOut(drawFor(fresh));
  });
}

/** The gesture from which on it sounds. Somebody new sees first how it is done. */
export function begin(): void {
  const open = session.peek();
  if (!open || stage.peek() !== 'waiting') return;
  startBeeps();
  if (open.sessionsBefore === 0 && open.kind === 'practice') showExample(open);
  else ask(open);
}

/** A situation with everything laid open, the antenna where it belongs. */
function showExample(open: Session): void {
  const example = open.drill.draw(`${open.seed}/example`, open.drill.ladder.first, listener.peek());
  batch(() => {
    layOut(example);
    stage.value = 'example';
    settings.value = example.truth.settings;
  });
}

export function leaveExample(): void {
  const open = session.peek();
  if (open && stage.peek() === 'example') ask(open);
}

const drawFor = (open: Session): Trial => {
  const ready = upcoming?.after === open ? upcoming.trial : null;
  upcoming = null;
  return ready ?? nextTrial(open, listener.peek());
};

function ask(open: Session): void {
  if (open.answers.length === 0) begunMs = performance.now();
  const given = drawFor(open);
  batch(() => {
    layOut(given);
    hinted.value = hintNow(open);
    stage.value = 'trial';
  });
  if (given.takes) playTakes();
}

/** Gives an answer by number. @returns whether there is such a choice */
export function choose(choice: number): boolean {
  const way = trial.peek()?.answer;
  if (stage.peek() !== 'trial' || way?.kind !== 'choice' || choice >= way.choices.length) return false;
  give({ kind: 'choice', choice });
  return true;
}

/** The one button of a drill that is set, not chosen: marks, or gives what is set. */
export function confirm(): void {
  const given = trial.peek();
  if (!given || stage.peek() !== 'trial') return;
  const way = given.answer;
  if (way.kind === 'setting') give({ kind: 'setting', settings: settings.peek() });
  else if (way.kind === 'amount') give({ kind: 'amount', amount: amount.peek() });
  else if (way.kind === 'pin') markOrPin(way.stations);
}

function markOrPin(stations: readonly Spot[]): void {
  const at = pin.peek();
  if (at) {
    give({ kind: 'pin', at });
    return;
  }
  const { choice, headingDeg } = settings.peek();
  lines.value = [...lines.peek(), { from: stations[lines.peek().length]!, bearingDeg: headingDeg }];
  if (lines.peek().length < stations.length) set({ choice: choice + 1 });
  else pin.value = middleOf(stations);
}

const middleOf = (spots: readonly Spot[]): Spot => [
  Math.round(spots.reduce((sum, [x]) => sum + x, 0) / spots.length),
  Math.round(spots.reduce((sum, [, y]) => sum + y, 0) / spots.length),
];

/** Takes the last marked bearing back. */
export function takeBack(): void {
  if (stage.peek() !== 'trial' || lines.peek().length === 0) return;
  batch(() => {
    const kept = lines.peek().slice(0, -1);
    pin.value = null;
    lines.value = kept;
    set({ choice: kept.length });
  });
}

function give(answer: Answer): void {
  const [open, given] = [session.peek()!, trial.peek()!];
  stopTakes();
  const judged = given.judge(answer, takeMoves());
  givenSoFar = [...givenSoFar, { trial: given, answer }];
  const after = withAnswer(open, given, judged);
  batch(() => {
    session.value = after;
    verdict.value = judged;
    takeNow.value = null;
    if (isOver(after)) finish(after);
    else if (after.kind === 'practice') stage.value = 'verdict';
  });
  if (isOver(after)) return;
  if (after.kind === 'check') ask(after);
  else drawAhead(after);
}

/** Draws the next situation while the learner looks at this one. */
function drawAhead(after: Session): void {
  clearTimeout(ahead);
  ahead = window.setTimeout(() => {
    if (session.peek() === after && !upcoming) upcoming = { after, trial: nextTrial(after, listener.peek()) };
  }, 350);
}

export function next(): void {
  const open = session.peek();
  if (open && stage.peek() === 'verdict') ask(open);
}

/** The minute is over: into the book with it at once, so that a closed tab loses nothing. */
function finish(done: Session): void {
  stage.value = 'over';
  if (onOver) {
    onOver(givenSoFar);
    return;
  }
  void keepInBook([
    {
      ...entryNow(),
      kind: 'session',
      drill: done.drill.id,
      as: done.kind,
      number: numberOf(done),
      rightShare: rightShareOf(done),
      level: done.stair.level,
      streak: done.stair.streak,
      erred: done.stair.erred,
      seconds: Math.min(3_600, Math.round((performance.now() - begunMs) / 1_000)),
      aided: deviceSettings.peek().captions,
    },
  ]).then(askToPersist);
}

/** Points everything as it should have been, to be heard again. */
export const showBest = (): void => {
  const given = trial.peek();
  if (given) settings.value = given.truth.settings;
};

export function forgetDrill(): void {
  clearTimeout(ahead);
  stopTakes();
  upcoming = null;
  session.value = null;
  trial.value = null;
}
