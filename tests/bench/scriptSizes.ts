import { spawnSync } from 'node:child_process';
import type { Figure } from './figure';

/** What the build itself prints of each screen and of all script; over its limit it fails. */
export function figures(): Figure[] {
  const { stdout, stderr } = spawnSync('npx', ['vite', 'build'], { encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } });
  const told = [...`${stdout}\n${stderr}`.matchAll(/(?:^|\s)([A-Za-z][A-Za-z ]*): (\d+) kB (?:of script )?by gzip, (\d+) at most/g)];
  if (told.length === 0) throw new Error('the build told no size of any screen');
  return told.map(([, screen, kb, most]) => ({ name: `script: ${screen!.trim()}`, unit: 'kB', value: Number(kb), goal: Number(most) }));
}
