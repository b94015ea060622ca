import type { TableExercise, TableRow } from '../../core/club/tableRow';
import { tagAt } from '../../core/run/tagMotion';
import type { Scenario } from '../../core/scenario/schema';
import type { Palette } from '../design/palette';
import { disc, type Easel, haloed, line, type Stroke, write } from '../map/brush';
import { paintTag } from '../map/paintTag';
import { wayUntil } from './tracks';

export type OnClubMap = {
  readonly exercise: TableExercise;
  /** Where the ground is known; tags that move are then where they were. */
  readonly scenario: Scenario | null;
  readonly rows: readonly TableRow[];
  readonly inFront: readonly TableRow[];
  readonly atS: number;
};

/** Full line in the colour of what was walked by ear, long dashes, dots: told apart without colour. */
export function frontStroke(place: number, palette: Palette): Stroke {
  if (place === 0) return { colour: palette.sound, width: 3 };
  if (place === 1) return { colour: palette.ink, width: 2.6, dash: [10, 7], cap: 'butt' };
  return { colour: palette.ink, width: 3, dash: [0.1, 6.5] };
}

/** All ways up to the clock's time: the rest thin behind, those in front with their names. */
export function paintTracks(easel: Easel, on: OnClubMap): void {
  const { palette } = easel;
  const rest = on.rows.filter((row) => !on.inFront.includes(row));
  for (const { track } of rest) {
    easel.context.globalAlpha = 0.7;
    line(easel, wayUntil(track, on.atS).way.map(easel.at), { colour: palette['ink-2'], width: 1.3 });
    easel.context.globalAlpha = 1;
  }
  [...on.inFront].reverse().forEach((row, i) => {
    haloed(easel, wayUntil(row.track, on.atS).way.map(easel.at), frontStroke(on.inFront.length - 1 - i, palette));
  });
  paintGiven(easel, on);
  for (const row of rest) paintWalker(easel, row, on, null);
  on.inFront.forEach((row, i) => {
    paintWalker(easel, row, on, i);
  });
}

function paintGiven(easel: Easel, { exercise, scenario, atS }: OnClubMap): void {
  const { palette } = easel;
  const [eM, nM] = exercise.startAt;
  const start = easel.at({ eM, nM });
  disc(easel, start, 5, palette.paper, { colour: palette.ink, width: 2 });
  write(easel, { x: start.x + 12, y: start.y }, { text: 'start', colour: palette.ink });
  exercise.tags.forEach(({ name, at }, i) => {
    paintTag(easel, name, scenario ? tagAt(scenario, i, atS) : { eM: at[0], nM: at[1] });
  });
}

/** Where somebody is now: full while under way, a ring when the run is over; in front with the name, each on a line of its own. */
function paintWalker(easel: Easel, { name, track }: TableRow, { atS }: OnClubMap, place: number | null): void {
  const { palette } = easel;
  const { way, ended } = wayUntil(track, atS);
  const spot = easel.at(way.at(-1)!);
  const colour = place === null ? palette['ink-2'] : frontStroke(place, palette).colour;
  const radius = place === null ? 4 : 6.5;
  disc(easel, spot, radius + 2, palette.paper);
  disc(easel, spot, radius, ended ? palette.paper : colour, { colour, width: 2 });
  if (place === null) return;
  // Those who found stand in one place, where the tag has its name: theirs go below it.
  write(easel, { x: spot.x + 13, y: spot.y + 18 * (place + (ended ? 1 : 0)) }, { text: name || 'no name', colour });
}
