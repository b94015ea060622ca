import { clock } from '../technique/habit';
import { outcomeWords } from '../technique/outcomeWords';
import { marksOf, type TableRow } from './tableRow';

/** One run in a sentence: what it came to, and how far it is checked. */
export function rowSentence(row: TableRow): string {
  const { technique, outcome, begunAt } = row;
  const date = begunAt === null ? '' : `, ${begunAt.slice(0, 10)}`;
  const marks = `${marksOf(row)}${date}.`;
  if (!outcome) return `Not graded: ${marks}`;
  const how = outcomeWords(outcome);
  return `${how.charAt(0).toUpperCase()}${how.slice(1)} in ${clock(outcome.timeS)}, technique ${technique === null ? 'not ranked' : technique.toFixed(0)}; ${marks}`;
}
