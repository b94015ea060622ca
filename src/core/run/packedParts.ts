import { InputFaults } from '../scenario/faults';
import type { JsonLimits } from '../scenario/jsonScan';
import { jsonFrom } from '../scenario/jsonText';
import { bytesOf, deflated, fromLetters, inflated, textOf, toLetters } from '../scenario/packing';

/** Actions of a run file as they stand in it: tick, then what was done. */
type Row = readonly [number, { readonly type: string; readonly toDeg?: number }];

/** No hand does more in four hours. */
const MOST_ROWS = 200_000;
const TENTHS = 3_600;

/**
 * The actions in letters: JSON by deflate, ticks told as steps from the action before. A turn is two numbers, steps in ticks and in tenths
 * of a degree from the turn before; whatever is not such a turn stands as it is. What is unpacked is what was packed, to the bit.
 */
export function packedLog(log: readonly Row[]): string {
  const told: unknown[] = [];
  let [atTick, atTenths] = [0, 0];
  for (const [tick, action] of log) {
    const tenths = Math.round((action.toDeg ?? -1) * 10);
    const isPlain = action.type === 'turn' && tenths >= 0 && tenths < TENTHS && tenths / 10 === action.toDeg;
    if (isPlain) {
      told.push(tick - atTick, ((tenths - atTenths + TENTHS * 1.5) % TENTHS) - TENTHS / 2);
      atTenths = tenths;
    } else told.push([tick - atTick, action]);
    atTick = tick;
  }
  return packed(told);
}

/** What was heard in letters: its JSON by deflate. */
export const packedHeard = (rows: readonly unknown[]): string => packed(rows);

const packed = (rows: readonly unknown[]): string => toLetters(deflated(bytesOf(JSON.stringify(rows))));

/**
 * A document with its growing parts unpacked, where they stand packed in it; anything else comes back as it is.
 * @throws InputFaults for what can't be unpacked, or unpacks to more than `limits` allow
 */
export function unpackedParts(file: string, value: unknown, limits: JsonLimits): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const { log, heard } = value as { readonly log?: unknown; readonly heard?: unknown };
  return {
    ...value,
    ...(typeof log === 'string' ? { log: rowsOf(file, unpacked(file, 'log', log, limits)) } : {}),
    ...(typeof heard === 'string' ? { heard: unpacked(file, 'heard', heard, limits) } : {}),
  };
}

const refusal = (file: string, path: string, found: string) =>
  new InputFaults([{ file, path, found, mend: 'use the run file as the program wrote it' }]);

function unpacked(file: string, path: string, letters: string, limits: JsonLimits): unknown {
  const bytes = fromLetters(letters);
  if (!bytes) throw refusal(file, path, 'letters that no part of a run is packed in');
  const plain = inflated(bytes, limits.characters);
  if (plain === 'too much') throw refusal(file, path, `more than the ${limits.characters} characters that are read`);
  if (plain === null) throw refusal(file, path, 'a packed part that is cut off or changed');
  return jsonFrom(`${file}: ${path}`, textOf(plain), limits);
}

/** The reverse of `packedLog`, of a document that may come from anybody: what is read here is judged by the schema of a run afterwards. */
function rowsOf(file: string, told: unknown): unknown {
  if (!Array.isArray(told)) throw refusal(file, 'log', 'a packed part that holds no actions');
  const rows: unknown[] = [];
  let [tick, tenths] = [0, 0];
  for (let i = 0; i < told.length && rows.length <= MOST_ROWS; i++) {
    const one: unknown = told[i];
    if (Array.isArray(one)) {
      tick += Number(one[0]);
      rows.push([tick, one[1]]);
      continue;
    }
    tick += Number(one);
    tenths = (((tenths + Number(told[++i])) % TENTHS) + TENTHS) % TENTHS;
    rows.push([tick, { type: 'turn', toDeg: tenths / 10 }]);
  }
  return rows;
}
