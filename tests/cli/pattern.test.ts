import { expect, test } from 'vitest';
import { patternCommand } from '../../src/cli/pattern';
import { InputFaults } from '../../src/core/scenario/faults';

const HALF_WAVE = { alongM: 0, lengthM: 0.95, diameterM: 0.006, driven: true };
const text = (change: object) => JSON.stringify({ frequencyMHz: 150, elements: [HALF_WAVE], mount: 'h', ...change });

function faultsOf(elementsText: string): string {
  try {
    patternCommand({ elementsText, elementsFile: 'rods.json' });
  } catch (error) {
    if (error instanceof InputFaults) return error.message;
    throw error;
  }
  return '';
}

test('a named antenna gives both cuts at the asked step, co-polar ahead equal to the forward gain', () => {
  const cuts = patternCommand({ name: 'yagi3', stepDeg: 10 });
  expect(cuts.azimuth).toHaveLength(36);
  expect(cuts.elevation).toHaveLength(36);
  expect(cuts.azimuth[0]).toEqual({ deg: 0, coDbi: cuts.forwardDbi, crossDbi: -99.99 });
  expect(patternCommand({ name: 'yagi3' }).azimuth).toHaveLength(72);
});

test('a standing dipole is the same all round, a level one is not; neither has a crossed field', () => {
  const standing = patternCommand({ elementsText: text({ mount: 'v' }) });
  const level = patternCommand({ elementsText: text({}) });
  expect(standing.azimuth.every(({ coDbi, crossDbi }) => coDbi === standing.forwardDbi && crossDbi === -99.99)).toBe(true);
  expect(standing.widthDeg).toBeNull();
  expect(level.widthDeg).toBeCloseTo(78.5, 0);
  expect(standing.elevation.map(({ coDbi }) => coDbi)).toEqual(level.azimuth.map(({ coDbi }) => coDbi));
});

test('amplitude and phase of two driven elements count', () => {
  const pair = (phaseDeg: number) =>
    patternCommand({ elementsText: text({ elements: [HALF_WAVE, { ...HALF_WAVE, alongM: 0.5, amplitude: 1, phaseDeg }] }) }).frontToBackDb;
  expect(pair(-90)).toBeGreaterThan(3);
  expect(pair(90)).toBeCloseTo(-pair(-90), 2);
});

test.each([
  ['{', 'rods.json: whole file: not JSON'],
  [text({ elements: [] }), 'rods.json: elements:'],
  [text({ elements: [{ ...HALF_WAVE, driven: false }] }), 'rods.json: elements: no element is driven'],
  [text({ elements: [HALF_WAVE, HALF_WAVE] }), 'rods.json: elements.1.alongM: nearer than two diameters to element 0'],
  [text({ elements: [{ ...HALF_WAVE, diameterM: 0.5 }] }), 'rods.json: elements.0.diameterM: too thick'],
  [text({ elements: [{ ...HALF_WAVE, lengthM: 7 }] }), 'rods.json: elements.0.lengthM: longer than three wavelengths'],
  [
    text({ elements: [HALF_WAVE, { ...HALF_WAVE, alongM: 1, driven: false, phaseDeg: 3 }] }),
    'rods.json: elements.1.driven: fed, but not driven',
  ],
  [text({ mount: 'x' }), 'rods.json: mount:'],
  [text({ colour: 1 }), 'rods.json: colour: unknown key'],
  [text({ frequencyMHz: 1e9 }), 'rods.json: frequencyMHz:'],
])('%# a wrong file is refused with place and mend', (elementsText, complaint) => {
  const message = faultsOf(elementsText);
  expect(message).toContain(complaint);
  expect(message).toContain('Mend: ');
});

test('a wrong name or step is refused with what may be written', () => {
  expect(() => patternCommand({ name: 'dish' })).toThrow('write one of yagi3, yagi2, phased2, yagi5, loop, whip');
  expect(() => patternCommand({ name: 'yagi3', stepDeg: 0 })).toThrow('give 0.1 to 90 degrees');
});
