import { liesWithin, notebookFix } from '../fix/notebookFix';
import { pennedMarks } from '../run/penned';
import { type RunState, TICKS_PER_S } from '../run/state';
import { tagAt } from '../run/tagMotion';
import { soughtTag, taskOf } from '../run/task';
import type { Scenario } from '../scenario/schema';
import { distanceM } from '../units/frames';

/** A declared fix against where the tag was then. */
export type FixOutcome = {
  /** Metres from the tag; `null` where the bearings gave no place. */
  readonly offM: number | null;
  /** Does the tag lie in its 95 % area? `null` without one. */
  readonly within: boolean | null;
  /** Longer half axis of the area, metres; `null` without one. */
  readonly areaM: number | null;
};

/** `undefined` where the task is no fix, `null` where none was declared. */
export function fixOutcomeOf(scenario: Scenario, { notebook, declaredFixes }: RunState): FixOutcome | null | undefined {
  if (taskOf(scenario).kind !== 'fix') return undefined;
  const declared = declaredFixes.at(-1);
  if (!declared) return null;
  const fix = notebookFix(pennedMarks(declared.bearings.map((i) => ({ ...notebook[i]!, struckOut: false }))));
  if (!fix.ok) return { offM: null, within: null, areaM: null };
  const place = tagAt(scenario, soughtTag(scenario), declared.atTick / TICKS_PER_S);
  const area = fix.learnerEllipse;
  return {
    offM: Math.round(distanceM({ eM: fix.x, nM: fix.y }, place)),
    within: area && liesWithin(fix, area, place),
    areaM: area && Math.round(area.semiMajorM),
  };
}
