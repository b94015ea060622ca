import type { WaveKind } from '../radio/wave';

/** A place in a picture, metres: east and north of a plan, along and up in a section. */
export type Spot = readonly [number, number];

export type PictureMark =
  | { readonly kind: 'you'; readonly at: Spot; readonly now: boolean }
  | { readonly kind: 'tag'; readonly at: Spot; readonly leanDeg?: number }
  /** The rods of an antenna seen from behind it, degrees from upright. */
  | { readonly kind: 'rods'; readonly at: Spot; readonly leanDeg: number }
  /** A wave on its way, strength 0 to 1 of the strongest by decibels over 40 dB. */
  | { readonly kind: 'wave'; readonly points: readonly Spot[]; readonly wave: WaveKind; readonly strength: number }
  /** A bearing as an ear took it. `sure` where only this side is left. */
  | { readonly kind: 'bearing'; readonly from: Spot; readonly to: Spot; readonly back: boolean }
  | { readonly kind: 'outline'; readonly land: 'wood' | 'area'; readonly points: readonly Spot[] }
  | { readonly kind: 'wires'; readonly points: readonly Spot[]; readonly poles: readonly Spot[] }
  | { readonly kind: 'edge'; readonly points: readonly Spot[] }
  | { readonly kind: 'words'; readonly at: Spot; readonly text: string };

/** A small plan or section of the scene as numbers. */
export type Picture = {
  readonly view: 'plan' | 'section';
  /** How it is looked at, where "from above" or "from the side" would be wrong. */
  readonly name?: string;
  readonly from: Spot;
  readonly to: Spot;
  /** Said to those who can't see it. */
  readonly said: string;
  /** Ground of a section, left to right. */
  readonly ground?: readonly Spot[];
  readonly marks: readonly PictureMark[];
};

/** Share of the strongest by decibels: 1 for the strongest, 0 at 40 dB below. */
export const strengthOf = (powerDb: number, strongestDb: number): number => Math.min(1, Math.max(0, 1 + (powerDb - strongestDb) / 40));

/** The tightest string from one spot to another over the ground of a section: how a wave gets round it. */
export function stringOver(ground: readonly Spot[], from: Spot, to: Spot): readonly Spot[] {
  const [left, right] = from[0] <= to[0] ? [from, to] : [to, from];
  const between = ground.filter(([x]) => x > left[0] && x < right[0]);
  const hull: Spot[] = [];
  for (const point of [left, ...between, right]) {
    while (hull.length > 1 && !turnsRight(hull[hull.length - 2]!, hull[hull.length - 1]!, point)) hull.pop();
    hull.push(point);
  }
  return left === from ? hull : hull.reverse();
}

const turnsRight = (a: Spot, b: Spot, c: Spot): boolean => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) < 0;
