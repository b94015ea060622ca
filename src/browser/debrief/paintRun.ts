import type { Live } from '../../core/run/live';
import { tagAt } from '../../core/run/tagMotion';
import type { Scenario } from '../../core/scenario/schema';
import { type MapPoint, stepAlong } from '../../core/units/frames';
import { NUMBERS_FONT, type Palette, WORDS_FONT } from '../design/palette';
import { type ScreenPoint, type SizePx, toScreen, type View } from '../map/screenFrame';

export type RunOnMap = {
  readonly scenario: Scenario;
  readonly live: Live;
  readonly track: readonly MapPoint[];
  /** The stretch of track to stand out, if one is looked at. */
  readonly stretch: readonly MapPoint[];
};

/** The view that holds the whole track and every tag. */
export function viewOf(run: RunOnMap, size: SizePx): View {
  const ends = run.scenario.tags.map((_, i) => tagAt(run.scenario, i, run.live.state.tick / 20));
  const points = [...run.track, ...ends, ...(run.live.state.guess ? [run.live.state.guess] : [])];
  const [west, east] = [Math.min(...points.map(({ eM }) => eM)), Math.max(...points.map(({ eM }) => eM))];
  const [south, north] = [Math.min(...points.map(({ nM }) => nM)), Math.max(...points.map(({ nM }) => nM))];
  const pxPerM = Math.min(1.2, (size.width - 110) / Math.max(120, east - west), (size.height - 110) / Math.max(120, north - south));
  return { centre: { eM: (west + east) / 2, nM: (south + north) / 2 }, pxPerM };
}

/** Track, bearings and pin as they were, and what only now may be shown: the tag, and where it truly was from each station. */
export function paintRun(context: CanvasRenderingContext2D, run: RunOnMap, view: View, size: SizePx, dpr: number, palette: Palette): void {
  const at = (point: MapPoint): ScreenPoint => toScreen(view, size, point);
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  context.lineCap = 'round';
  context.lineJoin = 'round';
  for (const [width, colour] of [
    [6, palette.paper],
    [2.6, palette.sound],
  ] as const) {
    line(context, run.track.map(at), colour, width);
  }
  if (run.stretch.length > 1) {
    line(context, run.stretch.map(at), palette.paper, 11);
    line(context, run.stretch.map(at), palette.ink, 6);
  }
  const { scenario, live } = run;
  live.state.notebook.forEach((mark, i) => {
    const tags = scenario.tags.map((_, tag) => tagAt(scenario, tag, mark.atTick / 20));
    const from = at(mark.at);
    context.setLineDash([6, 5]);
    for (const tag of tags) line(context, [from, at(tag)], palette.truth, 1.6);
    context.setLineDash(mark.struckOut ? [1, 5] : []);
    line(context, [from, at(stepAlong(mark.at, mark.bearingDeg, 90 / view.pxPerM))], palette.ink, 1.8);
    context.setLineDash([]);
    const back = at(stepAlong(mark.at, mark.bearingDeg + 180, 14 / view.pxPerM));
    disc(context, back, 9.5, palette.paper, palette.ink);
    write(context, String(i + 1), back, `700 11px ${NUMBERS_FONT}`, palette.ink, null);
  });
  if (live.state.guess) {
    disc(context, at(live.state.guess), 5, palette.ink, palette.paper);
    write(context, 'guess', beside(at(live.state.guess)), `600 12.5px ${WORDS_FONT}`, palette.ink, palette.paper);
  }
  scenario.tags.forEach((tag, i) => {
    const spot = at(tagAt(scenario, i, live.state.tick / 20));
    context.setLineDash([4, 3]);
    disc(context, spot, 11, palette.paper, palette.truth, 2.4);
    context.setLineDash([]);
    disc(context, spot, 3.4, palette.truth, palette.truth);
    write(context, tag.name, beside(spot), `700 15px ${WORDS_FONT}`, palette.truth, palette.paper, size.width);
  });
  const start = at(run.track[0]!);
  disc(context, start, 5, palette.paper, palette.ink, 2);
  write(context, 'start', beside(start), `600 12.5px ${WORDS_FONT}`, palette.ink, palette.paper);
  disc(context, at(live.state.at), 6, palette.ink, palette.paper, 2.5);
}

const beside = ({ x, y }: ScreenPoint): ScreenPoint => ({ x: x + 16, y });

function line(context: CanvasRenderingContext2D, points: readonly ScreenPoint[], colour: string, width: number): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.beginPath();
  points.forEach(({ x, y }, i) => {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.stroke();
}

function disc(context: CanvasRenderingContext2D, { x, y }: ScreenPoint, radius: number, fill: string, edge: string, width = 1.5): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fillStyle = fill;
  context.fill();
  context.strokeStyle = edge;
  context.lineWidth = width;
  context.stroke();
}

function write(
  context: CanvasRenderingContext2D,
  text: string,
  at: ScreenPoint,
  font: string,
  colour: string,
  halo: string | null,
  withinPx = Number.POSITIVE_INFINITY,
): void {
  context.font = font;
  // A name that would leave the picture stands on the other side of its place.
  const over = halo !== null && at.x + context.measureText(text).width > withinPx - 8;
  context.textAlign = halo === null ? 'center' : over ? 'right' : 'left';
  const { x, y } = over ? { x: at.x - 32, y: at.y } : at;
  context.textBaseline = 'middle';
  if (halo !== null) {
    context.strokeStyle = halo;
    context.lineWidth = 4;
    context.strokeText(text, x, y);
  }
  context.fillStyle = colour;
  context.fillText(text, x, y + 0.5);
}
