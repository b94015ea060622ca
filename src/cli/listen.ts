import { writeFileSync } from 'node:fs';
import { clearestDialMHz } from '../core/receiver/tuning';
import { begin } from '../core/run/begin';
import { type Exercise, openExercise } from '../core/run/exercise';
import { backgroundNow, pulseNow } from '../core/run/pulse';
import { type RunState, TICKS_PER_S } from '../core/run/state';
import { pulsesDue } from '../core/run/timetable';
import { loadPoses, type PoseRow } from '../core/scenario/poseFile';
import { turnDeg, wrapBearingDeg } from '../core/units/angles';
import { makeVoice, type Sounded } from '../core/voice/pulse';
import { wavBytes } from '../core/voice/wav';
import { numberFrom, placeFrom, scenarioOf, tagFrom, textOf, UsageError } from './inputs';
import { holdFrom, settingFrom } from './sweep';

type Options = {
  at?: unknown;
  turn?: unknown;
  seconds?: unknown;
  gain?: unknown;
  attenuator?: unknown;
  roll?: unknown;
  antenna?: unknown;
  poses?: unknown;
  out?: unknown;
  tag?: unknown;
};

const SAMPLE_RATE_HZ = 48_000;
const BLOCK = SAMPLE_RATE_HZ / TICKS_PER_S;

/** Renders what is heard while the antenna turns, or along a list of poses, and writes the WAV. */
export function listenCommand(file: string, options: Options): object {
  const scenario = scenarioOf(file);
  const tag = tagFrom(options.tag, scenario);
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a WAV file');
  const poses =
    options.poses === undefined ? turning(options, scenario.ground.sizeM) : loadPoses(String(options.poses), textOf(String(options.poses)));
  const seconds = secondsOf(options, poses, 60 / scenario.tags[tag]!.pulsesPerMinute);
  const base = begin(scenario);
  const hold = holdFrom(options, scenario);
  const controls = { ...base.controls, tunedMHz: clearestDialMHz(scenario.tags[tag]!.frequencyMHz) };
  const stateAt = (tick: number): RunState => posed({ ...base, hold, controls, tick }, poses, tick / TICKS_PER_S);
  const { samples, pulses } = rendered(openExercise(scenario), stateAt, Math.round(seconds * TICKS_PER_S));
  writeFileSync(options.out, wavBytes(samples, SAMPLE_RATE_HZ));
  return {
    file: options.out,
    sampleRateHz: SAMPLE_RATE_HZ,
    seconds: samples.length / SAMPLE_RATE_HZ,
    pulses: pulses.filter((pulse) => pulse.tag === tag || scenario.tags.length > 1),
  };
}

function secondsOf(options: Options, poses: readonly PoseRow[], pulseS: number): number {
  if (options.seconds !== undefined) return numberFrom('seconds', options.seconds, 0.05, 14_400);
  if (options.poses === undefined) throw new UsageError('--seconds wants how long to turn');
  return poses.at(-1)!.atS + pulseS;
}

/** A turn from heading to heading at one place as two poses; `350..370` goes through north, `90..0` turns left. */
function turning(options: Options, sizeM: number): readonly PoseRow[] {
  const parts = String(options.turn ?? '').split('..');
  if (parts.length !== 2) throw new UsageError(`--turn wants FROM..TO in degrees, found "${String(options.turn ?? '')}"`);
  const [fromDeg, toDeg] = parts.map((part) => numberFrom('turn', part, -3_600, 3_600)) as [number, number];
  const { eM: e, nM: n } = placeFrom('at', options.at, sizeM);
  const seconds = numberFrom('seconds', options.seconds, 0.05, 14_400);
  const rollDeg = options.roll === undefined ? 0 : numberFrom('roll', options.roll, 0, 90);
  const row = { e, n, rollDeg, ...settingFrom(options) } as Omit<PoseRow, 'atS' | 'headingDeg'>;
  // Poses turn the short way, so a long turn is cut into pieces of at most 90 degrees.
  const pieces = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / 90));
  return Array.from({ length: pieces + 1 }, (_, i) => ({
    ...row,
    atS: (seconds * i) / pieces,
    headingDeg: fromDeg + ((toDeg - fromDeg) * i) / pieces,
  }));
}

/** The state on the way between two poses: places and headings move evenly, knobs jump at the pose. */
function posed(state: RunState, poses: readonly PoseRow[], timeS: number): RunState {
  const after = poses.findIndex(({ atS }) => atS > timeS);
  const from = poses[after < 0 ? poses.length - 1 : Math.max(0, after - 1)]!;
  const to = after < 0 ? from : poses[after]!;
  const share = to.atS > from.atS ? Math.min(1, Math.max(0, (timeS - from.atS) / (to.atS - from.atS))) : 0;
  return {
    ...state,
    at: { eM: from.e + (to.e - from.e) * share, nM: from.n + (to.n - from.n) * share },
    hold: {
      ...state.hold,
      headingDeg: wrapBearingDeg(from.headingDeg + turnDeg(from.headingDeg, to.headingDeg) * share),
      rollDeg: from.rollDeg,
    },
    controls: { ...state.controls, gainDb: from.gainDb, attenuatorDb: from.attenuatorDb },
  };
}

type Told = {
  readonly tag: number;
  readonly atS: number;
  readonly headingDeg: number;
  readonly levelDb: number;
  readonly audible: boolean;
};

function rendered(
  exercise: Exercise,
  stateAt: (tick: number) => RunState,
  ticks: number,
): { samples: Float32Array; pulses: readonly Told[] } {
  const samples = new Float32Array(ticks * BLOCK);
  const voice = makeVoice(SAMPLE_RATE_HZ);
  const { mainsHz } = exercise.scenario.radio;
  const pulses: Told[] = [];
  let sounding: Sounded[] = [];
  for (let tick = 0; tick < ticks; tick++) {
    for (const due of pulsesDue(exercise.scenario, tick)) {
      const state = stateAt(due.atS * TICKS_PER_S);
      const { heard } = pulseNow(exercise, state, due);
      pulses.push({
        tag: due.tag,
        atS: due.atS,
        headingDeg: Number(state.hold.headingDeg.toFixed(2)),
        levelDb: heard.levelDb,
        audible: heard.audible,
      });
      sounding.push({
        ...heard,
        atSample: Math.round(due.atS * SAMPLE_RATE_HZ),
        lengthSamples: Math.round(heard.durationS * SAMPLE_RATE_HZ),
      });
    }
    voice.render(samples.subarray(tick * BLOCK, (tick + 1) * BLOCK), tick * BLOCK, sounding, {
      ...backgroundNow(exercise, stateAt(tick)),
      mainsHz,
    });
    sounding = sounding.filter(({ atSample, lengthSamples }) => atSample + lengthSamples > (tick + 1) * BLOCK);
  }
  return { samples, pulses };
}
