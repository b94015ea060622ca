import { type ChildProcess, fork } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { doJob, type Job, type JobResult, jobKey } from './validityJobs';

/** Set for the second process of a study, which takes jobs from the first. */
const PART = 'FAINTWARD_STUDY_PART';
const MOST_PROCESSES = 2;

/** Results by job; kept in a file, so that a study goes on where it was broken off. */
type Done = Record<string, JobResult>;

/** In a part of a study: does the jobs that come and sends back what they gave, until told to stop. @returns whether it was one */
export async function servedAsPart(): Promise<boolean> {
  if (process.env[PART] !== '1' || !process.send) return false;
  await new Promise<void>((stop) => {
    process.on('message', (job: Job | 'stop') => {
      if (job !== 'stop') process.send!(doJob(job));
      else stop();
    });
    process.on('disconnect', stop);
    process.send!('ready');
  });
  process.disconnect?.();
  return true;
}

/** Does all jobs on two processes, those done before left out. `stateFile` is written after each. */
export async function runJobs(jobs: readonly Job[], stateFile: string | undefined): Promise<readonly JobResult[]> {
  const done: Done = stateFile && existsSync(stateFile) ? (JSON.parse(readFileSync(stateFile, 'utf8')) as Done) : {};
  const left = jobs.filter((job) => !done[jobKey(job)]);
  const begunMs = performance.now();
  let finished = 0;
  const keep = (job: Job, result: JobResult) => {
    done[jobKey(job)] = result;
    finished++;
    if (stateFile) writeFileSync(stateFile, JSON.stringify(done));
    const leftS = ((performance.now() - begunMs) / 1000 / finished) * (left.length - finished);
    process.stderr.write(`${jobKey(job)} done, ${left.length - finished} of ${jobs.length} left, about ${Math.ceil(leftS / 60)} min\n`);
  };
  const queue = [...left];
  const parts = Math.min(MOST_PROCESSES, availableParallelism(), queue.length);
  await Promise.all(Array.from({ length: parts }, () => feed(queue, keep)));
  return jobs.map((job) => done[jobKey(job)]!);
}

/** One process, given jobs one after the other. */
function feed(queue: Job[], keep: (job: Job, result: JobResult) => void): Promise<void> {
  const part: ChildProcess = fork(process.argv[1]!, ['validity'], {
    env: { ...process.env, [PART]: '1' },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  return new Promise((resolve, reject) => {
    let current: Job | undefined;
    part.on('message', (message: JobResult | 'ready') => {
      if (current && message !== 'ready') keep(current, message);
      current = queue.shift();
      part.send(current ?? 'stop');
    });
    part.on('error', reject);
    part.on('exit', (code) => (current || code !== 0 ? reject(new Error(`a part of the study ended with ${code}`)) : resolve()));
  });
}
