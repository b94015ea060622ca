import type { Pattern } from '../core/antenna/antenna';
import { ANTENNAS } from '../core/antenna/catalogue';
import { type Mount, type PatternCuts, patternCuts } from '../core/antenna/cuts';
import { patternOf } from '../core/antenna/pattern';
import { rodAcross } from '../core/antenna/wireChain';
import { loadElementsFile } from '../core/scenario/elementsFile';
import { type Fault, InputFaults } from '../core/scenario/faults';

/** An antenna by name, or the text of a file of elements and the file's name for messages. */
export type PatternInput = {
  readonly name?: string;
  readonly elementsText?: string;
  readonly elementsFile?: string;
  readonly stepDeg?: number;
};

/** Where the named antennas are shown: the frequency they are designed for here. */
const SHOWN_MHZ = 150;
const USUAL_STEP_DEG = 5;

/**
 * The `pattern` command: both cuts in free space, without feed line and body. Named antennas are solved at 150 MHz, Yagis level (h),
 * loop and whip standing (v).
 * @throws InputFaults for an unknown name, a step that is no step, or wrong elements
 */
export function patternCommand({ name, elementsText, elementsFile = 'elements', stepDeg = USUAL_STEP_DEG }: PatternInput): PatternCuts {
  if (!(stepDeg >= 0.1 && stepDeg <= 90)) refuse('--step', '', `${stepDeg} degrees`, 'give 0.1 to 90 degrees');
  if (elementsText === undefined) {
    const { pattern, mount } = named(name ?? '');
    return patternCuts(pattern, mount, stepDeg);
  }
  const { frequencyMHz, elements, mount } = loadElementsFile(elementsFile, elementsText);
  const rods = elements.map(({ alongM, lengthM, diameterM, driven, amplitude, phaseDeg }) =>
    rodAcross(alongM, lengthM, diameterM, driven ? { amplitude, phaseDeg } : undefined),
  );
  try {
    return patternCuts(patternOf(rods, frequencyMHz), mount, stepDeg);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse(elementsFile, 'elements', error.message, 'change places, lengths or drives');
  }
}

function named(name: string): { readonly pattern: Pattern; readonly mount: Mount } {
  const antenna = ANTENNAS.find(({ id }) => id === name);
  if (!antenna) return refuse('pattern', 'NAME', `"${name.slice(0, 40)}"`, `write one of ${ANTENNAS.map(({ id }) => id).join(', ')}`);
  return { pattern: antenna.pattern(SHOWN_MHZ, SHOWN_MHZ), mount: antenna.leastMHz > 0 ? 'h' : 'v' };
}

function refuse(file: string, path: string, found: string, mend: string): never {
  const fault: Fault = { file, path, found, mend };
  throw new InputFaults([fault]);
}
