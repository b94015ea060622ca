import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const FOLDER = 'src/core/world';
/** What every engine computes to the same last bit (ECMA-262: exactly rounded or integer). */
const EXACT = new Set(['sqrt', 'floor', 'ceil', 'abs', 'min', 'max', 'round', 'imul', 'PI']);

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ts'));

test.each(files)('%s keeps to arithmetic that is the same in every engine', (name) => {
  const code = withoutComments(readFileSync(`${FOLDER}/${name}`, 'utf8'));
  const inexact = [...code.matchAll(/Math\.(\w+)/g)].map(([, called]) => called!).filter((called) => !EXACT.has(called));
  expect(inexact).toEqual([]);
  expect(code).not.toMatch(/\*\*/);
  expect(code).not.toMatch(/Math\[|=\s*Math\s*;|Date|performance/);
});

// units/frames and units/angles use the engines' own sine, arc tangent and hypotenuse.
test.each(files)('%s takes only types from the units', (name) => {
  const code = withoutComments(readFileSync(`${FOLDER}/${name}`, 'utf8'));
  for (const [statement] of code.matchAll(/^import .* from '\.\.\/units\/\w+';$/gm)) expect(statement).toMatch(/^import type /);
});
