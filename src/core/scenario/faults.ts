/** One thing wrong with an input: where, what was found there, what to do about it. */
export type Fault = { readonly file: string; readonly path: string; readonly found: string; readonly mend: string };

/** `ridge.json: tags.0.frequencyMHz: found 900. Mend: give megahertz between 30 and 500.` */
export const faultLine = ({ file, path, found, mend }: Fault): string =>
  `${file}: ${path === '' ? 'whole file' : path}: ${found}. Mend: ${mend}.`;

/** All faults of one input, thrown once. */
export class InputFaults extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults.map(faultLine).join('\n'));
    this.name = 'InputFaults';
  }
}
