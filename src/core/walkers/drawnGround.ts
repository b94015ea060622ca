import type { GroundPlan, Scenario } from '../scenario/schema';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';

type Lesson = Scenario['lesson'];
type Relief = GroundPlan['relief'];

/** What a lesson wants of the ground; amounts grow with the level. */
type GroundWish = {
  readonly styles: readonly Relief['style'][];
  readonly strengthM: readonly [number, number];
  readonly wood: readonly [number, number];
  /** Distance of the tag as a share of the level's own. */
  readonly farShare?: number;
};

/** Start to tag, metres, by level 1 to 5: least and most. */
const LEVEL_M = [
  [300, 450],
  [500, 700],
  [800, 1_050],
  [1_150, 1_500],
  [1_600, 2_100],
] as const;

const OPEN: GroundWish = { styles: ['smooth', 'plateau'], strengthM: [20, 70], wood: [0.02, 0.08] };

export const GROUND_WISHES: Readonly<Record<Lesson, GroundWish>> = {
  'quiet-gain': OPEN,
  'back-signal': OPEN,
  axis: { ...OPEN, styles: ['smooth', 'plateau', 'coast'] },
  bounce: { styles: ['ridged'], strengthM: [80, 210], wood: [0.05, 0.2] },
  wires: { styles: ['dale', 'smooth'], strengthM: [40, 150], wood: [0.05, 0.2] },
  'clear-view': { styles: ['dale', 'ridged'], strengthM: [60, 180], wood: [0.25, 0.5] },
  crossing: { styles: ['plateau', 'smooth', 'dale'], strengthM: [30, 120], wood: [0.05, 0.15] },
  moving: { styles: ['plateau', 'smooth'], strengthM: [30, 100], wood: [0.05, 0.2] },
  several: { styles: ['smooth', 'plateau', 'fen'], strengthM: [20, 90], wood: [0.05, 0.15] },
  night: { styles: ['smooth', 'plateau', 'coast'], strengthM: [20, 90], wood: [0.03, 0.12] },
  'close-in': { styles: ['smooth', 'fen'], strengthM: [10, 30], wood: [0.03, 0.1], farShare: 0.45 },
  search: { styles: ['ridged', 'plateau', 'dale'], strengthM: [60, 160], wood: [0.1, 0.25], farShare: 1.1 },
};

/** How far the tag is from the start: `share` 0 to 1 within the level's range. */
export function levelDistanceM(lesson: Lesson, level: number, share: number): number {
  const [least, most] = LEVEL_M[level - 1]!;
  return (GROUND_WISHES[lesson].farShare ?? 1) * (least + share * (most - least));
}

/** Between two ends by level: 1 gives the first, 5 the second. */
export const byLevel = ([easy, hard]: readonly [number, number], level: number): number => easy + ((hard - easy) * (level - 1)) / 4;

/** A line of wires across the way, nearer to the tag than to the start, from edge to edge of the map. */
export function lineAcross(start: MapPoint, tag: MapPoint, sizeM: number, skewDeg: number): GroundPlan['powerLines'] {
  const middle = stepAlong(start, bearingDeg(start, tag), 0.55 * distanceM(start, tag));
  const alongDeg = bearingDeg(start, tag) + 90 + skewDeg;
  const end = (deg: number): [number, number] => {
    let m = 0;
    const inside = ({ eM, nM }: MapPoint) => eM > 40 && nM > 40 && eM < sizeM - 40 && nM < sizeM - 40;
    while (inside(stepAlong(middle, deg, m + 20))) m += 20;
    const at = stepAlong(middle, deg, m);
    return [Math.round(at.eM), Math.round(at.nM)];
  };
  const route = [
    end(alongDeg + 180),
    [Math.round(middle.eM), Math.round(middle.nM)],
    end(alongDeg),
  ] as GroundPlan['powerLines'][number]['route'];
  return [{ voltage: 'high', route, spanM: 250, supportHeightM: 32, wireHeightM: 22, conductors: 6 }];
}

/** Sheds and walls round the tag, 25 to 60 m off. */
export function yardAround(tag: MapPoint, count: number, random: () => number): GroundPlan['buildings'] {
  return Array.from({ length: count }, (_, i) => {
    const at = stepAlong(tag, (360 * (i + random())) / count, 28 + 30 * random());
    return {
      at: [Math.round(at.eM), Math.round(at.nM)] as [number, number],
      lengthM: Math.round(14 + 20 * random()),
      widthM: Math.round(8 + 6 * random()),
      alongDeg: Math.round(359 * random()),
      heightM: Math.round(5 + 3 * random()),
      walls: random() < 0.5 ? ('metal' as const) : ('stone' as const),
    };
  });
}
