import { RELIEF_STYLES, type Scenario } from '../../../src/core/scenario/schema';
import { generateWorld } from '../../../src/core/world/generate';
import type { World } from '../../../src/core/world/world';
import { plainScenario } from './fixtureScenario';

export type Style = (typeof RELIEF_STYLES)[number];

const RELIEF: Record<Style, { readonly strengthM: number; readonly baseHeightM: number }> = {
  ridged: { strengthM: 180, baseHeightM: 220 },
  smooth: { strengthM: 110, baseHeightM: 90 },
  plateau: { strengthM: 150, baseHeightM: 160 },
  dale: { strengthM: 220, baseHeightM: 240 },
  coast: { strengthM: 90, baseHeightM: 0 },
  fen: { strengthM: 16, baseHeightM: 2 },
};

/** Two kilometres of each style, with everything a ground can have. */
export function groundOf(style: Style, seed = `ground-${style}`): Pick<Scenario, 'seed' | 'ground'> {
  const plain = plainScenario();
  const { seed: _, ground } = plain;
  return {
    seed,
    ground: {
      ...ground,
      sizeM: 2_000,
      relief: { style, roughness: 0.5, ...RELIEF[style] },
      tracks: 4,
      farms: 2,
      hamlets: 1,
      powerLines: [
        {
          voltage: 'low',
          route: [
            [200, 300],
            [700, 500],
          ],
          spanM: 50,
          supportHeightM: 8,
          wireHeightM: 7,
          conductors: 2,
        },
        {
          voltage: 'medium',
          route: [
            [100, 900],
            [1_000, 1_100],
            [1_900, 1_000],
          ],
          spanM: 110,
          supportHeightM: 12,
          wireHeightM: 10,
          conductors: 3,
        },
        {
          voltage: 'high',
          route: [
            [1_300, 50],
            [1_500, 1_950],
          ],
          spanM: 320,
          supportHeightM: 42,
          wireHeightM: 28,
          conductors: 6,
        },
      ],
    },
  };
}

const made = new Map<Style, World>();

/** The world of `groundOf(style)`, made once a test file. */
export function worldOf(style: Style): World {
  const world = made.get(style) ?? generateWorld(groundOf(style));
  made.set(style, world);
  return world;
}

export { RELIEF_STYLES };
