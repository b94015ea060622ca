import { digestOf } from '../scenario/seal';
import { EMPTY_TABLE, mergeTables } from './mergeTables';
import { type ClubTable, personOf } from './tableRow';

/** A, B … Z, AA, AB … */
function letters(n: number): string {
  const last = String.fromCharCode(65 + (n % 26));
  return n < 26 ? last : letters(Math.floor(n / 26) - 1) + last;
}

/**
 * The table without names, for a projector: people become "Tracker A" and so on in an order that has nothing to do with place or
 * alphabet; walkers keep their names. Digests of runs are replaced as well, since its own file would lead back to a person.
 */
export function withoutNames(table: ClubTable): ClubTable {
  const rows = table.rows.filter(({ by }) => by === 'person');
  const names = numbered(rows.map(personOf));
  const runs = numbered(rows.map(({ run }) => run));
  const nameless = table.rows.map((row) => {
    if (row.by === 'walker') return row;
    return { ...row, name: `Tracker ${letters(names.get(personOf(row))!)}`, run: digestOf(`run ${runs.get(row.run)}`) };
  });
  return mergeTables(EMPTY_TABLE, { exercises: table.exercises, rows: nameless }); // sorted anew: the old order was by name
}

/** Each different text with a number, in an order that the text doesn't show. */
function numbered(texts: readonly string[]): ReadonlyMap<string, number> {
  const mixed = [...new Set(texts)].map((text) => [digestOf(`shown without a name/${text}`), text] as const);
  return new Map(mixed.sort(([a], [b]) => (a < b ? -1 : 1)).map(([, text], i) => [text, i]));
}
