import { asListedAndHeard } from '../run/intervention';
import { type HatchGrid, isHatched, noHatch, ruledOutSquares, squaresIn, together } from '../run/ruleOut';
import { type Silence, silencesHere, silencesOf } from '../run/silence';
import { type RunState, TICKS_PER_S } from '../run/state';
import { tagAt } from '../run/tagMotion';
import type { Evidence } from '../technique/habit';

/** A ruling that held the tag: which, when, and which tag lay there. */
export type RuledWrongly = { readonly ruling: number; readonly atS: number; readonly tag: number };

/** What was hatched, what could have been, and whether a tag lay in it. It does not enter the grade. */
export type RuledOutJudged = {
  /** Rulings that stand at the end. */
  readonly standing: number;
  readonly hatched: HatchGrid;
  /** All that the silences of the whole walk would have ruled out. */
  readonly couldBe: HatchGrid;
  /** Shares of the whole map, 0..1. */
  readonly hatchedShare: number;
  readonly couldBeShare: number;
  /** `null` where no tag lay in hatched ground when that was hatched. */
  readonly wrongly: RuledWrongly | null;
};

/** Places along the walk at which what could have been ruled out is looked at: each costs a look over the whole map. */
const LOOKS = 12;

/** `null` where nothing was ruled out and nothing could have been. */
export function judgeRuledOut({ exercise, run }: Evidence): RuledOutJudged | null {
  const { scenario } = exercise;
  const { sizeM } = scenario.ground;
  const silences = silencesOf(scenario, run.states, run.pulses);
  const grids = run.state.rulings.map((ruling) => hatchOf({ exercise, run }, silences, ruling));
  const standing = run.state.rulings.map((ruling, number) => ({ ruling, number })).filter(({ ruling }) => !ruling.takenBack);
  const hatched = together(
    sizeM,
    standing.map(({ number }) => grids[number]!),
  );
  let couldBe = hatched;
  for (const { at, tick: atTick, walkedM } of looksAlong(run.states)) {
    couldBe = together(sizeM, [couldBe, hatchOf({ exercise, run }, silences, { at, atTick, walkedM, around: null }, couldBe)]);
  }
  const squares = couldBe.hatched.length;
  const [own, most] = [squaresIn(hatched) / squares, squaresIn(couldBe) / squares];
  if (standing.length === 0 && most === 0) return null;
  let wrongly: RuledWrongly | null = null;
  for (const { ruling, number } of standing) {
    const atS = ruling.atTick / TICKS_PER_S;
    const tag = scenario.tags.findIndex((_, i) => isHatched(grids[number]!, tagAt(scenario, i, atS)));
    if (tag >= 0) wrongly ??= { ruling: number, atS, tag };
  }
  return { standing: standing.length, hatched, couldBe, hatchedShare: own, couldBeShare: most, wrongly };
}

type From = Omit<RunState['rulings'][number], 'takenBack'>;

function hatchOf({ exercise, run }: Evidence, silences: readonly Silence[], from: From, known?: HatchGrid): HatchGrid {
  const here = silencesHere(silences, from);
  if (here.length === 0) return noHatch(exercise.scenario.ground.sizeM);
  const { at, atTick, around } = from;
  const heard = asListedAndHeard(exercise, { tick: atTick, interventions: run.state.interventions });
  return ruledOutSquares(heard, { at, atTick, around, silences: here, listener: run.listener, ...(known ? { known } : {}) });
}

/** States at equal lengths of the walk, each the last one at its place, when all was listened to that would be. */
function looksAlong(states: readonly RunState[]): readonly RunState[] {
  const last = states.at(-1)!;
  const everyM = Math.max(20, last.walkedM / LOOKS);
  const looks: RunState[] = [];
  for (let i = 1; i < states.length; i++) {
    if (Math.floor(states[i]!.walkedM / everyM) > Math.floor(states[i - 1]!.walkedM / everyM)) looks.push(states[i - 1]!);
  }
  return [...looks, last];
}

const percent = (share: number): string => (share > 0 && share < 0.01 ? 'under 1 %' : `${Math.round(100 * share)} %`);

/** One sentence of it. */
export function ruledOutSentence(judged: RuledOutJudged, tagNames: readonly string[]): string {
  const could = `${percent(judged.couldBeShare)} of the map could have been ruled out`;
  if (judged.standing === 0) return `You ruled out no ground; ${could}.`;
  const share = percent(judged.hatchedShare);
  if (judged.wrongly === null) return `You ruled out ${share} of the map, and no tag lay there; ${could}.`;
  const name = tagNames.length > 1 ? tagNames[judged.wrongly.tag]! : 'the tag';
  return `You ruled out ${share} of the map, and ${name} lay in it: silence there had another cause than an empty hillside.`;
}
