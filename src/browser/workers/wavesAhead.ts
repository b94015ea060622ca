import type { Exercise } from '../../core/run/exercise';
import { sendingPlace, sendingPlaces } from '../../core/run/sendingPlace';
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
/** So long before a tag sends from a new place the radials from there to the walker are asked for, seconds. */
const TURN_AHEAD_S = 3;
/** Where the walker may be soon, metres along the course and to either side. */
const WALK_AHEAD_M = [4, 9, 15, 22] as const;
const ASIDE_DEG = [0, 90, 270] as const;
/** So many places of a tag are known to be kept on the page: one to which it comes back later is lit again. */
const KEPT_PLACES = 3;

export function openWavesAhead(exercise: Exercise): WavesAhead {
  const { scenario, world } = exercise;
  const worker = openWorker('waves');
  const waiting = new Map<number, () => void>();
  const asked = new Set<string>();
  const lit = scenario.tags.map((): string[] => []);
  /** Up to when the places of each tag have been asked for, seconds of the run. */
  const askedToS = scenario.tags.map(() => Number.NEGATIVE_INFINITY);
  let asks = 0;
  let works = true;
  const tell = (message: ToWaves) => {
    if (works) worker.postMessage(message);
  };
  tell({ kind: 'open', scenario, world });
  worker.onmessage = ({ data: { ask, tag, tagAt: place, results } }: MessageEvent<FromWaves>) => {
    const { field } = exercise.airspace(tag, place);
    for (const result of results) field.put(result);
    waiting.get(ask)?.();
    waiting.delete(ask);
  };
  // A worker that fails leaves the page to compute for itself.
  worker.onerror = (event) => {
    event.preventDefault();
    works = false;
    worker.terminate();
    for (const done of waiting.values()) done();
    waiting.clear();
  };

  const forget = (beginning: string) => {
    for (const key of asked) if (key.startsWith(beginning)) asked.delete(key);
  };
  const light = (tag: number, place: MapPoint, state: RunState): Promise<void> => {
    if (!works) return Promise.resolve();
    const key = keyOf(place);
    const known = lit[tag]!;
    if (known.includes(key)) return Promise.resolve();
    known.push(key);
    if (known.length > KEPT_PLACES) forget(`${tag}/${known.shift()}/`);
    const ask = ++asks;
    tell({ kind: 'light', ask, tag, tagAt: place, at: state.at, heightM: antennaHeightM(state.hold) });
    return new Promise((done) => waiting.set(ask, done));
  };
  const placeAt = (tag: number, s: number): MapPoint => sendingPlace(scenario, tag, tagAt(scenario, tag, s));
  /** Asks for the radials between a place of a tag and where the walker is or may be soon. */
  const towardsWalker = (tag: number, place: MapPoint, { at, legs }: RunState) => {
    const ahead = WALK_AHEAD_M.flatMap((m) => ASIDE_DEG.map((aside) => stepAlong(at, legs.courseDeg + aside, m)));
    const missing = exercise.airspace(tag, place).field.neededRadials(legs.paceMPerS === 0 ? [at] : [at, ...ahead]);
    const fresh = missing.filter(({ index }) => !asked.has(`${tag}/${keyOf(place)}/${index}`));
    for (const { index } of fresh) asked.add(`${tag}/${keyOf(place)}/${index}`);
    if (fresh.length > 0) tell({ kind: 'radials', ask: ++asks, tag, tagAt: place, requests: fresh });
  };
  const tags = scenario.tags.map((_, tag) => tag);
  return {
    async ready(state) {
      await Promise.all(tags.map((tag) => light(tag, placeAt(tag, state.tick / TICKS_PER_S), state)));
    },
    follow(state) {
      for (const tag of tags) {
        const nowS = state.tick / TICKS_PER_S;
        // a page that slept, or a run that was taken up again, has missed some: from now on, then
        const fromS = Math.max(nowS, askedToS[tag]!);
        for (const place of sendingPlaces(scenario, tag, fromS, nowS + TAG_AHEAD_S)) void light(tag, place, state);
        askedToS[tag] = nowS + TAG_AHEAD_S;
        for (const place of sendingPlaces(scenario, tag, nowS, nowS + TURN_AHEAD_S)) towardsWalker(tag, place, state);
      }
    },
    close: () => worker.terminate(),
  };
}

const keyOf = ({ eM, nM }: MapPoint): string => `${eM}/${nM}`;
