import { writeFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { SURVEY_KINDS, SURVEY_SCALES, type SurveyScale, surveyAt, surveyPlace } from '../core/debrief/survey';
import { openExercise } from '../core/run/exercise';
import { oneOf, scenarioOf, tagFrom, UsageError } from './inputs';

/** Points along a side of the picture, and pixels a point. */
const POINTS = 72;
const PIXELS = 8;

/** A picture of the map by one quantity, and its numbers: row-major from the south-west, `null` where undefined. */
export function surveyCommand(file: string, options: { out?: unknown; what?: unknown; tag?: unknown }): object {
  const what = options.what === undefined ? 'loudness' : oneOf('what', options.what, SURVEY_KINDS);
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a PNG file');
  const scenario = scenarioOf(file);
  const exercise = openExercise(scenario);
  const { startGainDb: gainDb, startAttenuatorDb: attenuatorDb } = scenario.kit;
  const setting = { tag: tagFrom(options.tag, scenario), timeS: 0, gainDb, attenuatorDb };
  const { sizeM } = scenario.ground;
  const values: (number | null)[] = [];
  for (let row = 0; row < POINTS; row++) {
    for (let column = 0; column < POINTS; column++) {
      const value = surveyAt(exercise, what, surveyPlace(POINTS, sizeM, row * POINTS + column), setting);
      values.push(value === null ? null : Number(value.toFixed(2)));
    }
    if (process.stderr.isTTY) process.stderr.write(`\r${what}: ${Math.round((100 * (row + 1)) / POINTS)} %`);
  }
  if (process.stderr.isTTY) process.stderr.write('\n');
  writeFileSync(options.out, picture(values, SURVEY_SCALES[what]));
  const { unit } = SURVEY_SCALES[what];
  return { file: options.out, what, unit, columns: POINTS, rows: POINTS, stepM: Number((sizeM / POINTS).toFixed(3)), values };
}

const PAPER = [244, 239, 227] as const;
const SOUND = [194, 65, 12] as const;
const NOTHING = [207, 198, 177] as const;

function picture(values: readonly (number | null)[], { from, to }: SurveyScale): Buffer {
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
