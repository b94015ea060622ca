import type { PowerLine, Span, Support } from '../world/world';

/** Foot of every tower, metres above sea level: small scenes stand their lines on level ground. */
const FOOT_M = 100;
const WIRES_ASIDE_M = [-5, 0, 5] as const;

type Plan = {
  /** Where the towers stand, metres east. */
  readonly towersM: readonly number[];
  readonly lineNM: number;
  readonly towerHeightM: number;
  readonly wireHeightM: number;
};

/** A power line from west to east with three wires. */
export function towerLine({ towersM, lineNM, towerHeightM, wireHeightM }: Plan): PowerLine {
  const supports = towersM.map(
    (eM): Support => ({ foot: { eM, nM: lineNM, zM: FOOT_M }, heightM: towerHeightM, radiusM: 0.8, kind: 'tower' }),
  );
  const spans = towersM.slice(1).flatMap((toM, i) =>
    WIRES_ASIDE_M.map((aside): Span => {
      const end = (eM: number) => ({ eM, nM: lineNM + aside, zM: FOOT_M + wireHeightM });
      return { from: end(towersM[i]!), to: end(toM), sagM: 1, conductorRadiusM: 0.0125 };
    }),
  );
  return { voltage: 'high', supports, spans };
}
