/** A pure change that lifts a file by one version. Never edited once released; a real old file of each is kept in the tests. */
export type Migration = {
  readonly from: number;
  readonly name: string;
  readonly up: (old: Readonly<Record<string, unknown>>) => Record<string, unknown>;
};

/** In order of `from`. Version 1 is the first, so there is nothing to lift yet. */
export const migrations: readonly Migration[] = [];

/** The file at the newest version that the list reaches; other values come back as they are. */
export function migrate(value: unknown, list: readonly Migration[] = migrations): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  let file = value as Record<string, unknown>;
  for (const migration of list) {
    if (file['version'] === migration.from) file = { ...migration.up(file), version: migration.from + 1 };
  }
  return file;
}
