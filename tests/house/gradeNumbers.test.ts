import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const rows = [...readFileSync('assets/guide/grade.md', 'utf8').matchAll(/^\| (\w+) \| ([A-Z_]+) \| ([\d.]+) \|/gm)].map(
  ([, file, name, value]) => [file!, name!, value!] as const,
);

test('the guide lists the numbers of the grade', () => {
  expect(rows.length).toBeGreaterThan(40);
});

test.each(rows)('%s: %s is %s in the code as in the guide', (file, name, value) => {
  const source = readFileSync(`src/core/technique/${file}.ts`, 'utf8');
  const found = new RegExp(`const ${name} = (-?[\\d._]+);`).exec(source)?.[1];
  expect(Number(found?.replaceAll('_', ''))).toBe(Number(value));
});
