import '../scenario/withoutEval';
import { z } from 'zod';
import type { HeardPulse } from '../ear/hear';
import { complaints } from '../scenario/complaints';
import { InputFaults } from '../scenario/faults';
import { jsonFrom } from '../scenario/jsonText';
import { scenarioFrom } from '../scenario/load';
import { ANTENNA_IDS, type Scenario } from '../scenario/schema';
import { digestOf } from '../scenario/seal';
import type { Action, Entry } from './actions';
import type { Exercise } from './exercise';
import { hintText, LONGEST_HINT } from './intervention';
import type { Live } from './live';
import { packedHeard, packedLog, unpackedParts } from './packedParts';
import { runSealOf } from './runSeal';
import { TICKS_PER_S } from './state';

export const RUN_VERSION = 1;
export const PROGRAM_VERSION = '0.1.0';
/** The largest run file that is read: four hours' pulses and as many actions as a hand can do. */
export const RUN_LIMITS = { characters: 8_000_000, nodes: 2_500_000, depth: 16 };

const number = z.number();
const tick = z
  .int()
  .min(0)
  .max(20 * 14_400);
const place = z.strictObject({ eM: number.min(-1).max(10_001), nM: number.min(-1).max(10_001) });
const action = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('turn'), toDeg: number }),
  z.strictObject({ type: z.literal('spin'), degPerS: number }),
  z.strictObject({ type: z.literal('roll'), toDeg: number }),
  z.strictObject({ type: z.literal('raise'), raised: z.boolean() }),
  z.strictObject({ type: z.literal('setGain'), gainDb: number }),
  z.strictObject({ type: z.literal('setAttenuator'), attenuatorDb: number }),
  z.strictObject({ type: z.literal('tune'), tunedMHz: number }),
  z.strictObject({ type: z.literal('changeAntenna'), antenna: z.enum(ANTENNA_IDS) }),
  z.strictObject({ type: z.literal('walk'), courseDeg: number, paceMPerS: number }),
  z.strictObject({ type: z.literal('walkTo'), at: place, paceMPerS: number }),
  z.strictObject({ type: z.literal('board') }),
  z.strictObject({ type: z.literal('leave') }),
  z.strictObject({ type: z.literal('climb') }),
  z.strictObject({ type: z.literal('comeDown') }),
  z.strictObject({ type: z.literal('believe'), at: place }),
  z.strictObject({ type: z.literal('mark') }),
  z.strictObject({ type: z.literal('strikeOut'), mark: z.int().min(0).max(10_000) }),
  z.strictObject({ type: z.literal('unstrike'), mark: z.int().min(0).max(10_000) }),
  z.strictObject({ type: z.literal('guess'), at: place.nullable() }),
  z.strictObject({ type: z.literal('ruleOut'), around: place.nullable() }),
  z.strictObject({ type: z.literal('takeBack'), ruling: z.int().min(0).max(10_000) }),
  z.strictObject({ type: z.literal('ruleOutAgain'), ruling: z.int().min(0).max(10_000) }),
  z.strictObject({ type: z.literal('beat') }),
  z.strictObject({ type: z.literal('chooseStart'), at: place.nullable() }),
  z.strictObject({ type: z.literal('declare') }),
  z.strictObject({ type: z.literal('declareFix') }),
  z.strictObject({ type: z.literal('giveUp') }),
  z.strictObject({ type: z.literal('watch') }),
  z.strictObject({ type: z.literal('weaken'), tag: z.int().min(0).max(100), byDb: number }),
  z.strictObject({ type: z.literal('raiseLineNoise'), byDb: number }),
  z.strictObject({ type: z.literal('hint'), text: z.string().max(2 * LONGEST_HINT) }),
  z.strictObject({ type: z.literal('holdUp'), held: z.boolean() }),
]);

/** A heard pulse as a row: time ms, pitch Hz, level, loudness, audible, flat out, S units. The length is the tag's. */
const heardRow = z.tuple([z.int().min(0), number, number, number, z.boolean(), z.boolean(), number]);

const practice = z.strictObject({
  daysPractised: z.int().min(0).max(28),
  longestGapDays: z.int().min(0).max(28),
  dueShare: number.min(0).max(1).nullable(),
  largestSkillShare: number.min(0).max(1),
});
/** The learner's own statement of the last 28 days. */
export type Practice = z.infer<typeof practice>;

const mark = number.min(0).max(100).nullable();
const result = z.strictObject({
  technique: mark,
  quietGain: mark,
  setThenSweep: mark,
  walkAndListen: mark,
  clearView: mark,
  found: z.boolean(),
  timeS: number.min(0).max(14_400),
});
/** What the program that wrote the run made of it, scores to a tenth. A table never takes it over: it grades anew and compares. */
export type RunResult = z.infer<typeof result>;

const runSchema = z.strictObject({
  format: z.literal('faintward-run'),
  version: z.literal(RUN_VERSION),
  program: z.string().max(20),
  name: z.string().max(60),
  by: z.enum(['person', 'walker']),
  aided: z.boolean(),
  listener: z.strictObject({ thresholdDb: number.min(-40).max(40), checkedAt: z.string().max(30).nullable() }),
  practice: practice.optional(),
  /** When the run began by the learner's own clock, with its offset: its first ten characters are the date there. */
  begunAt: z.iso.datetime({ offset: true }).startsWith('20').max(40).optional(),
  result: result.optional(),
  scenario: z.unknown(),
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  ticks: tick,
  log: z.array(z.tuple([tick, action])).max(200_000),
  heard: z.array(heardRow).max(120_000),
  /** Digest of the rest, the name left out: see `runSeal.ts`. */
  seal: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
});

/** A finished or saved run: the exercise, what was done, what was heard. */
export type Recording = Omit<z.infer<typeof runSchema>, 'scenario'> & { readonly scenario: Scenario };

type About = Pick<Recording, 'name' | 'by'> &
  Partial<Pick<Recording, 'aided' | 'practice' | 'begunAt' | 'result'>> & { readonly checkedAt?: string | null };

const asRow = (heard: HeardPulse): Recording['heard'][number] => [
  Math.round(heard.atS * 1000),
  heard.pitchHz,
  heard.levelDb,
  heard.loudnessDb,
  heard.audible,
  heard.flatOut,
  heard.sUnits,
];

export function recordingOf(exercise: Exercise, live: Live, about: About): Recording {
  const recording: Recording = {
    format: 'faintward-run',
    version: RUN_VERSION,
    program: PROGRAM_VERSION,
    name: about.name,
    by: about.by,
    aided: about.aided ?? false,
    listener: { thresholdDb: live.listener.thresholdDb, checkedAt: about.checkedAt ?? null },
    ...(about.practice ? { practice: about.practice } : {}),
    ...(about.begunAt ? { begunAt: about.begunAt } : {}),
    ...(about.result ? { result: about.result } : {}),
    scenario: exercise.scenario,
    digest: exercise.digest,
    ticks: live.state.tick,
    log: live.log.map((entry) => [entry.tick, plainAction(entry.action)] as [number, Action]),
    heard: live.pulses.map(({ heard }) => asRow(heard)),
  };
  return { ...recording, seal: runSealOf(recording) };
}

/** Places are written as places only, whatever else the caller knew of them. */
function plainAction(done: Action): Action {
  if (done.type === 'walkTo' || done.type === 'believe') return { ...done, at: { eM: done.at.eM, nM: done.at.nM } };
  if ((done.type === 'guess' || done.type === 'chooseStart') && done.at) return { ...done, at: { eM: done.at.eM, nM: done.at.nM } };
  if (done.type === 'ruleOut' && done.around) return { ...done, around: { eM: done.around.eM, nM: done.around.nM } };
  if (done.type === 'hint') return { ...done, text: hintText(done.text) };
  return done;
}

/** The text of a run file. */
export const writeRecording = (recording: Recording): string => `${JSON.stringify(recording)}\n`;

/** Longer than this and what was done and heard is packed: half an hour by a phone's compass would take a megabyte. */
const PLAIN_CHARACTERS = 60_000;

/** The run as a file to keep and to send, small whatever the hand did. Its name, exercise and result stay to be read by anybody. */
export function runFileOf(recording: Recording): string {
  const plain = writeRecording(recording);
  if (plain.length <= PLAIN_CHARACTERS) return plain;
  const { log, heard } = recording;
  return `${JSON.stringify({ ...recording, log: packedLog(log), heard: packedHeard(heard) })}\n`;
}

/** @throws InputFaults for anything that is not a whole run of this format, its scenario included */
export const readRecording = (file: string, text: string): Recording => recordingFrom(file, jsonFrom(file, text, RUN_LIMITS));

export function recordingFrom(file: string, given: unknown): Recording {
  const value = unpackedParts(file, given, RUN_LIMITS);
  const parsed = runSchema.safeParse(value);
  if (!parsed.success) {
    throw new InputFaults(complaints(file, value, parsed.error.issues.slice(0, 20), () => 'use the run file as the program wrote it'));
  }
  const scenario = scenarioFrom(`${file}: scenario`, parsed.data.scenario);
  const digest = digestOf(scenario);
  if (digest !== parsed.data.digest) {
    const found = `the scenario inside has digest ${digest.slice(0, 12)}…, the run says ${parsed.data.digest.slice(0, 12)}…`;
    throw new InputFaults([{ file, path: 'digest', found, mend: 'use the run file as the program wrote it' }]);
  }
  const unordered = parsed.data.log.findIndex(([at], i, log) => i > 0 && at < log[i - 1]![0]);
  if (unordered >= 0) {
    const mend = 'use the run file as the program wrote it';
    throw new InputFaults([{ file, path: `log.${unordered}`, found: 'an action earlier than the one before it', mend }]);
  }
  return { ...parsed.data, scenario };
}

export const entriesOf = (recording: Recording): readonly Entry[] => recording.log.map(([at, done]) => ({ tick: at, action: done }));

/** Largest difference of a replayed level that rounding in another engine explains, dB. */
const ROUNDING_DB = 0.0151;

/** Do the pulses of a replay match the recorded ones, to one rounding step? */
export const heardMatches = (recording: Recording, live: Live): boolean => firstDifferenceS(recording, live) === null;

/** When a replay first hears another pulse than the recorded one, seconds; its end where only the length differs, `null` for never. */
export function firstDifferenceS(recording: Recording, live: Live): number | null {
  const rows = live.pulses.map(({ heard }) => asRow(heard));
  const differs = rows.findIndex((row, i) => i < recording.heard.length && !rowMatches(row, recording.heard[i]!));
  if (differs >= 0) return Math.min(rows[differs]![0], recording.heard[differs]![0]) / 1000;
  if (rows.length === recording.heard.length && live.state.tick === recording.ticks) return null;
  const longer = rows.length > recording.heard.length ? rows : recording.heard;
  const next = longer[Math.min(rows.length, recording.heard.length)];
  return next ? next[0] / 1000 : Math.min(live.state.tick, recording.ticks) / TICKS_PER_S;
}

type Row = Recording['heard'][number];

function rowMatches(a: Row, b: Row): boolean {
  const near = (x: number, y: number, step: number) => Math.abs(x - y) <= step;
  const same = a[0] === b[0] && near(a[1], b[1], 0.11) && near(a[2], b[2], ROUNDING_DB) && near(a[3], b[3], ROUNDING_DB);
  // A pulse on the very edge of hearing may fall either way where its loudness differs by a rounding step.
  const audible = a[4] === b[4] || (a[3] !== b[3] && near(a[3], b[3], ROUNDING_DB));
  const flat = a[5] === b[5] || a[2] !== b[2];
  return same && audible && flat && near(a[6], b[6], 0.11);
}
