import type { Scenario } from '../../core/scenario/schema';

/** The tag of every drawn ground, but for its place and its whip. */
const DRAWN_TAG: Scenario['tags'][number] = {
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

const DRAWN: Scenario = {
  format: 'faintward-scenario',
  version: 1,
  title: 'Drawn ground',
  brief: 'A ground on which the model is tried.',
  author: 'Faintward',
  lesson: 'search',
  level: 2,
  seed: 'drawn-ground',
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
    powerLines: [],
    buildings: [{ at: [900, 2_200], lengthM: 24, widthM: 12, alongDeg: 30, heightM: 7, walls: 'metal' }],
  },
  radio: { groundClass: 'medium-dry', noise: 'rural', lineNoiseDb: 0, mainsHz: 50 },
  tags: [DRAWN_TAG],
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

/** An exercise on which phenomena are tried: 3 km of ridged ground with one metal building, but for what is given. */
export const drawnGround = (seed: string, ground: Partial<Scenario['ground']>, tag: Partial<Scenario['tags'][number]>): Scenario => ({
  ...DRAWN,
  seed,
  ground: { ...DRAWN.ground, ...ground },
  tags: [{ ...DRAWN_TAG, ...tag }],
});
