import { meanOf } from '../walkers/validityNumbers';
import { practiceScore, rankedRows } from './habitPicture';
import { placesOf } from './rank';
import type { Reliability } from './reliability';
import { type ClubTable, personOf, type TableRow } from './tableRow';

/** One person over all exercises and dates of the table. */
export type SeasonLine = {
  readonly name: string;
  /** By mean technique; `null` without a run that shows it. */
  readonly place: number | null;
  readonly meanTechnique: number | null;
  /** Runs that the mean is of: the first attempt at each exercise. */
  readonly runs: number;
  /** Too few for the mean to be relied on. */
  readonly preliminary: boolean;
  readonly found: number;
  /** Dates on which the person was there, by the clocks of the devices. */
  readonly days: readonly string[];
  readonly undatedRuns: number;
  /** Said only beyond what chance explains. */
  readonly change: 'improved' | 'lower' | 'within chance' | 'one date';
  /** The fifth habit as last stated by the learner. */
  readonly keepPractising: number | null;
};

/** Everybody of the table: where technique stands on the mean, attendance, change, and the fifth habit as stated. */
export function seasonOf(table: ClubTable, reliability: Reliability): readonly SeasonLine[] {
  const ranked = new Set(rankedRows(table));
  const anyPerson = table.rows.some(({ by }) => by === 'person');
  const people = new Map<string, TableRow[]>();
  for (const row of table.rows) {
    if (anyPerson && row.by === 'walker') continue;
    people.set(personOf(row), [...(people.get(personOf(row)) ?? []), row]);
  }
  const lines = [...people.values()].map((rows) => lineOf(rows, ranked, reliability));
  const withMean = lines.filter(({ meanTechnique }) => meanTechnique !== null);
  const places = placesOf(withMean, (a, b) => b.meanTechnique! - a.meanTechnique!);
  const placed = lines.map((line) => ({ ...line, place: places.get(line) ?? null }));
  return placed.sort(
    (a, b) =>
      (a.place ?? Number.MAX_SAFE_INTEGER) - (b.place ?? Number.MAX_SAFE_INTEGER) || (a.name < b.name ? -1 : Number(a.name > b.name)),
  );
}

function lineOf(rows: readonly TableRow[], ranked: ReadonlySet<TableRow>, reliability: Reliability): SeasonLine {
  const counted = rows.filter((row) => ranked.has(row));
  const shown = counted.flatMap(({ technique }) => (technique === null ? [] : [technique]));
  const dated = [...rows].sort((a, b) => ((a.begunAt ?? '') < (b.begunAt ?? '') ? -1 : 1));
  const stated = dated.map(({ practice }) => practice).filter((practice) => practice !== null);
  return {
    name: dated.at(-1)!.name,
    place: null,
    meanTechnique: shown.length === 0 ? null : Math.round(10 * meanOf(shown)) / 10,
    runs: shown.length,
    preliminary: reliability.runsFor08 === null || shown.length < reliability.runsFor08,
    found: counted.filter(({ outcome }) => outcome?.found).length,
    days: [...new Set(rows.flatMap(({ begunAt }) => (begunAt === null ? [] : [dayOf(begunAt)])))].sort(),
    undatedRuns: rows.filter(({ begunAt }) => begunAt === null).length,
    change: changeOf(counted, reliability.detectableChange),
    keepPractising: practiceScore(stated.at(-1) ?? null),
  };
}

export const dayOf = (begunAt: string): string => begunAt.slice(0, 10);

/** First date against last date; the detectable change of single runs shrinks with the runs averaged on either side. */
function changeOf(rows: readonly TableRow[], detectableChange: number): SeasonLine['change'] {
  const days = new Map<string, number[]>();
  for (const { begunAt, technique } of rows) {
    if (begunAt === null || technique === null) continue;
    days.set(dayOf(begunAt), [...(days.get(dayOf(begunAt)) ?? []), technique]);
  }
  if (days.size < 2) return 'one date';
  const inOrder = [...days].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, scores]) => scores);
  const [first, last] = [inOrder[0]!, inOrder.at(-1)!];
  const least = detectableChange * Math.sqrt((1 / first.length + 1 / last.length) / 2);
  const change = meanOf(last) - meanOf(first);
  if (Math.abs(change) < least) return 'within chance';
  return change > 0 ? 'improved' : 'lower';
}
