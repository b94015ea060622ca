import type { Intervention } from '../../core/run/intervention';
import { TICKS_PER_S } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';

/** What an instructor did, as a line of his window and of the debrief; where the exercise has one tag it needs no name. */
export function deedWords({ deed }: Intervention, tags: Scenario['tags']): string {
  switch (deed.type) {
    case 'watch':
      return 'The instructor’s window was opened: it shows where the tag is';
    case 'weaken': {
      const name = tags.length > 1 ? (tags[deed.tag]?.name ?? 'A tag') : 'The tag';
      return deed.byDb === 0 ? `${name} was given its full strength back` : `${name} was made ${deed.byDb} dB weaker than it is`;
    }
    case 'raiseLineNoise':
      return deed.byDb === 0 ? 'Line noise went back to what it is' : `Line noise was raised by ${deed.byDb} dB`;
    case 'hint':
      return `Hint: “${deed.text}”`;
    case 'holdUp':
      return deed.held ? 'The run was stopped' : 'The run was let go on';
  }
}

/** A slider that is drawn along passes many values: steps this close to the next of their kind are told by the last one. */
const ONE_DRAW_S = 2;

/** What is worth a line of its own. */
export const deedsTold = (interventions: readonly Intervention[]): readonly Intervention[] =>
  interventions.filter(({ atTick, deed }, i) => {
    if (deed.type !== 'weaken' && deed.type !== 'raiseLineNoise') return true;
    const goesOn = (later: Intervention) =>
      later.atTick - atTick <= ONE_DRAW_S * TICKS_PER_S &&
      later.deed.type === deed.type &&
      (later.deed.type !== 'weaken' || deed.type !== 'weaken' || later.deed.tag === deed.tag);
    return !interventions.slice(i + 1).some(goesOn);
  });
