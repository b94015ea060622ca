import type { Place } from '../../core/desk/places';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import { disc, type Easel, line, write } from '../map/brush';
import { paintTag } from '../map/paintTag';

type OnDesk = {
  readonly scenario: Scenario;
  readonly places: readonly Place[];
  readonly chosen: Place | null;
  /** Something is in hand: where the middle of the map is, it would be set down. */
  readonly aiming: boolean;
};

const pointOf = ([eM, nM]: readonly [number, number]): MapPoint => ({ eM, nM });

/** Everything that was set down by hand, with handles to carry it by. */
export function paintDesk(easel: Easel, { scenario, places, chosen, aiming }: OnDesk): void {
  const { palette } = easel;
  for (const { movement, at } of scenario.tags) {
    if (movement.kind === 'path') way(easel, movement.points.map(pointOf), [5, 4], palette.truth);
    if (movement.kind === 'wanders') {
      disc(easel, easel.at(pointOf(at)), movement.withinM * easel.view.pxPerM, null, { colour: palette.truth, width: 1.4, dash: [3, 5] });
    }
  }
  for (const { route } of scenario.ground.powerLines) way(easel, route.map(pointOf), [2, 5], palette.ink);
  for (const { outline } of scenario.ground.patches ?? []) way(easel, [...outline, outline[0]!].map(pointOf), [1, 4], palette.ink);
  for (const place of places) {
    if (place.path === chosen?.path) ringRound(easel, place);
    paintPlace(easel, place);
  }
  if (aiming) cross(easel);
}

function paintPlace(easel: Easel, { kind, name, at }: Place): void {
  const { palette } = easel;
  const spot = easel.at(pointOf(at));
  if (kind === 'tag') paintTag(easel, name, pointOf(at));
  else if (kind === 'start') {
    disc(easel, spot, 8, palette.paper, { colour: palette.ink, width: 2.4 });
    disc(easel, spot, 3, palette.ink);
    write(easel, { x: spot.x + 14, y: spot.y }, { text: 'start', colour: palette.ink });
  } else if (kind === 'waypoint') disc(easel, spot, 5, palette.paper, { colour: palette.truth, width: 2 });
  else {
    const half = kind === 'building' ? 3.5 : kind === 'patch-corner' ? 4 : 5;
    easel.context.fillStyle = palette.paper;
    easel.context.strokeStyle = palette.ink;
    easel.context.lineWidth = 1.8;
    easel.context.beginPath();
    easel.context.rect(spot.x - half, spot.y - half, 2 * half, 2 * half);
    easel.context.fill();
    easel.context.stroke();
  }
}

/** What is chosen: two rings, dark and light, that are seen on any land. */
function ringRound(easel: Easel, { at }: Place): void {
  const spot = easel.at(pointOf(at));
  disc(easel, spot, 18, null, { colour: easel.palette.paper, width: 6 });
  disc(easel, spot, 18, null, { colour: easel.palette.ink, width: 2.2 });
}

function way(easel: Easel, points: readonly MapPoint[], dash: readonly number[], colour: string): void {
  line(easel, points.map(easel.at), { colour, width: 1.6, dash, cap: 'butt' });
}

function cross(easel: Easel): void {
  const { width, height } = easel.size;
  const [x, y] = [width / 2, height / 2];
  for (const [dx, dy] of [
    [12, 0],
    [0, 12],
  ] as const) {
    const bar = [
      { x: x - dx, y: y - dy },
      { x: x + dx, y: y + dy },
    ];
    line(easel, bar, { colour: easel.palette.paper, width: 5 });
    line(easel, bar, { colour: easel.palette.ink, width: 2 });
  }
}
