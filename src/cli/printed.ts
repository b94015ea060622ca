/** A value for people: `name: value` lines, tables for lists of like things, nothing hidden. */
export function printed(value: unknown, indent = ''): string {
  if (Array.isArray(value)) return value.length > 0 && value.every(isPlainRow) ? table(value as Row[], indent) : list(value, indent);
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .map(([name, item]) => (isDeep(item) ? `${indent}${name}:\n${printed(item, `${indent}  `)}` : `${indent}${name}: ${shown(item)}`))
      .join('\n');
  }
  return `${indent}${shown(value)}`;
}

type Row = Readonly<Record<string, unknown>>;

const isDeep = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  !(Array.isArray(value) && value.every((item) => typeof item !== 'object') && value.length <= 6);

const isPlainRow = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.values(value).every((item) => !isDeep(item) && String(item).length < 60);

const list = (values: readonly unknown[], indent: string): string =>
  values.map((item) => (isDeep(item) ? `${indent}-\n${printed(item, `${indent}  `)}` : `${indent}- ${shown(item)}`)).join('\n');

function shown(value: unknown): string {
  if (value === null) return 'not shown';
  if (Array.isArray(value)) return value.map(shown).join(', ');
  if (typeof value === 'number') return Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(7)));
  return String(value);
}

function table(rows: readonly Row[], indent: string): string {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const cells = rows.map((row) => names.map((name) => (row[name] === undefined ? '' : shown(row[name]))));
  const widths = names.map((name, i) => Math.max(name.length, ...cells.map((row) => row[i]!.length)));
  const line = (row: readonly string[]) =>
    `${indent}${row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join('  ')
      .trimEnd()}`;
  return [line(names), ...cells.map(line)].join('\n');
}
