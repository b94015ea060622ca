import { InputFaults } from '../../src/core/scenario/faults';

/** A reader may take so long for each megabyte begun, ms. */
export const MOST_MS_PER_MB = 250;

export type Tried = { readonly kind: 'read' | 'refused' | 'crash' | 'slow'; readonly ms: number; readonly why: string };

/** Gives a text to a reader: it has to read it or to refuse it with faults that each say something, and in time. */
export function tryInput(read: (text: string) => unknown, text: string): Tried {
  const from = performance.now();
  const end = (kind: Tried['kind'], why: string): Tried => {
    const ms = performance.now() - from;
    const most = MOST_MS_PER_MB * Math.max(1, Math.ceil(text.length / 1e6));
    return ms > most && kind !== 'crash' ? { kind: 'slow', ms, why: `${ms.toFixed(0)} ms, more than ${most}` } : { kind, ms, why };
  };
  try {
    read(text);
    return end('read', '');
  } catch (error) {
    if (!(error instanceof InputFaults)) return end('crash', error instanceof Error ? `${error.name}: ${error.message}` : String(error));
    const mute = error.faults.length === 0 || error.faults.some(({ found, mend }) => found === '' || mend === '');
    return mute ? end('crash', 'a fault that says nothing') : end('refused', '');
  }
}

const PROTOTYPES = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Number.prototype];

/** All that JavaScript's own prototypes carry, as text: the same before and after. */
export const prototypesNow = (): string =>
  PROTOTYPES.map((prototype) =>
    Reflect.ownKeys(prototype)
      .map((key) => `${String(key)}=${typeof Object.getOwnPropertyDescriptor(prototype, key)!.value}`)
      .join(),
  ).join('\n');
