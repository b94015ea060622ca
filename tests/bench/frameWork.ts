/** One row of a browser's trace, as its tracing writes it. */
export type TraceEvent = {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** Elapsed, microseconds. */
  readonly dur?: number;
  /** Processor time of the thread, microseconds: what other processes take meanwhile is not in it. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
};

const DRAWS = 'FireAnimationFrame';

/**
 * Time that the page's main thread was at work from each animation frame to the next, ms: script, style, layout and painting alike; as the
 * processor's time, or as elapsed, with its waits for other threads and processes.
 */
export function workPerFrameMs(events: readonly TraceEvent[], clock: 'processor' | 'elapsed'): readonly number[] {
  const main = mainThread(events);
  const ofMain = events.filter(({ pid, tid }) => pid === main.pid && tid === main.tid).sort((a, b) => a.ts - b.ts);
  const drawn = ofMain.filter(({ name }) => name === DRAWS).map(({ ts }) => ts);
  const works: number[] = [];
  let next = 0;
  for (const { ts, dur = 0, tdur = dur } of ofMain.filter(({ name, ph }) => name === 'RunTask' && ph === 'X')) {
    while (next < drawn.length && drawn[next]! < ts) next++;
    if (next < drawn.length && drawn[next]! <= ts + dur) works.push(0); // the task of a new frame, however many callbacks it has
    if (works.length > 0) works[works.length - 1]! += (clock === 'processor' ? tdur : dur) / 1_000;
  }
  return works.slice(0, -1);
}

function mainThread(events: readonly TraceEvent[]): TraceEvent {
  const counts = new Map<string, { readonly event: TraceEvent; readonly count: number }>();
  for (const event of events) {
    if (event.name !== DRAWS) continue;
    const key = `${event.pid}/${event.tid}`;
    counts.set(key, { event, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  const most = [...counts.values()].sort((a, b) => b.count - a.count)[0];
  if (!most) throw new Error('the trace holds no animation frame');
  return most.event;
}
