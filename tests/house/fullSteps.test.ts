import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { left, stepsOf } from '../full/steps';

const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly scripts: Readonly<Record<string, string>> };

test('every step of the full tests is a script of the package', () => {
  for (const { name, args } of stepsOf('kept')) expect(scripts[args[0] === 'run' ? args[2]! : args[0]!], name).toBeDefined();
});

test('a stopped run goes on behind the steps that passed, and a line cut short counts for nothing', () => {
  const steps = stepsOf(undefined);
  expect(left(steps, '')).toEqual(steps);
  const [first, second] = [steps[0]!.name, steps[1]!.name];
  const kept = `${JSON.stringify({ passed: first })}\n{"passed":"${second}`;
  expect(left(steps, kept).map(({ name }) => name)).toEqual(steps.slice(1).map(({ name }) => name));
  expect(left(steps, steps.map(({ name }) => `${JSON.stringify({ passed: name })}\n`).join(''))).toEqual([]);
});

test('steps that can go on within themselves keep their state beside that of the whole', () => {
  const kept = stepsOf('/somewhere/full').flatMap(({ args }) => args.filter((arg) => arg.startsWith('/somewhere/full')));
  expect(kept).toEqual(['/somewhere/full.drawn', '/somewhere/full.study']);
});
