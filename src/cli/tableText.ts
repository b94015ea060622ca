import type { ClubReport } from '../core/club/clubReport';
import type { Placed } from '../core/club/rank';
import { marksOf } from '../core/club/tableRow';
import { clock } from '../core/technique/habit';
import { outcomeWords } from '../core/technique/outcomeWords';

type Row = Readonly<Record<string, unknown>>;

/** The table for people: a block an exercise, the habits, the season, the note. `rows` lays out like things in columns. */
export function printedTable(report: ClubReport, rows: (value: readonly Row[]) => string): string {
  const blocks = report.exercises.map(({ exercise, words, runs }) => {
    const reasons = runs.flatMap(({ row }) => row.reasons.map((reason) => `  ${named(row.name)}: ${reason}`));
    return [`${exercise.title} (${exercise.lesson}, level ${exercise.level}; ${words})`, rows(runs.map(runRow)), ...reasons].join('\n');
  });
  const habits = report.picture.habits.map(({ name, shown, of, lowerQuartile, median, upperQuartile, under50 }) => ({
    habit: name,
    shown: `${shown} of ${of}`,
    'lower quarter': lowerQuartile,
    median,
    'upper quarter': upperQuartile,
    'under 50': under50,
  }));
  const season = report.season.map((line) => ({
    place: dash(line.place),
    name: named(line.name),
    technique: dash(line.meanTechnique),
    runs: line.preliminary ? `${line.runs} (few)` : `${line.runs}`,
    found: line.found,
    days: line.days.length === 0 ? 'no date' : line.days.join(' '),
    change: line.change,
    'keep practising (own statement)': dash(line.keepPractising),
  }));
  const parts = [...report.notes, ...blocks, `What the club can do\n${rows(habits)}`, report.picture.teachNext];
  return `${[...parts, `Over all exercises and dates\n${rows(season)}`, report.reliability.note].join('\n\n')}\n`;
}

/** Foreign text goes to a terminal: no control characters. */
const named = (name: string): string => (name === '' ? '(no name)' : name.replace(/[\p{Cc}\p{Cf}]/gu, '?'));
const dash = (value: number | null): string => (value === null ? '–' : String(value));

function runRow({ row, technique, outcome, why }: Placed): Row {
  const { habits } = row;
  return {
    place: dash(technique),
    name: named(row.name),
    technique: dash(row.technique),
    'quiet gain': dash(habits.quietGain),
    'set, then sweep': dash(habits.setThenSweep),
    'walk and listen': dash(habits.walkAndListen),
    'clear view': dash(habits.clearView),
    'by outcome': dash(outcome),
    outcome: row.outcome ? `${outcomeWords(row.outcome)} ${clock(row.outcome.timeS)}` : '–',
    replay: marksOf(row),
    why,
  };
}
