import { computed, signal } from '@preact/signals';
import type { Exercise } from '../../core/run/exercise';
import { asListedAndHeard } from '../../core/run/intervention';
import { type HatchGrid, ruledOutSquares, squaresIn, together } from '../../core/run/ruleOut';
import { silencesHere } from '../../core/run/silence';
import type { Ruling } from '../../core/run/state';
import type { MapPoint } from '../../core/units/frames';
import { act, live, openRun, paused, runState, silences } from '../currentRun';
import { placingStart } from './fixNow';
import { placingPin } from './mapView';
import { briefShown, notebookShown, tagsShown } from './panels';

/** The slip for ruling ground out lies over the map. */
export const ruleOutShown = signal(false);
/** While ground is ruled out by hand each tap on the map hatches what lies round it. */
export const placingHatch = signal(false);
/** What came of the last time it was asked for. */
export const ruleOutSaid = signal('');

/** Ground in view from a place that is not shown would give that place away. */
export const ruleOutAllowed = computed(() => openRun.value?.exercise.scenario.aids.ownPosition === true);

export const rulings = computed(() => runState.value?.rulings ?? []);

const kept = new WeakMap<Exercise, Map<string, HatchGrid>>();

/** The squares of a ruling: what was not heard before it does not change any more, so they are worked out once. */
function squaresOf(exercise: Exercise, ruling: Ruling, number: number): HatchGrid {
  const known = kept.get(exercise) ?? new Map<string, HatchGrid>();
  kept.set(exercise, known);
  const key = `${number}/${ruling.atTick}/${ruling.at.eM}/${ruling.at.nM}`;
  const grid =
    known.get(key) ??
    ruledOutSquares(asListedAndHeard(exercise, { ...live.peek()!.state, tick: ruling.atTick }), {
      ...ruling,
      silences: silencesHere(silences.peek(), ruling),
      listener: live.peek()!.listener,
    });
  known.set(key, grid);
  return grid;
}

/** All ground that is hatched now. */
export const hatchNow = computed<HatchGrid | null>(() => {
  const exercise = openRun.value?.exercise;
  const standing = rulings.value.map((ruling, number) => ({ ruling, number })).filter(({ ruling }) => !ruling.takenBack);
  if (!exercise || standing.length === 0) return null;
  return together(
    exercise.scenario.ground.sizeM,
    standing.map(({ ruling, number }) => squaresOf(exercise, ruling, number)),
  );
});

export const hatchShare = computed(() => (hatchNow.value ? squaresIn(hatchNow.value) / hatchNow.value.hatched.length : 0));

/** Hatches what silence rules out from here, or says why it is nothing. */
export function ruleOut(around: MapPoint | null): void {
  const [open, now] = [openRun.peek(), live.peek()];
  if (!open || !now || paused.peek() || !ruleOutAllowed.peek()) return;
  const { at, tick: atTick, walkedM } = now.state;
  const here = silencesHere(silences.peek(), { atTick, walkedM });
  if (here.length === 0) {
    ruleOutSaid.value = 'Nothing was listened for in vain here yet. Turn the antenna round, and wait for a beep on each side.';
    return;
  }
  const found = squaresIn(
    ruledOutSquares(asListedAndHeard(open.exercise, now.state), { at, atTick, around, silences: here, listener: now.listener }),
  );
  if (found === 0) {
    ruleOutSaid.value = around
      ? 'Not there: it is out of view, or the weakest tag, lying crosswise, might go unheard at what you listened with.'
      : 'Nothing: the weakest tag, lying crosswise, might go unheard at what you listened with.';
    return;
  }
  ruleOutSaid.value = '';
  act({ type: 'ruleOut', around: around && { eM: Math.round(around.eM), nM: Math.round(around.nM) } });
}

export function toggleRuleOut(): void {
  if (!ruleOutAllowed.peek()) return;
  if (ruleOutShown.peek()) closeRuleOut();
  else showRuleOut();
}

export function showRuleOut(): void {
  if (!ruleOutAllowed.peek()) return;
  ruleOutShown.value = true;
  ruleOutSaid.value = '';
  [briefShown.value, notebookShown.value, tagsShown.value] = [false, false, false];
}

export function toggleByHand(): void {
  if (!ruleOutShown.peek()) showRuleOut();
  placingHatch.value = ruleOutAllowed.peek() && !placingHatch.peek();
  if (placingHatch.peek()) [placingPin.value, placingStart.value] = [false, false];
}

export function closeRuleOut(): void {
  ruleOutShown.value = false;
  placingHatch.value = false;
}
