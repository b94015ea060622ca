import type { Live } from '../run/live';
import { firstDifferenceS, PROGRAM_VERSION, type Recording, type RunResult } from '../run/record';
import { runSealOf } from '../run/runSeal';
import { clock } from '../technique/habit';
import type { ReplayMark } from './tableRow';

/** A score may differ by so much between two browsers (0.1) and by rounding, and not by more than this. */
const SCORE_STEP = 1;

export type RunCheck = { readonly mark: ReplayMark; readonly sound: boolean; readonly reasons: readonly string[] };

/**
 * Holds a run file against its replay: the seal, the pulses that were heard, the grade that was written. A run of another
 * version of the program that replays here all the same is sound; one that doesn't is no cheat, it can't be told here.
 */
export function checkRun(recording: Recording, run: Live, earned: RunResult): RunCheck {
  const reasons = [...sealReasons(recording), ...pulseReasons(recording, run), ...gradeReasons(recording.result, earned)];
  const sound = reasons.length === 0;
  if (recording.program === PROGRAM_VERSION) return { mark: sound ? 'checked' : 'does not replay', sound, reasons };
  const version = `It was walked with version ${recording.program}, this is ${PROGRAM_VERSION}`;
  const told = sound ? `${version}; it replays here all the same.` : `${version}: check it with that version.`;
  return { mark: 'other version', sound, reasons: [told, ...reasons] };
}

function sealReasons(recording: Recording): readonly string[] {
  if (recording.seal === undefined) return ['It carries no seal: it is not as the program writes it.'];
  return recording.seal === runSealOf(recording) ? [] : ['The file was changed after it was written: its seal is broken.'];
}

function pulseReasons(recording: Recording, run: Live): readonly string[] {
  const atS = firstDifferenceS(recording, run);
  return atS === null ? [] : [`From ${clock(atS)} on the replay hears other pulses than the file has.`];
}

function gradeReasons(written: RunResult | undefined, earned: RunResult): readonly string[] {
  if (!written) return [];
  const said = (score: number | boolean | null) => (score === null ? 'not shown' : String(score));
  return (Object.keys(earned) as (keyof RunResult)[]).flatMap((part) => {
    const [a, b] = [written[part], earned[part]];
    const same = typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= SCORE_STEP : a === b;
    return same ? [] : [`The file says ${part} ${said(a)}, the run earns ${said(b)}.`];
  });
}
