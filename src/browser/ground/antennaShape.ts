import type { AntennaId } from '../../core/scenario/schema';

/** A stroke of an antenna seen from above: forward and right of the hand, 1 is half the longest element. */
export type Stroke = { readonly from: readonly [number, number]; readonly to: readonly [number, number]; readonly boom: boolean };

type Element = { readonly along: number; readonly half: number };
const ELEMENTS: Readonly<Record<AntennaId, readonly Element[]>> = {
  yagi3: [
    { along: -0.85, half: 1 },
    { along: 0, half: 0.93 },
    { along: 0.95, half: 0.86 },
  ],
  yagi2: [
    { along: -0.45, half: 1 },
    { along: 0.45, half: 0.92 },
  ],
  phased2: [
    { along: -0.45, half: 0.95 },
    { along: 0.45, half: 0.95 },
  ],
  yagi5: [
    { along: -1, half: 1 },
    { along: -0.35, half: 0.93 },
    { along: 0.25, half: 0.87 },
    { along: 0.85, half: 0.85 },
    { along: 1.45, half: 0.83 },
  ],
  loop: [],
  whip: [],
};

/** Held flat the elements are seen full length, upright only the boom is left with a stub at each element. */
export function antennaStrokes(antenna: AntennaId, rollDeg: number): readonly Stroke[] {
  const elements = ELEMENTS[antenna];
  if (antenna === 'whip') return [{ from: [-0.25, 0], to: [0.25, 0], boom: true }];
  if (antenna === 'loop') return [{ from: [-0.9, 0], to: [0.9, 0], boom: true }];
  const seen = Math.max(0.12, Math.cos((rollDeg * Math.PI) / 180));
  const first = elements[0]!.along;
  const last = elements.at(-1)!.along;
  return [
    { from: [first - 0.35, 0], to: [last + 0.15, 0], boom: true },
    ...elements.map(({ along, half }): Stroke => ({ from: [along, -half * seen], to: [along, half * seen], boom: false })),
  ];
}
