import { openExercise } from '../../src/core/run/exercise';
import { readRecording } from '../../src/core/run/record';
import { gradeRun } from '../../src/core/technique/grade';
import { worldDigest } from '../../src/core/world/digest';
import { RELIEF_STYLES, worldOf } from '../core/world/sixGrounds';

// What any engine of JavaScript is asked: built into one script by `engineScript.ts`.

/** The digest of one of the six grounds. */
export const digestOfStyle = (style: string): string => worldDigest(worldOf(RELIEF_STYLES.find((known) => known === style)!));

/** A run file replayed and graded: every number and sentence of the grade, and whether all was heard as the file says. */
export function gradeOfFile(text: string): string {
  const recording = readRecording('run', text);
  return JSON.stringify(gradeRun(openExercise(recording.scenario), recording));
}
