import { signal } from '@preact/signals';
import type { Debriefing } from '../core/debrief/debriefing';
import type { WaveArrow } from '../core/debrief/lossBudget';
import type { Ratings } from '../core/debrief/moments';
import { posesEndS, stateAt } from '../core/debrief/poses';
import { openExercise } from '../core/run/exercise';
import { entriesOf, type Practice, type Recording, readRecording } from '../core/run/record';
import type { Scenario } from '../core/scenario/schema';
import type { MapPoint } from '../core/units/frames';
import { live, openRun, showRun } from './currentRun';
import { finishedRecord, noteFinished } from './storage/finishedRuns';
import type { FinishedRecord } from './storage/runs';
import { type GoneThrough, goThrough } from './workers/goThrough';
import { openLand } from './workers/openLand';

/** What is known of a finished run beside its log and pulses. */
export type About = {
  /** On the shelf of this device; `null` for a run that lies there not. */
  readonly key: number | null;
  readonly name: string;
  readonly by: Recording['by'];
  readonly aided: boolean;
  readonly begunAt?: string;
  /** When the hearing check was made that the run's listener comes from. */
  readonly checkedAt: string | null;
  readonly practice?: Practice;
  /** What the learner said of the five habits; `null` as long as nobody was asked. */
  readonly ratings: Ratings | null;
};

/** What a score card is made of. */
export type CardedRun = {
  readonly scenario: Scenario;
  readonly grade: Debriefing['grade'];
  readonly about: About & { readonly withInstructor: boolean };
};

/** The run of the debrief: it is over, and it is the open run. `null` while one is being played. */
export const finishedRun = signal<About | null>(null);
export const debriefed = signal<Debriefing | null>(null);
/** The waves behind each bearing, by its number; they come one after the other. */
export const wavesOf = signal<ReadonlyMap<number, readonly WaveArrow[]>>(new Map());
/** A run on its way into the debrief. */
export const reading = signal<{ readonly title: string; readonly share: number; readonly fault: string | null } | null>(null);

let close: () => void = () => {};
/** Counts what was opened: what comes of an earlier one is let go. */
let opened = 0;

export function forgetFinished(): void {
  opened++;
  close();
  finishedRun.value = null;
  debriefed.value = null;
  wavesOf.value = new Map();
  reading.value = null;
}

const keepWaves = (number: number, arrows: readonly WaveArrow[]): void => {
  wavesOf.value = new Map([...wavesOf.peek(), [number, arrows]]);
};

/** Goes through the run that has just been played. */
export async function debriefOpenRun(): Promise<void> {
  if (debriefed.peek()) return;
  const { exercise } = openRun.peek()!;
  const { log, pulses, state, listener } = live.peek()!;
  const { scenario, world } = exercise;
  const practice = finishedRun.peek()?.practice;
  const { thresholdDb } = listener;
  const work = goThrough({ scenario, world, practice, log, ticks: state.tick, thresholdDb, pulses }, { waves: keepWaves });
  close = work.close;
  debriefed.value = (await work.result).debriefing;
}

/** Opens a run of the shelf. @returns whether it is there */
export async function openKept(key: number): Promise<boolean> {
  const record = await finishedRecord(key);
  if (!record) return false;
  await openRecording(readRecording(record.title, record.text), { key, record });
  return true;
}

/** Opens a run from its file: ground first, then the run is lived through where its pulses are not known, then the debrief. */
export async function openRecording(
  recording: Recording,
  kept: { readonly key: number; readonly record: FinishedRecord } | null = null,
): Promise<void> {
  forgetFinished();
  const { scenario, ticks, listener, practice } = recording;
  const tell = (share: number) => {
    reading.value = { title: scenario.title, share, fault: null };
  };
  tell(0);
  const mine = opened;
  try {
    const { world, land } = await openLand(scenario, () => {});
    if (mine !== opened) return;
    const log = entriesOf(recording);
    const pulses = kept?.record.pulses ?? null;
    const { thresholdDb } = listener;
    const work = goThrough({ scenario, world, practice, log, ticks, thresholdDb, pulses }, { share: tell, waves: keepWaves });
    close = work.close;
    const gone = await work.result;
    if (mine !== opened) return;
    finishedRun.value = aboutOf(recording, kept);
    debriefed.value = gone.debriefing;
    const come = { live: liveOf(recording, gone), walked: walkedOf(recording, gone.debriefing), silences: [], checkBeeps: [] };
    showRun({ exercise: openExercise(scenario, world), land }, come);
    reading.value = null;
  } catch (fault) {
    reading.value = { title: scenario.title, share: 0, fault: fault instanceof Error ? fault.message : String(fault) };
  }
}

const liveOf = (recording: Recording, { debriefing, pulses }: GoneThrough) => ({
  state: debriefing.end,
  log: entriesOf(recording),
  pulses,
  listener: { thresholdDb: recording.listener.thresholdDb },
});

/** The way walked, a point a second. */
const walkedOf = ({ scenario }: Recording, { poses }: Debriefing): readonly MapPoint[] =>
  Array.from({ length: Math.ceil(posesEndS(poses)) + 1 }, (_, s) => stateAt(scenario, poses, s).at);

function aboutOf(recording: Recording, kept: { readonly key: number; readonly record: FinishedRecord } | null): About {
  const { name, by, aided, begunAt, practice, listener } = recording;
  // Nobody asks a walker, or a learner whose run is shown on the wall, how it went.
  const ratings = kept ? (kept.record.ratings ?? null) : {};
  const { checkedAt } = listener;
  return {
    key: kept?.key ?? null,
    name,
    by,
    aided,
    ratings,
    checkedAt,
    ...(begunAt ? { begunAt } : {}),
    ...(practice ? { practice } : {}),
  };
}

/** What the learner says of the run, kept with it. */
export function rateRun(ratings: Ratings): void {
  const about = finishedRun.peek();
  if (!about) return;
  finishedRun.value = { ...about, ratings };
  if (about.key !== null) void noteFinished(about.key, { ratings });
}
