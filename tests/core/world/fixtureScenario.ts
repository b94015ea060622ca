import type { Scenario } from '../../../src/core/scenario/schema';

type Overrides = Partial<Omit<Scenario, 'ground' | 'limits' | 'kit' | 'aids' | 'radio'>> & {
  readonly ground?: Partial<Scenario['ground']>;
  readonly limits?: Partial<Scenario['limits']>;
  readonly kit?: Partial<Scenario['kit']>;
  readonly aids?: Partial<Scenario['aids']>;
  readonly radio?: Partial<Scenario['radio']>;
};

const PLAIN_TAG: Scenario['tags'][number] = {
  name: 'Ewe',
  at: [2_050, 1_900],
  frequencyMHz: 150.1,
  eirpDbm: 10,
  pulseMs: 20,
  pulsesPerMinute: 60,
  heightM: 0.5,
  whip: { leanDeg: 20, towardDeg: 70 },
  movement: { kind: 'stays' },
  driftHzPerHour: 0,
  decayDbPerHour: 0,
};

const PLAIN: Scenario = {
  format: 'faintward-scenario',
  version: 1,
  title: 'Two ridges',
  brief: 'Find the tag before dark.',
  author: 'Tests',
  lesson: 'search',
  level: 2,
  seed: 'plain-ground',
  ground: {
    sizeM: 3_000,
    cellM: 10,
    relief: { style: 'ridged', strengthM: 180, roughness: 0.5, baseHeightM: 220 },
    cover: { wood: 0.22, scrub: 0.08, wet: 0.04, rock: 0.03 },
    water: { lakes: 1, streams: 4 },
    tracks: 3,
    farms: 2,
    hamlets: 0,
    fieldWalls: true,
    powerLines: [
      {
        voltage: 'medium',
        route: [
          [100, 700],
          [1_500, 1_000],
          [2_900, 1_300],
        ],
        spanM: 110,
        supportHeightM: 12,
        wireHeightM: 10,
        conductors: 3,
      },
    ],
    buildings: [{ at: [900, 2_200], lengthM: 24, widthM: 12, alongDeg: 30, heightM: 7, walls: 'metal' }],
  },
  radio: { groundClass: 'medium-dry', noise: 'rural', lineNoiseDb: 0, mainsHz: 50 },
  tags: [PLAIN_TAG],
  kit: {
    antennas: ['yagi3', 'loop'],
    startAntenna: 'yagi3',
    designMHz: 150,
    startGainDb: 40,
    startAttenuatorDb: 0,
    startOffsetHz: 400,
    noiseFigureDb: 4,
  },
  start: { at: [600, 500], facingDeg: 45 },
  aids: { ownPosition: true, sMeter: true, compass: true, fix: true, soundRing: false },
  limits: { timeS: 3_600, paceMPerS: 1.4, vehicle: false, findWithinM: 10 },
  weights: { quietGain: 1, setThenSweep: 1, walkAndListen: 1, clearView: 1 },
  cautions: ['wires', 'alone'],
};

/** A whole valid exercise on 3 km of ridged ground; groups named in `overrides` are mixed in field by field. */
export function plainScenario(overrides: Overrides = {}): Scenario {
  const { ground, limits, kit, aids, radio, ...rest } = overrides;
  return {
    ...PLAIN,
    ...rest,
    ground: { ...PLAIN.ground, ...ground },
    limits: { ...PLAIN.limits, ...limits },
    kit: { ...PLAIN.kit, ...kit },
    aids: { ...PLAIN.aids, ...aids },
    radio: { ...PLAIN.radio, ...radio },
  };
}
