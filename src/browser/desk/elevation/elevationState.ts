import { signal } from '@preact/signals';
import type { HeightUnit } from '../../../core/elevation/esriGrid';
import { onOwnGround } from '../../../core/elevation/ownGround';
import { type ElevationWindow, heightM, insideGrid, usualCellM, widthM } from '../../../core/elevation/window';
import { type Fault, InputFaults } from '../../../core/scenario/faults';
import type { Scenario } from '../../../core/scenario/schema';
import { type OpenElevation, openElevation } from '../../workers/openElevation';
import { draft, edit } from '../deskState';

/** Whether somebody is at bringing ground in. */
export const bringing = signal(false);
/** The share of a file that is read; `null` while none is. */
export const readShare = signal<number | null>(null);
export const fileFaults = signal<readonly Fault[]>([]);
/** The file that was read, and the piece of it that is looked at. */
export const opened = signal<(OpenElevation & { readonly file: File }) | null>(null);
export const unit = signal<HeightUnit>('metres');
export const piece = signal<ElevationWindow>({ eastM: 0, northM: 0, sizeM: 2_000, cellM: 10 });
/** The share of a piece that is cut out and packed; `null` while none is. */
export const layShare = signal<number | null>(null);
/** What came of laying, or why nothing did. */
export const laid = signal('');

/** Longest note on where heights come from that a scenario holds. */
const LONGEST_SOURCE = 160;
/** What was given last, to be read again in another unit. */
let given: File | null = null;
let stopReading = new AbortController();

/** Reads a file in place of the one before; the piece begins in its middle. */
export async function takeElevation(file: File): Promise<void> {
  closeElevation();
  given = file;
  stopReading = new AbortController();
  const { signal: stopped } = stopReading;
  readShare.value = 0;
  try {
    const read = await openElevation(file, unit.peek(), (share) => (readShare.value = share), stopped);
    opened.value = { ...read, file };
    const { extent } = read.said;
    const { sizeM } = draft.peek()!.ground;
    const middle = { eastM: (widthM(extent) - sizeM) / 2, northM: (heightM(extent) - sizeM) / 2 };
    piece.value = insideGrid(extent, { ...middle, sizeM, cellM: usualCellM(sizeM) });
  } catch (fault) {
    if (stopped.aborted) return;
    const own = { file: file.name, path: '', found: fault instanceof Error ? fault.message : String(fault), mend: 'choose the file again' };
    fileFaults.value = fault instanceof InputFaults ? fault.faults : [own];
  } finally {
    if (!stopped.aborted) readShare.value = null;
  }
}

/** The same file with its heights in another unit. */
export function takeUnit(next: HeightUnit): void {
  unit.value = next;
  if (given) void takeElevation(given);
}

/** Moves or resizes the piece; it never leaves the file. */
export function placePiece(change: Partial<ElevationWindow>): void {
  const { extent } = opened.peek()!.said;
  const wanted = { ...piece.peek(), ...change };
  // a piece of another size keeps its middle
  const shift = (wanted.sizeM - piece.peek().sizeM) / 2;
  const moved = change.sizeM === undefined ? wanted : { ...wanted, eastM: wanted.eastM - shift, northM: wanted.northM - shift };
  piece.value = insideGrid(extent, moved);
  laid.value = '';
}

/** Cuts the piece out and lays the exercise on it: one step that undo takes back. */
export async function useGround(): Promise<void> {
  const [now, where] = [opened.peek()!, piece.peek()];
  layShare.value = 0;
  laid.value = '';
  try {
    const cut = await now.cut(where, (share) => (layShare.value = share));
    if (opened.peek() !== now) return;
    const before = draft.peek()!;
    const source = now.file.name.slice(0, LONGEST_SOURCE);
    edit('lay it on own ground', (scenario) => onOwnGround(scenario, where, cut, source));
    laid.value = saidOf(before, draft.peek()!, cut.filled);
  } catch (fault) {
    laid.value = fault instanceof Error ? fault.message : String(fault);
  } finally {
    layShare.value = null;
  }
}

function saidOf(before: Scenario, after: Scenario, filled: number): string {
  const moved = [
    ...(before.start.at === after.start.at || String(before.start.at) === String(after.start.at) ? [] : ['the start']),
    ...after.tags.filter((tag, i) => String(tag.at) !== String(before.tags[i]!.at)).map(({ name }) => name),
  ];
  const lost =
    before.ground.powerLines.length + before.ground.buildings.length - after.ground.powerLines.length - after.ground.buildings.length;
  return [
    'Laid on the ground of the file.',
    ...(filled > 0 ? [`${filled} cells without a height were filled from their rims.`] : []),
    ...(moved.length > 0 ? [`Outside the new map and set down in its middle: ${moved.join(', ')}.`] : []),
    ...(lost > 0 ? [`Outside the new map and taken away: ${lost} lines and buildings.`] : []),
    'Look at start and tags on the map; Undo brings the old ground back.',
  ].join(' ');
}

/** Lets go of the file and ends what is being done with it. */
export function closeElevation(): void {
  stopReading.abort();
  opened.peek()?.close();
  opened.value = null;
  readShare.value = null;
  layShare.value = null;
  given = null;
  fileFaults.value = [];
  laid.value = '';
}
