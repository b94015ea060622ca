import { type ClubTable, personOf, type TableRow, wrongDeclarations } from './tableRow';

/** Places of a run within its exercise; equals share one, `null` takes none. Who did not find has no place by outcome. */
export type Placed = {
  readonly row: TableRow;
  /** It takes part in the ranking, in the club's habits and in the season. */
  readonly counts: boolean;
  readonly technique: number | null;
  readonly outcome: number | null;
  /** Why it takes no place at all, or none by technique; empty where it takes both. */
  readonly why: string;
};

/** A walk of so few actions says nothing of who copied whom. */
const TELLING_RUN_S = 30;

/** The runs of one exercise in the order of their places by technique; those without a place follow. */
export function placedRuns(table: ClubTable, exercise: string): readonly Placed[] {
  const rows = table.rows.filter((row) => row.exercise === exercise);
  const outOf = new Map(rows.map((row) => [row, outOfPlace(row, rows)] as const));
  const ranked = rows.filter((row) => outOf.get(row) === null);
  const byTechnique = placesOf(
    ranked.filter(({ technique }) => technique !== null),
    (a, b) => b.technique! - a.technique!,
  );
  const byOutcome = placesOf(
    ranked.filter(({ outcome }) => outcome?.found),
    compareOutcome,
  );
  return rows
    .map((row) => {
      const [technique, outcome] = [byTechnique.get(row) ?? null, byOutcome.get(row) ?? null];
      const why = outOf.get(row) ?? (technique === null ? 'fewer than three habits shown' : '');
      return { row, counts: outOf.get(row) === null, technique, outcome, why };
    })
    .sort(inOrder);
}

/**
 * What a club calls fair: who found is before who did not; where a fix was asked for, the one less off; then the shorter time, to the
 * second as it is shown; then fewer wrong declarations. Who did not find is equal to all others who did not: how near they came is luck as often as not.
 */
export function compareOutcome({ outcome: a }: TableRow, { outcome: b }: TableRow): number {
  if (!a || !b) return Number(!a) - Number(!b);
  if (a.found !== b.found) return a.found ? -1 : 1;
  if (!a.found) return 0;
  const nearer = tensOf(a) - tensOf(b);
  if (nearer !== 0) return nearer;
  return Math.round(a.timeS) - Math.round(b.timeS) || wrongDeclarations(a) - wrongDeclarations(b);
}

/** How far a declared fix is off, in whole tens of metres: nearer than that is chance. 0 for a find. */
const tensOf = ({ fix }: { readonly fix?: { readonly offM: number | null } | null | undefined }): number =>
  Math.round((fix?.offM ?? 0) / 10);

/** Places 1, 2, 2, 4: as many as are better, and one. */
export function placesOf<T>(items: readonly T[], compare: (a: T, b: T) => number): ReadonlyMap<T, number> {
  return new Map(items.map((item) => [item, 1 + items.filter((other) => compare(other, item) < 0).length]));
}

/** Why a run takes no place, or `null` where it takes one. */
function outOfPlace(row: TableRow, rows: readonly TableRow[]): string | null {
  if (!row.sound) return row.mark === 'other version' ? 'other version, does not replay here' : 'does not replay';
  if (row.by === 'walker') return rows.some(({ by }) => by === 'person') ? 'walker, for comparison' : null;
  const copies = rows.filter((other) => other.by === 'person' && other.run === row.run && personOf(other) !== personOf(row));
  if (copies.length > 0 && (row.outcome?.timeS ?? 0) >= TELLING_RUN_S) {
    return `the same walk as ${copies.map(({ name }) => name || 'one without a name').join(', ')}: only one can have walked it`;
  }
  const own = rows.filter((other) => other.by === 'person' && other.sound && personOf(other) === personOf(row)).sort(firstAttempt);
  return own[0] === row ? null : 'a later attempt: only the first counts, after it the place is known';
}

/** Dated runs by their date. Without dates nobody knows: the weaker one counts, so that leaving the date out gains nothing. */
function firstAttempt(a: TableRow, b: TableRow): number {
  const [atA, atB] = [a.begunAt, b.begunAt].map((at) => (at === null ? Number.POSITIVE_INFINITY : Date.parse(at)));
  if (atA !== atB) return atA! < atB! ? -1 : 1;
  return compareOutcome(b, a) || (a.technique ?? 101) - (b.technique ?? 101) || (a.run < b.run ? -1 : 1);
}

/** By code points: the same order in every browser. */
const before = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

const LAST = Number.POSITIVE_INFINITY;

function inOrder(a: Placed, b: Placed): number {
  const by = (x: number | null, y: number | null) => (x === y ? 0 : (x ?? LAST) - (y ?? LAST));
  return (
    by(a.technique, b.technique) ||
    by(a.outcome, b.outcome) ||
    Number(b.counts) - Number(a.counts) ||
    before(a.row.name, b.row.name) ||
    before(a.row.run, b.row.run)
  );
}
