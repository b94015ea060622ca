import type { ExcessClass, TrackPiece } from '../../../core/debrief/excessTrack';
import type { MapPoint } from '../../../core/units/frames';
import { between, type Palette } from '../../design/palette';
import { type Easel, haloed, line, type Stroke, write } from '../../map/brush';
import type { ScreenPoint } from '../../map/screenFrame';

/**
 * How a class of excess is drawn: the more gain too much, the wider and the more of the colour of sound, and flat out has ticks across.
 * Where nothing was heard it is dotted: no class is told by colour alone.
 */
export function excessStroke(kind: ExcessClass, palette: Palette): Stroke & { readonly ticks: boolean } {
  switch (kind) {
    case 'quiet':
      return { colour: palette.ink, width: 2.2, ticks: false };
    case 'loud':
      return { colour: between(palette.ink, palette.sound, 0.75), width: 4.6, ticks: false };
    case 'flat-out':
      return { colour: palette.sound, width: 5.4, ticks: true };
    case 'silent':
      return { colour: palette.ink, width: 2.6, dash: [0.1, 6.5], ticks: false };
    case 'unknown':
      return { colour: palette['ink-2'], width: 1.4, dash: [2, 4], ticks: false };
  }
}

const TICK_EVERY_PX = 9;
const TICK_PX = 6;

export function paintTrack(easel: Easel, track: readonly TrackPiece[]): void {
  const drawn = track.map(({ kind, points }) => ({ points: points.map(easel.at), stroke: excessStroke(kind, easel.palette) }));
  easel.context.globalAlpha = 0.85;
  for (const { points, stroke } of drawn) line(easel, points, { colour: easel.palette.paper, width: stroke.width + 4 });
  easel.context.globalAlpha = 1;
  for (const { points, stroke } of drawn) {
    line(easel, points, stroke.dash ? stroke : { ...stroke, cap: 'round' });
    if (stroke.ticks) paintTicks(easel, points, stroke.colour);
  }
}

/** Short strokes across a line, evenly along it. */
export function paintTicks(easel: Easel, points: readonly ScreenPoint[], colour: string): void {
  let sincePx = TICK_EVERY_PX / 2;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const px = Math.hypot(b.x - a.x, b.y - a.y);
    for (let along = TICK_EVERY_PX - sincePx; along <= px; along += TICK_EVERY_PX) {
      const [x, y] = [a.x + ((b.x - a.x) * along) / px, a.y + ((b.y - a.y) * along) / px];
      const [nx, ny] = [(-(b.y - a.y) / px) * TICK_PX, ((b.x - a.x) / px) * TICK_PX];
      const tick = [
        { x: x - nx, y: y - ny },
        { x: x + nx, y: y + ny },
      ];
      line(easel, tick, { colour, width: 1.4 });
    }
    sincePx = (sincePx + px) % TICK_EVERY_PX;
  }
}

/** The stretch of way that is looked at: two lines beside the track. */
export function paintStretch(easel: Easel, places: readonly MapPoint[]): void {
  const points = places.map(easel.at);
  const single = points[0];
  if (!single) return;
  const long = points.length > 1 ? points : [single, { x: single.x + 0.1, y: single.y }];
  line(easel, long, { colour: easel.palette.ink, width: 17 });
  line(easel, long, { colour: easel.palette.paper, width: 13.5 });
}

/** The way of the steady walker, in the colour of truth and dashed. */
export function paintBeside(easel: Easel, places: readonly MapPoint[]): void {
  haloed(easel, places.map(easel.at), { colour: easel.palette.truth, width: 2.2, dash: [8, 6], cap: 'butt' }, 1.6);
  const middle = places[Math.floor(places.length * 0.55)];
  if (middle)
    write(easel, { x: easel.at(middle).x + 12, y: easel.at(middle).y + 12 }, { text: 'steady walker', colour: easel.palette.truth });
}
