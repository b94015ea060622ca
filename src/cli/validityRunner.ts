import { type ChildProcess, fork } from 'node:child_process';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { doJob, type Job, type JobResult, jobKey } from './validityJobs';

/** Set for the processes of a study that take their jobs from the first. */
const PART = 'FAINTWARD_STUDY_PART';
const BAR_CELLS = 30;

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

/** Does all jobs, a process for each core, those done before left out. `stateFile` is written after each. */
export async function runJobs(jobs: readonly Job[], stateFile: string | undefined): Promise<readonly JobResult[]> {
  const done: Done = stateFile && existsSync(stateFile) ? (JSON.parse(readFileSync(stateFile, 'utf8')) as Done) : {};
  const left = jobs.filter((job) => !done[jobKey(job)]);
  if (left.length < jobs.length) process.stderr.write(`${jobs.length - left.length} of ${jobs.length} were done before\n`);
  const begunMs = performance.now();
  let finished = 0;
  const keep = (job: Job, result: JobResult) => {
    done[jobKey(job)] = result;
    finished++;
    if (stateFile) keepDone(stateFile, done);
    const leftS = ((performance.now() - begunMs) / 1000 / finished) * (left.length - finished);
    showProgress(jobs.length - left.length + finished, jobs.length, leftS, jobKey(job));
  };
  const queue = [...left];
  const parts = Math.min(availableParallelism(), queue.length);
  await Promise.all(Array.from({ length: parts }, () => feed(queue, keep)));
  return jobs.map((job) => done[jobKey(job)]!);
}

/** Whole or not at all: a study broken off while writing must not lose what it had. */
function keepDone(stateFile: string, done: Done): void {
  writeFileSync(`${stateFile}.part`, JSON.stringify(done));
  renameSync(`${stateFile}.part`, stateFile);
}

/** A bar on one line of a terminal; elsewhere a line each time. */
function showProgress(finished: number, of: number, leftS: number, what: string): void {
  const full = Math.floor((BAR_CELLS * finished) / of);
  const bar = `[${'#'.repeat(full)}${'.'.repeat(BAR_CELLS - full)}] ${finished} of ${of}, about ${Math.ceil(leftS / 60)} min left (${what})`;
  process.stderr.write(process.stderr.isTTY && finished < of ? `\r${bar}\u001b[K` : `${process.stderr.isTTY ? '\r' : ''}${bar}\n`);
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
