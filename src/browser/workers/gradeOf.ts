import type { Graded, ToGrade } from './gradeMessages';

/** The grade of a run, from a worker of its own. */
export function gradeOf(run: ToGrade): Promise<Graded> {
  const worker = new Worker(new URL('./grade.worker.ts', import.meta.url), { type: 'module' });
  return new Promise<Graded>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Graded>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(`The run could not be graded: ${message}`));
    worker.postMessage(run);
  }).finally(() => worker.terminate());
}
