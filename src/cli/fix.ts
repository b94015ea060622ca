import { estimateFix } from '../core/fix/estimate';
import { loadFixFile } from '../core/scenario/fixFile';

/**
 * The `fix` command: a fix for one set of stations and bearings, a list of fixes for a list.
 * A set that gives no fix is an answer with `ok: false` and its reason, not an error.
 * @throws InputFaults where the file is wrong
 */
export function fixCommand(text: string, fileName: string): unknown {
  const input = loadFixFile(fileName, text);
  return 'stations' in input ? estimateFix(input) : input.map((set) => estimateFix(set));
}
