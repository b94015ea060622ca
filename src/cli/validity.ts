import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { numberFrom, UsageError } from './inputs';
import { reportText } from './validityGuide';
import { type JobResult, jobsFor } from './validityJobs';
import { type Study, type StudyRows, studyOf, studyTables } from './validityReport';
import { runJobs, servedAsPart } from './validityRunner';

/** Five exercises take about ten minutes on two cores with nothing else to do; 50 are the full study. */
const USUAL_EXERCISES = 5;
const SHARED_FOLDER = 'scenarios';
const PAGE = 'assets/guide/validity.md';

type Options = { readonly exercises?: unknown; readonly state?: unknown; readonly report?: unknown };

/** The validity study: walks, tables, and with `--report` the page of the guide. @returns `null` in a part of a study */
export async function validityCommand(options: Options): Promise<{ readonly study: Study; readonly tables: string } | null> {
  if (await servedAsPart()) return null;
  const exercises = options.exercises === undefined ? USUAL_EXERCISES : numberFrom('exercises', options.exercises, 1, 500);
  if (!Number.isInteger(exercises)) throw new UsageError(`--exercises wants a whole number, found ${exercises}`);
  const jobs = jobsFor(exercises, SHARED_FOLDER);
  const results = await runJobs(jobs, typeof options.state === 'string' ? options.state : undefined);
  const rowsOf = (kind: string) => jobs.flatMap((job, i): JobResult['rows'] => (job.kind === kind ? results[i]!.rows : []));
  const rows: StudyRows = {
    walks: rowsOf('walks'),
    finds: rowsOf('finds'),
    shared: rowsOf('shared'),
    careless: rowsOf('careless'),
    afloat: rowsOf('afloat'),
    changes: results.flatMap(({ changes }) => changes),
  };
  const study = studyOf(rows, exercises);
  const tables = studyTables(study, mutationOf(PAGE));
  if (options.report === true) {
    mkdirSync(dirname(PAGE), { recursive: true });
    writeFileSync(PAGE, reportText(study, tables));
  }
  return { study, tables };
}

/** The section that `npm run mutation` wrote into the page; it takes no walks, so a new study keeps it. */
function mutationOf(page: string): string | undefined {
  if (!existsSync(page)) return undefined;
  return /## 7\. Mutation\n\n([\s\S]*?)\n\n## /.exec(readFileSync(page, 'utf8'))?.[1];
}
