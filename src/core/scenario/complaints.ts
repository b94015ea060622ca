import type { z } from 'zod';
import type { Fault } from './faults';

/** Faults of a file from what a schema found in it, one for each place. */
export function complaints(
  file: string,
  value: unknown,
  issues: readonly z.core.$ZodIssue[],
  mendFor: (path: string) => string,
): readonly Fault[] {
  return issues.flatMap((issue) => {
    const path = issue.path.map(String).join('.');
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        file,
        path: path === '' ? plain(key) : `${path}.${plain(key)}`,
        found: 'unknown key',
        mend: 'remove it, or check its spelling against the schema',
      }));
    }
    return [{ file, path, found: `${lowerFirst(issue.message)}${foundText(value, issue.path)}`, mend: mendFor(path) }];
  });
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1).replace(/\.$/, '');

/** Foreign text is shown short and without control characters. */
const plain = (text: string): string => text.replace(/[^\x20-\x7e]/g, '?').slice(0, 60);

function foundText(value: unknown, path: readonly PropertyKey[]): string {
  let at: unknown = value;
  for (const key of path)
    at = typeof at === 'object' && at !== null && Object.hasOwn(at, key) ? (at as Record<PropertyKey, unknown>)[key] : undefined;
  if (at === undefined) return ', found nothing';
  if (typeof at === 'object' && at !== null) return '';
  return `, found ${typeof at === 'string' ? `"${plain(at)}"` : String(at)}`;
}
