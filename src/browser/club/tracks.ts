import { computed, effect, signal } from '@preact/signals';
import type { TableRow, TrackPoint } from '../../core/club/tableRow';
import type { MapPoint } from '../../core/units/frames';
import { exerciseNow } from './clubTable';

/** Runs that are drawn as the ones to look at, by digest; `null` for the first two of the ranking. */
const picked = signal<readonly string[] | null>(null);
/** More than three lines can't be told apart without colours. */
const MOST_PICKED = 3;

/** The runs of the exercise that is looked at whose way is known, in the order of their places. */
export const walked = computed<readonly TableRow[]>(
  () => exerciseNow.value?.runs.map(({ row }) => row).filter(({ track }) => track.length > 0) ?? [],
);
export const inFront = computed<readonly TableRow[]>(() => {
  const wanted = picked.value;
  if (wanted === null) return walked.value.slice(0, 2);
  return wanted.flatMap((run) => walked.value.find((row) => row.run === run) ?? []);
});

/** Puts a run in front or back again; of more than three the first goes back. */
export function pick(run: string): void {
  const now = inFront.peek().map((row) => row.run);
  picked.value = now.includes(run) ? now.filter((one) => one !== run) : [...now, run].slice(-MOST_PICKED);
}

export const PACES = [10, 30, 100] as const;
/** The one clock of all runs, seconds since each of them began. */
export const atS = signal(0);
export const playing = signal(false);
export const pace = signal<number>(30);
export const endS = computed(() => walked.value.reduce((most, { track }) => Math.max(most, track.at(-1)![0]), 0));

export function seek(s: number): void {
  atS.value = Math.min(endS.peek(), Math.max(0, s));
}

export function play(): void {
  if (atS.peek() >= endS.peek()) atS.value = 0;
  playing.value = !playing.peek();
}

const MOST_CATCH_UP_S = 0.25;

/** Lets the clock go while the map is there; another exercise begins at its end, all ways drawn whole. @returns stops */
export function runClub(): () => void {
  let frame = 0;
  let lastMs = 0;
  const onFrame = (nowMs: number) => {
    frame = requestAnimationFrame(onFrame);
    const passedS = Math.min(MOST_CATCH_UP_S, Math.max(0, nowMs - lastMs) / 1_000);
    lastMs = nowMs;
    seek(atS.peek() + passedS * pace.peek());
    if (atS.peek() >= endS.peek()) playing.value = false;
  };
  const stopFrames = effect(() => {
    cancelAnimationFrame(frame);
    if (!playing.value) return;
    lastMs = performance.now();
    frame = requestAnimationFrame(onFrame);
  });
  const digest = computed(() => exerciseNow.value?.exercise.digest);
  const stop = effect(() => {
    void digest.value;
    picked.value = null;
    playing.value = false;
  });
  const stopEnd = effect(() => {
    const end = endS.value;
    if (!playing.peek()) atS.value = end;
  });
  return () => {
    stopFrames();
    cancelAnimationFrame(frame);
    stop();
    stopEnd();
    playing.value = false;
  };
}

/** The way up to a time, its last point between two of the track's; `ended` when the run was over by then. */
export function wayUntil(track: readonly TrackPoint[], s: number): { readonly way: readonly MapPoint[]; readonly ended: boolean } {
  const after = track.findIndex(([at]) => at > s);
  const point = ([, eM, nM]: TrackPoint): MapPoint => ({ eM, nM });
  if (after < 0) return { way: track.map(point), ended: true };
  if (after === 0) return { way: [point(track[0]!)], ended: false };
  const [a, b] = [track[after - 1]!, track[after]!];
  const share = (s - a[0]) / (b[0] - a[0]);
  const now = { eM: a[1] + share * (b[1] - a[1]), nM: a[2] + share * (b[2] - a[2]) };
  return { way: [...track.slice(0, after).map(point), now], ended: false };
}
