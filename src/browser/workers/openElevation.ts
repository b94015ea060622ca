import { type HeightUnit, LONGEST_GRID } from '../../core/elevation/esriGrid';
import type { PackedPiece } from '../../core/elevation/ownGround';
import type { ElevationWindow } from '../../core/elevation/window';
import { InputFaults } from '../../core/scenario/faults';
import type { FromElevation, GridSaid, ToElevation } from './elevationMessages';
import { openWorker } from './openWorker';

/** A grid's text is plain ASCII, a letter a byte. */
const MOST_BYTES = LONGEST_GRID;
/** A file is given up after so long for each megabyte, ms, beside a second in which a busy device comes to it at all. */
const MS_PER_MB = 250;
const START_MS = 1_000;
/** The largest piece takes a few seconds on a phone; whatever takes longer than this has gone astray, ms. */
const MOST_CUT_MS = 60_000;

/** An elevation file that was read: what is known of it, and a worker that cuts pieces out. */
export type OpenElevation = {
  readonly said: GridSaid;
  /** @throws Error in plain words where the piece can't be taken */
  readonly cut: (piece: ElevationWindow, told: (share: number) => void) => Promise<PackedPiece>;
  readonly close: () => void;
};

/**
 * Reads an elevation file in a worker that is ended when it takes too long. `told` hears the share that is read; `signal` ends it before.
 * @throws InputFaults with every fault, too large and too long among them
 */
export async function openElevation(
  file: File,
  unit: HeightUnit,
  told: (share: number) => void,
  signal: AbortSignal,
): Promise<OpenElevation> {
  const refusal = (found: string, mend = 'cut a smaller piece out of the survey, with the program that it came from') =>
    new InputFaults([{ file: file.name, path: '', found, mend }]);
  if (file.size > MOST_BYTES) throw refusal(`${(file.size / 1e6).toFixed(1)} MB, more than the ${MOST_BYTES / 1e6} MB that are read`);
  const worker = openWorker('elevation');
  const mostMs = START_MS + MS_PER_MB * Math.ceil(file.size / 1e6);
  try {
    const said = await answered<GridSaid>(worker, { kind: 'read', file, unit }, told, signal, (data, { resolve, reject, within }) => {
      if (data.kind === 'begun') within(mostMs, () => refusal(`takes more than ${mostMs} ms to read`));
      else if (data.kind === 'read') resolve(data.said);
      else if (data.kind === 'refused') reject(new InputFaults(data.faults));
    });
    return { said, cut: (piece, toldCut) => cutOf(worker, piece, toldCut), close: () => worker.terminate() };
  } catch (fault) {
    worker.terminate();
    throw fault;
  }
}

function cutOf(worker: Worker, piece: ElevationWindow, told: (share: number) => void): Promise<PackedPiece> {
  const never = new AbortController().signal;
  return answered<PackedPiece>(worker, { kind: 'cut', piece }, told, never, (data, { resolve, reject, within }) => {
    if (data.kind === 'share') within(MOST_CUT_MS, () => new Error('The piece takes too long to cut out: take a smaller one.'));
    else if (data.kind === 'cut') {
      if (typeof data.piece === 'string') reject(new Error(`Not laid: ${data.piece}.`));
      else resolve(data.piece);
    }
  });
}

type Ends<T> = {
  readonly resolve: (value: T) => void;
  readonly reject: (fault: Error) => void;
  /** Gives up after so many ms from now. */
  readonly within: (ms: number, fault: () => Error) => void;
};

/** One question to the worker and its answer. */
function answered<T>(
  worker: Worker,
  message: ToElevation,
  told: (share: number) => void,
  signal: AbortSignal,
  hear: (data: FromElevation, ends: Ends<T>) => void,
): Promise<T> {
  let timer = 0;
  return new Promise<T>((resolve, reject) => {
    const within: Ends<T>['within'] = (ms, fault) => {
      clearTimeout(timer);
      timer = window.setTimeout(() => reject(fault()), ms);
    };
    worker.onmessage = ({ data }: MessageEvent<FromElevation>) => {
      if (data.kind === 'share') told(data.share);
      hear(data, { resolve, reject, within });
    };
    worker.onerror = ({ message: said }) => reject(new Error(`The elevation file could not be worked on: ${said}. Choose it again.`));
    signal.addEventListener('abort', () => reject(new Error('Stopped.')), { once: true });
    worker.postMessage(message);
  }).finally(() => clearTimeout(timer));
}
