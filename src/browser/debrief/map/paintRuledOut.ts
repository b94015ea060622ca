import type { RuledOutJudged } from '../../../core/debrief/ruledOut';
import { type Easel, line } from '../../map/brush';
import { hatchLines } from '../../map/hatchLines';

/** The learner's hatching in ink; what else could have been ruled out in dashes of truth, the other way. */
export function paintRuledOut(easel: Easel, { hatched, couldBe }: RuledOutJudged): void {
  const { context, palette, view } = easel;
  const rest = { ...couldBe, hatched: couldBe.hatched.map((one, i) => (one === 1 && hatched.hatched[i] === 0 ? 1 : 0)) };
  context.globalAlpha = 0.75;
  for (const ends of hatchLines(rest, view.pxPerM, true))
    line(easel, ends.map(easel.at), { colour: palette.truth, width: 1.1, dash: [4, 4], cap: 'butt' });
  for (const ends of hatchLines(hatched, view.pxPerM)) line(easel, ends.map(easel.at), { colour: palette.ink, width: 1.1 });
  context.globalAlpha = 1;
}
