/** A place in the chart's own units, y downward. */
export type At = readonly [x: number, y: number];
type Box = { readonly fromX: number; readonly toX: number; readonly fromY: number; readonly toY: number };

/** What is to be named: a line by its points, or a dot. */
export type Named = { readonly name: string; readonly points: readonly At[]; readonly isDot: boolean };
/** Where a name begins, on its baseline. */
export type Label = { readonly x: number; readonly y: number };

/** Width of a letter and height of a row at the largest type in which charts are shown. */
const LETTER = 8.7;
const [ASCENT, DESCENT] = [14, 5];
const SAMPLE = 4;
/** Room between two names in one row, or they read as one word. */
const APART = 9;
/** How bad it is to cover a line, another name, a dot or the edge. */
const COST = { line: 1.5, name: 60, dot: 25, edge: 400, other: 12, later: 0.4 } as const;

/**
 * Places names beside their lines and dots so that they cover neither one another nor any line: each takes the least bad of a few places.
 * Names are placed in the order given.
 */
export function placeLabels(all: readonly Named[], frame: Box, taken: readonly Box[] = []): readonly Label[] {
  const lines = all.filter(({ isDot }) => !isDot).flatMap(({ points }) => sampled(points));
  const dots = all.filter(({ isDot }) => isDot).map(({ points }) => points[0]!);
  const written: Box[] = [...taken];
  return all.map((named) => {
    const width = named.name.length * LETTER;
    let best: { at: At; cost: number } | null = null;
    for (const [i, at] of candidates(named, width, frame).entries()) {
      const box = boxOf(at, width);
      const cost =
        COST.later * i +
        COST.line * lines.filter((point) => inside(box, point, 1)).length +
        COST.dot * dots.filter((point) => inside(box, point, 6)).length +
        COST.name * written.filter((other) => overlap(box, other)).length +
        (named.isDot || isOwn(box, named, all) ? 0 : COST.other) +
        COST.edge * outside(box, frame);
      if (!best || cost < best.cost) best = { at, cost };
    }
    written.push(boxOf(best!.at, width));
    return { x: best!.at[0], y: best!.at[1] };
  });
}

function candidates({ points, isDot }: Named, width: number, frame: Box): readonly At[] {
  if (points.length === 0) return [[frame.toX - width, frame.fromY + ASCENT]];
  if (isDot) return roundDot(points[0]!, width);
  return [1, 0.84, 0.7, 0, 0.15, 0.3, 0.5].flatMap((share): At[] => {
    const [x, y] = points[Math.round(share * (points.length - 1))]!;
    const left = Math.min(frame.toX - width, Math.max(frame.fromX + 3, x - width * share));
    return [
      [left, y - 9],
      [left, y + 19],
      [left, y - 24],
      [left, y + 34],
    ];
  });
}

const roundDot = ([x, y]: At, width: number): readonly At[] => [
  [x + 11, y + 5],
  [x - width - 11, y + 5],
  [x + 6, y + 23],
  [x + 6, y - 11],
  [x - width - 4, y - 11],
  [x - width - 4, y + 23],
  [x + 12, y + 38],
  [x + 14, y + 20],
  [x + 14, y + 54],
  [x - width / 2, y + 26],
  [x - width / 2, y - 13],
  [x - width / 2, y + 44],
  [x - width / 2, y - 31],
];

/** Does a name stand nearer to its own line than to any other? */
function isOwn(box: Box, named: Named, all: readonly Named[]): boolean {
  const [x, y] = [(box.fromX + box.toX) / 2, (box.fromY + box.toY) / 2];
  const gap = ({ points }: Named) => Math.min(...sampled(points).map(([px, py]) => Math.hypot(px - x, 2 * (py - y))));
  const own = gap(named);
  return all.every((other) => other === named || other.isDot || gap(other) >= own);
}

const boxOf = ([x, y]: At, width: number): Box => ({ fromX: x, toX: x + width, fromY: y - ASCENT, toY: y + DESCENT });
const inside = ({ fromX, toX, fromY, toY }: Box, [x, y]: At, margin: number): boolean =>
  x > fromX - margin && x < toX + margin && y > fromY - margin && y < toY + margin;
const overlap = (a: Box, b: Box): boolean => a.fromX < b.toX + APART && b.fromX < a.toX + APART && a.fromY < b.toY && b.fromY < a.toY;
/** Units by which a box lies beyond the frame, 0 or more, at most 1. */
const outside = (box: Box, frame: Box): number =>
  Math.min(
    1,
    Math.max(0, frame.fromX - box.fromX, box.toX - frame.toX) / 20 + Math.max(0, frame.fromY - box.fromY, box.toY - frame.toY) / 10,
  );

/** Points of a line close enough together that no name slips through. */
function sampled(points: readonly At[]): readonly At[] {
  return points.flatMap((to, i) => {
    const from = points[i - 1] ?? to;
    const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / SAMPLE));
    return Array.from(
      { length: count },
      (_, s): At => [from[0] + ((to[0] - from[0]) * (s + 1)) / count, from[1] + ((to[1] - from[1]) * (s + 1)) / count],
    );
  });
}
