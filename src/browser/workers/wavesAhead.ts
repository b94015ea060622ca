import type { Exercise } from '../../core/run/exercise';
import { antennaHeightM, type RunState, TICKS_PER_S } from '../../core/run/state';
import { tagAt } from '../../core/run/tagMotion';
import { type MapPoint, stepAlong } from '../../core/units/frames';
import { openWorker } from './openWorker';
import type { FromWaves, ToWaves } from './wavesMessages';

/** Keeps the terrain field filled ahead of walker and tags. Whatever comes too late is computed by the page itself. */
export type WavesAhead = {
  /** Everything that the pulses at this state need; resolves when it is there. */
  readonly ready: (state: RunState) => Promise<void>;
  /** Asks for what the coming seconds may need. */
  readonly follow: (state: RunState) => void;
  readonly close: () => void;
};

/** How far ahead a moving tag's next places are lit, seconds. */
const TAG_AHEAD_S = 14;
/** Where the walker may be soon, metres along the course and to either side. */
const WALK_AHEAD_M = [4, 9, 15, 22] as const;
const ASIDE_DEG = [0, 90, 270] as const;
/** Two places of a moving tag nearer than this share their field. */
const LATTICE_M = 10;

export function openWavesAhead(exercise: Exercise): WavesAhead {
  const { scenario, world } = exercise;
  const worker = openWorker('waves');
  const waiting = new Map<number, () => void>();
  const asked = new Set<string>();
  let asks = 0;
  const tell = (message: ToWaves) => worker.postMessage(message);
  tell({ kind: 'open', scenario, world });
  worker.onmessage = ({ data: { ask, tag, tagAt: place, results } }: MessageEvent<FromWaves>) => {
    const { field } = exercise.airspace(tag, place);
    for (const result of results) field.put(result);
    waiting.get(ask)?.();
    waiting.delete(ask);
  };
  // A worker that fails leaves the page to compute for itself.
  worker.onerror = () => {
    for (const done of waiting.values()) done();
    waiting.clear();
  };

  const light = (tag: number, place: MapPoint, state: RunState): Promise<void> => {
    const key = `${tag}/${Math.round(place.eM / LATTICE_M)}/${Math.round(place.nM / LATTICE_M)}`;
    if (asked.has(key)) return Promise.resolve();
    asked.add(key);
    const ask = ++asks;
    tell({ kind: 'light', ask, tag, tagAt: place, at: state.at, heightM: antennaHeightM(state.hold) });
    return new Promise((done) => waiting.set(ask, done));
  };
  const tags = scenario.tags.map((_, tag) => tag);
  return {
    async ready(state) {
      await Promise.all(tags.map((tag) => light(tag, tagAt(scenario, tag, state.tick / TICKS_PER_S), state)));
    },
    follow(state) {
      for (const tag of tags) {
        const nowS = state.tick / TICKS_PER_S;
        void light(tag, tagAt(scenario, tag, nowS + TAG_AHEAD_S), state);
        if (state.legs.paceMPerS === 0) continue;
        const place = tagAt(scenario, tag, nowS);
        const points = WALK_AHEAD_M.flatMap((m) => ASIDE_DEG.map((aside) => stepAlong(state.at, state.legs.courseDeg + aside, m)));
        const missing = exercise.airspace(tag, place).field.neededRadials(points);
        const fresh = missing.filter(({ index }) => !asked.has(`${tag}/${place.eM}/${place.nM}/${index}`));
        for (const { index } of fresh) asked.add(`${tag}/${place.eM}/${place.nM}/${index}`);
        if (fresh.length > 0) tell({ kind: 'radials', ask: ++asks, tag, tagAt: place, requests: fresh });
      }
    },
    close: () => worker.terminate(),
  };
}
