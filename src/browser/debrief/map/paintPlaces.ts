import type { Hold, RunState } from '../../../core/run/state';
import { tagAt } from '../../../core/run/tagMotion';
import type { Scenario } from '../../../core/scenario/schema';
import type { MapPoint } from '../../../core/units/frames';
import { disc, type Easel, line, stepPx, write } from '../../map/brush';
import { paintTag } from '../../map/paintTag';

/** The tags where they were at a time: what only now may be shown. */
export function paintTags(easel: Easel, scenario: Scenario, timeS: number): void {
  scenario.tags.forEach(({ name }, i) => {
    paintTag(easel, name, tagAt(scenario, i, timeS));
  });
}

export function paintEnds(easel: Easel, start: MapPoint, guess: MapPoint | null): void {
  const { palette } = easel;
  const spot = easel.at(start);
  disc(easel, spot, 5, palette.paper, { colour: palette.ink, width: 2 });
  write(easel, { x: spot.x + 12, y: spot.y }, { text: 'start', colour: palette.ink });
  if (!guess) return;
  const pin = easel.at(guess);
  disc(easel, pin, 5, palette.ink, { colour: palette.paper, width: 1.5 });
  write(easel, { x: pin.x + 12, y: pin.y }, { text: 'your guess', colour: palette.ink });
}

/** The walker at the scrubber's time, antenna and all; where the tag truly was is dashed. */
export function paintHere(easel: Easel, { at, hold }: RunState, trueDeg: number | null): void {
  const { palette } = easel;
  const spot = easel.at(at);
  if (trueDeg !== null)
    line(easel, [stepPx(spot, trueDeg, 12), stepPx(spot, trueDeg, 70)], { colour: palette.truth, width: 2, dash: [5, 4] });
  paintAntenna(easel, at, hold);
  disc(easel, spot, 9.5, palette.paper);
  disc(easel, spot, 6.2, palette.ink, { colour: palette.ink, width: 1.5 });
}

function paintAntenna(easel: Easel, at: MapPoint, { headingDeg, rollDeg }: Hold): void {
  const { palette } = easel;
  const spot = easel.at(at);
  const half = 8 - 5 * Math.sin((rollDeg * Math.PI) / 180); // upright rods are seen end on
  const strokes = [
    [stepPx(spot, headingDeg, 8), stepPx(spot, headingDeg, 42)],
    ...[18, 30, 42].map((along) => [-1, 1].map((side) => stepPx(stepPx(spot, headingDeg, along), headingDeg + 90 * side, half))),
  ];
  for (const stroke of strokes) line(easel, stroke, { colour: palette.paper, width: 6 });
  for (const stroke of strokes) line(easel, stroke, { colour: palette.sound, width: 2.8 });
}

/** Another walker at the same time: a ring. */
export function paintOther(easel: Easel, at: MapPoint): void {
  const { palette } = easel;
  disc(easel, easel.at(at), 7, palette.paper, { colour: palette.truth, width: 2.2, dash: [3.5, 2.5] });
}
