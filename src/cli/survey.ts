import { writeFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { loudnessDb } from '../core/ear/hear';
import { leastGainDb } from '../core/ear/leastGain';
import { USUAL_LISTENER } from '../core/ear/loudness';
import { receive } from '../core/receiver/receive';
import { clearestDialMHz } from '../core/receiver/tuning';
import { type Exercise, openExercise } from '../core/run/exercise';
import { atTerminal, bestAtPlace, bestHold, tagHere } from '../core/run/sense';
import { turnDeg } from '../core/units/angles';
import { bearingDeg, type MapPoint } from '../core/units/frames';
import { opennessAt } from '../core/world/openness';
import { oneOf, scenarioOf, tagFrom, UsageError } from './inputs';

const KINDS = ['loudness', 'excess', 'openness', 'apparent-bearing-error'] as const;
type Kind = (typeof KINDS)[number];

/** Points along a side of the picture, and pixels a point. */
const POINTS = 72;
const PIXELS = 8;

/** Where the scale of the picture begins and ends, and what it is in. */
const SCALE: Readonly<Record<Kind, readonly [number, number, string]>> = {
  loudness: [-10, 50, 'dB above just heard, at the starting gain'],
  excess: [-10, 50, 'dB of gain above least gain, at the starting gain'],
  openness: [0, 1, 'share of the ground in view'],
  'apparent-bearing-error': [0, 90, 'degrees'],
};

/** A picture of the map by one quantity, and its numbers: row-major from the south-west, `null` where undefined. */
export function surveyCommand(file: string, options: { out?: unknown; what?: unknown; tag?: unknown }): object {
  const what = options.what === undefined ? 'loudness' : oneOf('what', options.what, KINDS);
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a PNG file');
  const scenario = scenarioOf(file);
  const exercise = openExercise(scenario);
  const tag = tagFrom(options.tag, scenario);
  const stepM = scenario.ground.sizeM / POINTS;
  const values: (number | null)[] = [];
  for (let row = 0; row < POINTS; row++) {
    for (let column = 0; column < POINTS; column++) {
      const value = VALUE[what](exercise, tag, { eM: (column + 0.5) * stepM, nM: (row + 0.5) * stepM });
      values.push(value === null ? null : Number(value.toFixed(2)));
    }
    if (process.stderr.isTTY) process.stderr.write(`\r${what}: ${Math.round((100 * (row + 1)) / POINTS)} %`);
  }
  if (process.stderr.isTTY) process.stderr.write('\n');
  writeFileSync(options.out, picture(values, SCALE[what]));
  return { file: options.out, what, unit: SCALE[what][2], columns: POINTS, rows: POINTS, stepM: Number(stepM.toFixed(3)), values };
}

const VALUE: Readonly<Record<Kind, (exercise: Exercise, tag: number, at: MapPoint) => number | null>> = {
  openness: ({ world }, _tag, at) => opennessAt(world, at),
  loudness(exercise, tag, at) {
    const { kit, tags } = exercise.scenario;
    const here = tagHere(exercise, tag, at, 1.7, 0);
    const best = bestHold(exercise, here, kit.startAntenna);
    const hold = { ...best, raised: false, antenna: kit.startAntenna };
    const setting = { gainDb: kit.startGainDb, attenuatorDb: kit.startAttenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) };
    return loudnessDb(receive(atTerminal(exercise, here, hold), setting), tags[tag]!.pulseMs, USUAL_LISTENER);
  },
  excess(exercise, tag, at) {
    const { kit } = exercise.scenario;
    const here = tagHere(exercise, tag, at, 1.7, 0);
    const least = leastGainDb(bestAtPlace(exercise, here, bestHold(exercise, here, kit.startAntenna), kit.startAntenna), USUAL_LISTENER);
    return least === null ? null : kit.startGainDb - kit.startAttenuatorDb - least;
  },
  'apparent-bearing-error'(exercise, tag, at) {
    const here = tagHere(exercise, tag, at, 1.7, 0);
    const best = bestHold(exercise, here, exercise.scenario.kit.startAntenna);
    return Math.abs(turnDeg(bearingDeg(at, here.tagAt), best.headingDeg));
  },
};

const PAPER = [244, 239, 227] as const;
const SOUND = [194, 65, 12] as const;
const NOTHING = [207, 198, 177] as const;

function picture(values: readonly (number | null)[], [from, to]: readonly [number, number, string]): Buffer {
  const side = POINTS * PIXELS;
  const png = new PNG({ width: side, height: side });
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const value = values[(POINTS - 1 - Math.floor(y / PIXELS)) * POINTS + Math.floor(x / PIXELS)]!;
      const share = value === null ? 0 : Math.min(1, Math.max(0, (value - from) / (to - from)));
      const at = (y * side + x) * 4;
      for (let i = 0; i < 3; i++) png.data[at + i] = value === null ? NOTHING[i]! : Math.round(PAPER[i]! + (SOUND[i]! - PAPER[i]!) * share);
      png.data[at + 3] = 255;
    }
  }
  return PNG.sync.write(png);
}
