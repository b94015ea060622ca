import { type Airspace, makeAirspace } from '../radio/arrivals';
import { directWave, type TagSite } from '../radio/directWave';
import type { FieldCache } from '../radio/fieldCache';
import type { Wave } from '../radio/wave';
import type { Scenario, Tag } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { COVER, type PowerLine, type World } from '../world/world';
import { PULSE_MS, TAG_MHZ } from './air';

/** A small piece of ground with one tag, shaped by hand so that it shows one thing. Heights and covers are functions of the place. */
export type SceneInput = {
  readonly sizeM: number;
  readonly cellM?: number;
  readonly heightM?: (eM: number, nM: number) => number;
  readonly cover?: (eM: number, nM: number) => number;
  readonly powerLines?: readonly PowerLine[];
  readonly tag: { readonly at: MapPoint; readonly heightM?: number; readonly leanDeg?: number; readonly towardDeg?: number };
  readonly relief?: number;
  /** The ground lies the same east and west of the tag: what was worked out on one side holds on the other. */
  readonly mirrored?: boolean;
};

/** The same radio model as an exercise's, on this ground. */
export type SmallScene = {
  readonly world: World;
  readonly airspace: Airspace;
  readonly site: TagSite;
  /** The wave straight from the tag alone. */
  readonly direct: (at: MapPoint, heightM?: number) => Wave;
};

/** Height at which a walker holds an antenna, metres. */
export const CHEST_M = 1.7;
const TAG_HEIGHT_M = 0.5;

export function makeSmallScene(input: SceneInput): SmallScene {
  const world = handShaped(input);
  const scenario = scenarioOf(input);
  const airspace = makeAirspace({ scenario, world, tagIndex: 0, tagAt: input.tag.at });
  const field = input.mirrored ? eastOf(input.tag.at, airspace.field) : airspace.field;
  const site = { scenario, world, tagIndex: 0, tagAt: input.tag.at, field };
  return { world, airspace, site, direct: (at, heightM = CHEST_M) => directWave(site, at, heightM).wave };
}

/** The terrain field asked on the tag's eastern side alone. */
const eastOf = (tagAt: MapPoint, field: FieldCache): FieldCache => ({
  ...field,
  excessAt: ({ eM, nM }, heightM, nearest) => field.excessAt({ eM: tagAt.eM + Math.abs(eM - tagAt.eM), nM }, heightM, nearest),
});

function handShaped({ sizeM, cellM = 10, heightM = () => 100, cover = () => COVER.open, powerLines = [] }: SceneInput): World {
  const columns = Math.round(sizeM / cellM);
  const grid = { columns, rows: columns, cellM };
  const ground = new Float32Array(columns * columns);
  const covers = new Uint8Array(columns * columns);
  for (let i = 0; i < ground.length; i++) {
    const eM = ((i % columns) + 0.5) * cellM;
    const nM = (Math.floor(i / columns) + 0.5) * cellM;
    ground[i] = heightM(eM, nM);
    covers[i] = cover(eM, nM);
  }
  return {
    sizeM,
    cellM,
    groundM: { ...grid, values: ground },
    cover: { ...grid, values: covers },
    trackMask: { ...grid, values: new Uint8Array(columns * columns) },
    tracks: [],
    streams: [],
    fieldWalls: [],
    buildings: [],
    powerLines,
  };
}

/** As much of an exercise as the radio model asks for; the rest is what every exercise must have. */
function scenarioOf({ sizeM, cellM = 10, tag, relief = 0 }: SceneInput): Scenario {
  const plan: Tag = {
    name: 'Demonstration',
    at: [tag.at.eM, tag.at.nM],
    frequencyMHz: TAG_MHZ,
    eirpDbm: 0,
    pulseMs: PULSE_MS,
    pulsesPerMinute: 60,
    heightM: tag.heightM ?? TAG_HEIGHT_M,
    whip: { leanDeg: tag.leanDeg ?? 0, towardDeg: tag.towardDeg ?? 0 },
    movement: { kind: 'stays' },
    driftHzPerHour: 0,
    decayDbPerHour: 0,
  };
  return {
    format: 'faintward-scenario',
    version: 1,
    title: 'Listening room',
    brief: 'A scene of the Listening room.',
    author: 'Faintward',
    lesson: 'search',
    level: 1,
    seed: 'listening-room',
    ground: {
      sizeM,
      cellM,
      relief: { style: 'smooth', strengthM: relief, roughness: 0, baseHeightM: 100 },
      cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      hamlets: 0,
      fieldWalls: false,
      powerLines: [],
      buildings: [],
    },
    radio: { groundClass: 'wet', noise: 'rural', lineNoiseDb: 0, mainsHz: 50 },
    tags: [plan],
    kit: {
      antennas: ['yagi3'],
      startAntenna: 'yagi3',
      designMHz: 150,
      startGainDb: 40,
      startAttenuatorDb: 0,
      startOffsetHz: 0,
      noiseFigureDb: 4,
    },
    start: { at: [tag.at.eM, tag.at.nM], facingDeg: 0 },
    aids: { ownPosition: true, sMeter: true, compass: true, fix: true, soundRing: true },
    limits: { timeS: 3_600, paceMPerS: 1.4, vehicle: false, findWithinM: 10 },
    weights: { quietGain: 1, setThenSweep: 1, walkAndListen: 1, clearView: 1 },
    cautions: [],
  };
}
