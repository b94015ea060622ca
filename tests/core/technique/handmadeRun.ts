import { begin } from '../../../src/core/run/begin';
import type { Pulse } from '../../../src/core/run/pulse';
import { type Mark, type RunState, TICKS_PER_S } from '../../../src/core/run/state';
import type { Scenario } from '../../../src/core/scenario/schema';
import type { Evidence } from '../../../src/core/technique/habit';
import type { Outlook } from '../../../src/core/technique/outlook';
import { wrapBearingDeg } from '../../../src/core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../../src/core/units/frames';
import { COVER, type PowerLine, type World } from '../../../src/core/world/world';
import { plainScenario } from '../world/fixtureScenario';

const SIZE_M = 8_000;
const CELL_M = 20;
const CELLS = SIZE_M / CELL_M;

type Land = {
  readonly coverAt?: (eM: number, nM: number) => number;
  readonly heightM?: (eM: number, nM: number) => number;
  readonly wires?: readonly (readonly [MapPoint, MapPoint])[];
};

/** Flat open ground of 8 km, unless the land says otherwise. */
export function handmadeWorld({ coverAt = () => COVER.open, heightM = () => 100, wires = [] }: Land = {}): World {
  const grid = { columns: CELLS, rows: CELLS, cellM: CELL_M };
  const cell = (of: (eM: number, nM: number) => number) => (_: unknown, i: number) =>
    of(((i % CELLS) + 0.5) * CELL_M, (Math.floor(i / CELLS) + 0.5) * CELL_M);
  const cells = { length: CELLS * CELLS };
  return {
    sizeM: SIZE_M,
    cellM: CELL_M,
    groundM: { ...grid, values: Float32Array.from(cells, cell(heightM)) },
    cover: { ...grid, values: Uint8Array.from(cells, cell(coverAt)) },
    trackMask: { ...grid, values: new Uint8Array(CELLS * CELLS) },
    tracks: [],
    streams: [],
    fieldWalls: [],
    buildings: [],
    powerLines: wires.map(([from, to]): PowerLine => {
      const span = { from: { ...from, zM: 110 }, to: { ...to, zM: 110 }, sagM: 1, conductorRadiusM: 0.01 };
      return { voltage: 'medium', supports: [], spans: [span] };
    }),
  };
}

export const FLAT = handmadeWorld();
export const MIDDLE: MapPoint = { eM: 4_000, nM: 4_000 };
/** The place `lengthM` from the middle along a bearing. */
export const out = (alongDeg: number, lengthM: number): MapPoint => stepAlong(MIDDLE, alongDeg, lengthM);

/** Does things in turn; every call lets its time pass, tick by tick. */
export type Hands = {
  readonly at: () => MapPoint;
  readonly stand: (seconds: number) => void;
  readonly walkTo: (to: MapPoint, paceMPerS?: number) => void;
  readonly walk: (alongDeg: number, lengthM: number) => void;
  /** Turns the antenna at 30 degrees a second, standing or going on. */
  readonly sweep: (seconds: number, walkingDeg?: number) => void;
  /** Writes a bearing down; the antenna is not turned to it, so that marks alone are readings. */
  readonly mark: (bearingDeg: number) => void;
  readonly changeAntenna: (seconds: number) => void;
  readonly tune: (tunedMHz: number) => void;
};

type Setting = {
  readonly world?: World;
  readonly scenario?: Scenario;
  readonly startAt?: MapPoint;
  /** Least gain at a time and place, dB; `null` where nothing makes it heard. The distance rule says 800 m for 15 dB. */
  readonly leastGainDb?: (at: MapPoint, atS: number) => number | null;
  readonly audible?: (atS: number) => boolean;
};

const PACE_M_PER_S = 1.4;

/** A run made by hand: its states, its marks and a pulse of the first tag every second, without any radio. */
export function handmadeRun(script: (hands: Hands) => void, setting: Setting = {}): Evidence {
  const scenario = setting.scenario ?? plainScenario();
  const states: RunState[] = [{ ...begin(scenario), at: setting.startAt ?? MIDDLE }];
  const marks: Mark[] = [];
  const last = (): RunState => states.at(-1)!;
  const ticks = (count: number, change: (state: RunState, i: number) => Partial<RunState>) => {
    for (let i = 1; i <= Math.round(count); i++) states.push({ ...last(), ...change(last(), i), tick: last().tick + 1 });
  };
  const turned = (state: RunState, byDeg: number) => ({ ...state.hold, headingDeg: wrapBearingDeg(state.hold.headingDeg + byDeg) });
  const walkTo = (to: MapPoint, paceMPerS = PACE_M_PER_S) => {
    const from = last().at;
    const [alongDeg, lengthM] = [bearingDeg(from, to), distanceM(from, to)];
    const count = Math.ceil((lengthM / paceMPerS) * TICKS_PER_S - 1e-6);
    ticks(count, (_, i) => ({ at: i === count ? to : stepAlong(from, alongDeg, (lengthM * i) / count) }));
  };
  script({
    at: () => last().at,
    stand: (seconds) => ticks(seconds * TICKS_PER_S, () => ({})),
    walkTo,
    walk: (alongDeg, lengthM) => walkTo(stepAlong(last().at, alongDeg, lengthM)),
    sweep: (seconds, walkingDeg) =>
      ticks(seconds * TICKS_PER_S, (state) => ({
        hold: turned(state, 30 / TICKS_PER_S),
        at: walkingDeg === undefined ? state.at : stepAlong(state.at, walkingDeg, PACE_M_PER_S / TICKS_PER_S),
      })),
    mark: (markedDeg) => {
      const { tick, at, controls } = last();
      const { gainDb, attenuatorDb } = controls;
      marks.push({ atTick: tick, at, bearingDeg: wrapBearingDeg(markedDeg), gainDb, attenuatorDb, struckOut: false });
    },
    changeAntenna: (seconds) => {
      const busyUntilTick = last().tick + seconds * TICKS_PER_S + 1;
      ticks(seconds * TICKS_PER_S, () => ({ busyUntilTick }));
    },
    tune: (tunedMHz) => ticks(1, ({ controls }) => ({ controls: { ...controls, tunedMHz } })),
  });
  const state: RunState = { ...last(), notebook: marks };
  const pulses = scenario.tags.flatMap((_, tag) => pulsesOf(states, tag, setting));
  const refuse = () => {
    throw new Error('a run made by hand has no radio');
  };
  return {
    exercise: { scenario, digest: '', world: setting.world ?? FLAT, airspace: refuse, antenna: refuse, lineNoiseRaisedDb: 0 },
    run: { state, states, pulses, log: [], listener: { thresholdDb: 0 } as Evidence['run']['listener'] },
  };
}

function pulsesOf(states: readonly RunState[], tag: number, { leastGainDb = () => 15, audible = () => true }: Setting): readonly Pulse[] {
  const count = Math.ceil(states.length / TICKS_PER_S);
  return Array.from({ length: count }, (_, atS): Pulse => {
    const { at } = states[atS * TICKS_PER_S]!;
    const least = leastGainDb(at, atS);
    const heard = { atS, durationS: 0.02, pitchHz: 800, levelDb: -20, loudnessDb: 20, audible: audible(atS), flatOut: false, sUnits: 3 };
    const power = { powerDbm: -100, bestHeadingDeg: 0, bestPowerDbm: -100 };
    const truth = {
      tag,
      tagAt: MIDDLE,
      distanceM: 0,
      trueBearingDeg: 0,
      ...power,
      leastGainDb: least,
      excessDb: least === null ? null : 5,
    };
    return { heard, truth };
  });
}

/** Views told by a percentile at every place; the whole ground within 250 m counts as reachable at four points. */
export function handmadeOutlook(
  percentileAt: (at: MapPoint) => number = () => 50,
  contrast: (at: MapPoint) => number = () => 0.3,
): Outlook {
  return {
    percentileAmong: percentileAt,
    contrastAround: contrast,
    reachable: (from) => [0, 90, 180, 270].map((deg) => stepAlong(from, deg, 100)),
  };
}

export const minutes = (count: number): number => 60 * count;
