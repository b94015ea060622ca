import { HABIT_IDS } from '../core/technique/habit';
import type { MeanInterval } from '../core/walkers/validityNumbers';
import type { StudyRow } from '../core/walkers/validityRun';
import {
  type DoseLine,
  doseLines,
  type FindLine,
  faultMatrix,
  findLine,
  type InvarianceLine,
  type InvarianceRow,
  invarianceLines,
  type LuckLine,
  luckLine,
  type MatrixLine,
  type ReliabilityLine,
  reliabilityLines,
} from '../core/walkers/validityTables';

export type StudyRows = {
  readonly walks: readonly StudyRow[];
  readonly finds: readonly StudyRow[];
  readonly shared: readonly StudyRow[];
  readonly careless: readonly StudyRow[];
  readonly afloat: readonly StudyRow[];
  readonly changes: readonly InvarianceRow[];
};

/** The study as tables, its points numbered as in the guide. */
export type Study = {
  readonly exercises: number;
  readonly finds: readonly FindLine[];
  readonly matrix: readonly MatrixLine[];
  readonly doses: readonly DoseLine[];
  readonly luck: readonly LuckLine[];
  readonly invariance: readonly InvarianceLine[];
  readonly reliability: readonly ReliabilityLine[];
};

const BAD_BELOW = 50;
const GOOD_ABOVE = 80;

/** @param exercises how many of the walks go into the fault matrix and the doses; reliability takes all */
export function studyOf(rows: StudyRows, exercises: number): Study {
  const names = [...new Set(rows.walks.map(({ exercise }) => exercise))].slice(0, exercises);
  const graded = rows.walks.filter(({ exercise }) => names.includes(exercise));
  const steadyRows = [...rows.walks.filter(({ walker }) => walker === 'steady'), ...rows.finds];
  return {
    exercises: names.length,
    finds: [findLine('drawn exercises', steadyRows), findLine('shared scenarios', rows.shared)].filter(({ within }) => within.count > 0),
    matrix: faultMatrix(graded),
    doses: doseLines(graded),
    luck: [
      luckLine(
        `careless, found: technique under ${BAD_BELOW}`,
        rows.careless,
        ({ found }) => found,
        (t) => t < BAD_BELOW,
      ),
      luckLine(
        `steady, tag out of reach: technique over ${GOOD_ABOVE}`,
        rows.afloat,
        ({ found }) => !found,
        (t) => t > GOOD_ABOVE,
      ),
    ],
    invariance: invarianceLines(rows.changes),
    reliability: reliabilityLines(rows.walks),
  };
}

const one = (value: number | null | undefined): string => (typeof value === 'number' ? value.toFixed(1) : 'not shown');
const two = (value: number | null): string => (value === null ? '–' : value.toFixed(2));
const interval = (of: MeanInterval | null): string => (of ? `${one(of.mean)} (${one(of.from)} to ${one(of.to)})` : 'not shown');
const percent = ({ mean, from, to, count }: MeanInterval): string =>
  `${(100 * mean).toFixed(0)} % of ${count} (${(100 * from).toFixed(0)} to ${(100 * to).toFixed(0)} %)`;
const verdict = (holds: boolean): string => (holds ? 'holds' : '**misses**');

function table(head: readonly string[], lines: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [row(head), row(head.map(() => '---')), ...lines.map(row)].join('\n');
}

/** What a page says where nobody has tried to break the habits yet. */
export const NO_MUTATION =
  'Every habit is broken on purpose, one number or comparison at a time, by `npm run mutation`; it has not been run for this page.';

/** The tables as Markdown; intervals are 95 %. `mutation` is what that command found. */
export function studyTables(study: Study, mutation = NO_MUTATION): string {
  const misses = study.finds.flatMap(({ misses: of }) => of);
  return [
    '## 1. Steady finds the tag',
    'Found within 2.5 times the shortest walk and 5 minutes; 95 % are wanted.',
    table(
      ['where', 'found in time', ''],
      study.finds.map(({ what, within, holds }) => [what, percent(within), verdict(holds)]),
    ),
    ...(misses.length > 0 ? [`Missed:\n${misses.map((line) => `- ${line}`).join('\n')}`] : []),
    '## 2. Fault matrix',
    'Points by which each fault moves each habit against the steady walk of the same exercise. Its own habit (bold) is to fall by 25 or more, every other is to move by 5 or less; a habit not shown counts as not moved.',
    table(
      ['walker', ...HABIT_IDS, 'own habit, where both showed it'],
      study.matrix.map(({ walker, cells, ownWhereShown }) => [
        walker,
        ...cells.map(({ own, moved, holds }) => `${own ? `**${interval(moved)}**` : interval(moved)}${holds ? '' : ' misses'}`),
        `${interval(ownWhereShown)}, ${ownWhereShown?.count ?? 0} exercises`,
      ]),
    ),
    '## 3. Dose',
    'Mean score of the habit; more of a fault is never to score higher.',
    ...study.doses.map(({ habit, doses, rises, holds }) =>
      [
        table(
          ['walker', habit],
          doses.map(({ walker, score }) => [walker, interval(score)]),
        ),
        `Rises by ${one(rises)} against its falling fit: ${verdict(holds)}.`,
      ].join('\n\n'),
    ),
    '## 4. Luck',
    'Forced cases in which technique keeps to its own side; 95 % are wanted. A run that is not ranked counts as not.',
    table(
      ['case', 'right', 'technique', ''],
      study.luck.map(({ what, right, technique, holds }) => [what, percent(right), interval(technique), verdict(holds)]),
    ),
    '## 5. Invariance',
    'Largest difference of a habit when the same walk is regraded; 1 point is allowed. 100 stands for shown once and not the other time.',
    table(
      ['change', ...HABIT_IDS.slice(0, 4), ''],
      study.invariance.map(({ change, largest, holds }) => [
        change,
        ...HABIT_IDS.slice(0, 4).map((id) => two(largest[id] ?? null)),
        verdict(holds),
      ]),
    ),
    '## 6. Reliability',
    'The walkers are the subjects. ICC(2,1) of the means over two halves of the exercises, and of one run; how many runs average to 0.8; the smallest change between two runs that is not chance (95 %).',
    table(
      ['habit', 'ICC of halves', 'ICC of one run', 'runs for 0.8', 'detectable change', 'exercises'],
      study.reliability.map(({ habit, iccHalves, iccOneRun, runsWanted, detectable, exercises }) => [
        habit,
        two(iccHalves),
        two(iccOneRun),
        runsWanted === null ? '–' : String(runsWanted),
        one(detectable),
        String(exercises),
      ]),
    ),
    '## 7. Mutation',
    mutation,
  ].join('\n\n');
}
