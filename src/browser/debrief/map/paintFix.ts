import type { FixAgainstTruth } from '../../../core/debrief/fixAgainstTruth';
import type { StartJudged } from '../../../core/debrief/startChoice';
import type { Ellipse } from '../../../core/fix/ellipse';
import { UNMEASURED_SD_DEG } from '../../../core/fix/estimate';
import type { Mark } from '../../../core/run/state';
import { distanceM, type MapPoint, stepAlong } from '../../../core/units/frames';
import { disc, type Easel, line, stepPx, write } from '../../map/brush';

/** Bearings are drawn so far beyond the fix. */
const BEYOND_M = 150;
const OPEN_ENDED_M = 4_000;

/** The fix: its bearings as lines with their own spread, the place and its area, and how far off the tag was. */
export function paintFix(easel: Easel, { fix, bearings, tagAt }: FixAgainstTruth, marks: readonly Mark[]): void {
  const place = fix.ok ? { eM: fix.x, nM: fix.y } : null;
  for (const number of bearings) {
    const { at, bearingDeg } = marks[number - 1]!;
    paintSpread(easel, at, bearingDeg, place ? distanceM(at, place) + BEYOND_M : OPEN_ENDED_M);
  }
  if (!fix.ok || !place) return;
  const { palette } = easel;
  if (fix.learnerEllipse) paintEllipse(easel, place, fix.learnerEllipse);
  line(easel, [easel.at(place), easel.at(tagAt)], { colour: palette.truth, width: 2, dash: [5, 4], cap: 'butt' });
  paintCross(easel, place);
  write(easel, stepPx(easel.at(place), 45, 20), { text: 'fix', colour: palette.ink });
}

/** A bearing as a line within the wedge that its spread allows: 5 degrees either side until a blind test has measured it. */
function paintSpread(easel: Easel, at: MapPoint, bearingDeg: number, toM: number): void {
  const { context, palette } = easel;
  const corners = [at, stepAlong(at, bearingDeg - UNMEASURED_SD_DEG, toM), stepAlong(at, bearingDeg + UNMEASURED_SD_DEG, toM)].map(
    easel.at,
  );
  context.beginPath();
  corners.forEach(({ x, y }, i) => {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.closePath();
  context.globalAlpha = 0.09;
  context.fillStyle = palette.ink;
  context.fill();
  context.globalAlpha = 1;
  line(easel, [easel.at(at), easel.at(stepAlong(at, bearingDeg, toM))], { colour: palette.ink, width: 1.2 });
}

function paintEllipse(easel: Easel, centre: MapPoint, { semiMajorM, semiMinorM, majorAxisBearingDeg }: Ellipse): void {
  const { context, palette, view } = easel;
  const { x, y } = easel.at(centre);
  const turnRad = ((majorAxisBearingDeg - 90) * Math.PI) / 180;
  context.beginPath();
  context.ellipse(x, y, Math.max(5, semiMajorM * view.pxPerM), Math.max(4, semiMinorM * view.pxPerM), turnRad, 0, 2 * Math.PI);
  context.globalAlpha = 0.25;
  context.fillStyle = palette.paper;
  context.fill();
  context.globalAlpha = 1;
  context.strokeStyle = palette.paper;
  context.lineWidth = 5;
  context.stroke();
  context.strokeStyle = palette.ink;
  context.lineWidth = 2;
  context.stroke();
}

function paintCross(easel: Easel, at: MapPoint): void {
  const { x, y } = easel.at(at);
  const { ink: colour, paper } = easel.palette;
  for (const [dx, dy] of [
    [7, 0],
    [0, 7],
  ] as const) {
    const bar = [
      { x: x - dx, y: y - dy },
      { x: x + dx, y: y + dy },
    ];
    line(easel, bar, { colour: paper, width: 5 });
    line(easel, bar, { colour, width: 2 });
  }
}

/** Where the learner would have started, and where it would have been quickest. */
export function paintStarts(easel: Easel, { chosen, quickest }: StartJudged): void {
  const { palette } = easel;
  square(easel, quickest.at, palette.truth, true);
  write(easel, stepPx(easel.at(quickest.at), 90, 14), { text: 'quickest start', colour: palette.truth });
  if (!chosen) return;
  square(easel, chosen.at, palette.ink, false);
  write(easel, stepPx(easel.at(chosen.at), 90, 14), { text: 'your start', colour: palette.ink });
}

function square({ context, palette, at }: Easel, place: MapPoint, colour: string, dashed: boolean): void {
  const { x, y } = at(place);
  context.fillStyle = palette.paper;
  context.fillRect(x - 7, y - 7, 14, 14);
  context.strokeStyle = colour;
  context.lineWidth = 2.2;
  context.setLineDash(dashed ? [4, 3] : []);
  context.strokeRect(x - 7, y - 7, 14, 14);
  context.setLineDash([]);
  disc({ context, palette, at } as Easel, { x, y }, 2.4, colour);
}
