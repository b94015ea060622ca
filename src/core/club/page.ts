import { PRINTED_CAUTIONS } from '../scenario/printedCautions';
import { clock } from '../technique/habit';
import { outcomeWords } from '../technique/outcomeWords';
import type { ClubReport, ExerciseReport } from './clubReport';
import type { HabitStanding } from './habitPicture';
import { PAGE_STYLE } from './pageStyle';
import type { Placed } from './rank';
import type { SeasonLine } from './season';
import { marksOf, wrongDeclarations } from './tableRow';
import { tracksDrawing } from './tracksDrawing';
import { xmlText } from './xmlText';

/** Nothing is loaded and nothing runs, whatever a name or a title tries. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** The table as one page for A4 or Letter paper: no script, nothing from elsewhere, all foreign text escaped. */
export function pageOf(report: ClubReport): string {
  const runs = report.exercises.reduce((sum, { runs: own }) => sum + own.length, 0);
  const body = [
    '<h1>Club table</h1>',
    `<p class="quiet">${runs} ${runs === 1 ? 'run' : 'runs'} of ${report.exercises.length} ${report.exercises.length === 1 ? 'exercise' : 'exercises'}</p>`,
    ...report.notes.map((note) => `<p class="note">${xmlText(note)}</p>`),
    ...report.exercises.map(exerciseSection),
    '<h2>What the club can do</h2>',
    `<p class="next">${xmlText(report.picture.teachNext)}</p>`,
    table(HABIT_HEADS, report.picture.habits.map(habitCells)),
    '<h2>Over all exercises and dates</h2>',
    table(SEASON_HEADS, report.season.map(seasonCells)),
    '<p class="quiet">Keep practising is each learner’s own statement; nobody has checked it.</p>',
    `<h2>How far to trust this</h2><p>${xmlText(report.reliability.note)}</p>`,
    `<p class="quiet">${PRINTED_CAUTIONS}</p>`,
  ].join('\n');
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>Club table</title><style>${PAGE_STYLE}</style></head><body>`,
    `<main>${body}</main>`,
    '</body></html>\n',
  ].join('\n');
}

type Heads = readonly (readonly [title: string, number: boolean])[];
const RUN_HEADS: Heads = [
  ['Technique place', true],
  ['Name', false],
  ['Technique', true],
  ['Quiet gain', true],
  ['Set, then sweep', true],
  ['Walk and listen', true],
  ['Clear view', true],
  ['Outcome place', true],
  ['Outcome', false],
  ['Replay', false],
];

function exerciseSection({ exercise, words, runs }: ExerciseReport): string {
  const about = `Lesson ${exercise.lesson}, level ${exercise.level}. Same exercise, same words: <b>${xmlText(words)}</b>.`;
  return [
    `<section><h2>${xmlText(exercise.title)}</h2><p class="quiet">${about}</p>`,
    table(RUN_HEADS, runs.map(runCells)),
    tracksDrawing(
      exercise,
      runs.map(({ row }) => row),
    ),
    '</section>',
  ].join('\n');
}

const score = (value: number | null): string => (value === null ? '–' : value.toFixed(0));
/** Places are told apart to a tenth, so a tenth is shown. */
const tenth = (value: number | null): string => (value === null ? '–' : value.toFixed(1));
const place = (value: number | null): string => (value === null ? '–' : `${value}`);

function runCells({ row, technique, outcome, why }: Placed): readonly string[] {
  const { quietGain, setThenSweep, walkAndListen, clearView } = row.habits;
  const name = row.name === '' ? '<i>no name</i>' : xmlText(row.name);
  const marks = marksOf(row);
  return [
    place(technique),
    why === '' ? name : `${name}<br><span class="quiet">${xmlText(why)}</span>`,
    tenth(row.technique),
    ...[quietGain, setThenSweep, walkAndListen, clearView].map(score),
    place(outcome),
    outcomeCell(row.outcome),
    row.reasons.length === 0 ? marks : `${marks}<br><span class="quiet">${xmlText(row.reasons.join(' '))}</span>`,
  ];
}

function outcomeCell(outcome: Placed['row']['outcome']): string {
  if (!outcome) return '–';
  const wrong = wrongDeclarations(outcome);
  const said = wrong === 0 ? '' : `, ${wrong} wrong`;
  return `${outcomeWords(outcome)}${outcome.found ? ` ${clock(outcome.timeS)}` : ''}${said}`;
}

const HABIT_HEADS: Heads = [
  ['Habit', false],
  ['Shown', true],
  ['Lower quarter', true],
  ['Median', true],
  ['Upper quarter', true],
  ['Under 50', true],
  ['What to do next time', false],
];

const habitCells = (of: HabitStanding): readonly string[] => [
  xmlText(of.name),
  `${of.shown} of ${of.of}`,
  score(of.lowerQuartile),
  score(of.median),
  score(of.upperQuartile),
  `${of.under50}`,
  xmlText(of.next),
];

const SEASON_HEADS: Heads = [
  ['Place', true],
  ['Name', false],
  ['Mean technique', true],
  ['Runs', true],
  ['Found', true],
  ['Days there', true],
  ['First to last date', false],
  ['Keep practising', true],
];

const seasonCells = (line: SeasonLine): readonly string[] => [
  place(line.place),
  line.name === '' ? '<i>no name</i>' : xmlText(line.name),
  `${tenth(line.meanTechnique)}${line.preliminary && line.meanTechnique !== null ? ' (few runs)' : ''}`,
  `${line.runs}`,
  `${line.found}`,
  `${line.days.length}${line.undatedRuns > 0 ? ` and ${line.undatedRuns} without a date` : ''}`,
  line.change,
  score(line.keepPractising),
];

/** Cells are markup already. */
function table(heads: Heads, rows: readonly (readonly string[])[]): string {
  const side = (i: number) => (heads[i]![1] ? ' class="n"' : '');
  const head = heads.map(([title], i) => `<th scope="col"${side(i)}>${title}</th>`).join('');
  const lines = rows.map((cells) => `<tr>${cells.map((cell, i) => `<td${side(i)}>${cell}</td>`).join('')}</tr>`);
  return `<div class="scroll" tabindex="0"><table><thead><tr>${head}</tr></thead><tbody>\n${lines.join('\n')}\n</tbody></table></div>`;
}
