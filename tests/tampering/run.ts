import { honestRun } from './honestRuns';
import { DEGREES, editedFrom, makeJudge, resealed } from './study';

/** Honest runs read back, and runs that are edited: other hands, other grounds. */
const HONEST = 1_000;
const EDITED = 2;
const TOLD_EVERY = 100;

/** The first runs that have something of every kind to edit: a hand that trembles has no turn that lasts. */
function editable() {
  const found = [];
  for (let index = 0; found.length < EDITED; index++) {
    const original = honestRun(index);
    try {
      found.push({ index, original, edited: editedFrom(original, DEGREES) });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return found;
}

/** The whole study of false and honest runs; prints what was missed and ends with 1 if anything was. */
function study(): number {
  const judge = makeJudge();
  const accused: number[] = [];
  for (let i = 0; i < HONEST; i++) {
    if (!judge.isClean(honestRun(i))) accused.push(i);
    if ((i + 1) % TOLD_EVERY === 0) process.stderr.write(`${i + 1} of ${HONEST} honest runs\n`);
  }
  console.log(`honest runs that are accused: ${accused.length} of ${HONEST}${accused.length > 0 ? ` (${accused.join(', ')})` : ''}`);
  let missed = 0;
  for (const { index, original, edited } of editable()) {
    for (const [how, file] of [
      ['as edited', (run: typeof original) => run],
      ['digest and seal worked out anew', resealed],
    ] as const) {
      const slipped = edited.filter(({ run }) => !judge.isFound(file(run), original.digest));
      missed += slipped.length;
      console.log(`run ${index}, ${how}: ${edited.length - slipped.length} of ${edited.length} edits found`);
      for (const { part, kind, degree } of slipped) console.log(`  not found: ${part}, ${kind}, degree ${degree.toFixed(2)}`);
    }
  }
  return accused.length + missed > 0 ? 1 : 0;
}

process.exitCode = study();
