import { z } from 'zod';
import { complaints } from './complaints';
import { InputFaults } from './faults';
import { jsonFrom } from './jsonText';

const LARGEST_ELEMENTS_TEXT = 100_000;
const MOST_ELEMENTS = 30;
const LIGHT_MHZ_M = 299.792458;

const element = z.strictObject({
  alongM: z.number().min(-100).max(100),
  lengthM: z.number().min(0.001).max(30),
  diameterM: z.number().min(1e-9).max(1),
  driven: z.boolean().optional(),
  amplitude: z.number().min(0.001).max(1_000).optional(),
  phaseDeg: z.number().min(-720).max(720).optional(),
});

const elementsInput = z
  .strictObject({
    frequencyMHz: z.number().min(1).max(3_000),
    elements: z.array(element).min(1).max(MOST_ELEMENTS),
    mount: z.enum(['h', 'v']),
  })
  .superRefine(({ frequencyMHz, elements }, context) => {
    const fault = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    const wavelengthM = LIGHT_MHZ_M / frequencyMHz;
    if (!elements.some(({ driven }) => driven)) fault(['elements'], 'no element is driven');
    elements.forEach((one, i) => {
      if (one.lengthM > 3 * wavelengthM) fault(['elements', i, 'lengthM'], 'longer than three wavelengths');
      if (one.lengthM < 0.005 * wavelengthM) fault(['elements', i, 'lengthM'], 'shorter than 0.005 wavelength');
      if (one.diameterM > Math.min(one.lengthM / 8, 0.03 * wavelengthM)) fault(['elements', i, 'diameterM'], 'too thick for a thin wire');
      if (!one.driven && (one.amplitude ?? one.phaseDeg) !== undefined) fault(['elements', i, 'driven'], 'fed, but not driven');
      const tooNear = elements.findIndex((two, j) => j < i && Math.abs(two.alongM - one.alongM) < one.diameterM + two.diameterM);
      if (tooNear >= 0) fault(['elements', i, 'alongM'], `nearer than two diameters to element ${tooNear}`);
    });
  });

/** One rod across the boom, metres; several driven ones are fed with voltages of their own size and phase. */
export type ElementInput = {
  readonly alongM: number;
  readonly lengthM: number;
  readonly diameterM: number;
  readonly driven: boolean;
  readonly amplitude: number;
  readonly phaseDeg: number;
};

/** Elements to be solved; `mount` says whether they lie level (h) or stand (v). */
export type ElementsFile = { readonly frequencyMHz: number; readonly elements: readonly ElementInput[]; readonly mount: 'h' | 'v' };

/**
 * Elements from the text of a file; amplitude 1 and phase 0 where they are not given.
 * @throws InputFaults with every fault found
 */
export function loadElementsFile(file: string, text: string): ElementsFile {
  const value = jsonFrom(file, text, { characters: LARGEST_ELEMENTS_TEXT, depth: 8 });
  const parsed = elementsInput.safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues, mendFor));
  const { frequencyMHz, elements, mount } = parsed.data;
  return {
    frequencyMHz,
    mount,
    elements: elements.map(({ alongM, lengthM, diameterM, driven = false, amplitude = 1, phaseDeg = 0 }) => ({
      alongM,
      lengthM,
      diameterM,
      driven,
      amplitude,
      phaseDeg,
    })),
  };
}

function mendFor(path: string): string {
  if (path === 'frequencyMHz') return 'give megahertz between 1 and 3000';
  if (path === 'mount') return 'write "h" for level elements or "v" for standing ones';
  if (path === 'elements') return `list 1 to ${MOST_ELEMENTS} elements, at least one with "driven": true`;
  if (path.endsWith('.alongM')) return 'give metres along the boom between -100 and 100, elements at least two diameters apart';
  if (path.endsWith('.lengthM')) return 'give metres, between 0.005 and 3 wavelengths';
  if (path.endsWith('.diameterM')) return 'give metres, at most an eighth of the length and 0.03 wavelength';
  if (path.endsWith('.driven')) return 'write true for every element that is fed, and amplitude and phaseDeg only there';
  if (path.endsWith('.amplitude')) return 'give a voltage between 0.001 and 1000, or leave it out for 1';
  if (path.endsWith('.phaseDeg')) return 'give degrees between -720 and 720, or leave it out for 0';
  return 'give {"frequencyMHz", "elements": [{"alongM", "lengthM", "diameterM", "driven"}, ...], "mount": "h" or "v"}';
}
