/** Work that is done beside the page, each kind in a file of its own. */
export type WorkKind =
  | 'club'
  | 'debrief'
  | 'draw'
  | 'elevation'
  | 'land'
  | 'listen'
  | 'reading'
  | 'rehearsal'
  | 'steady'
  | 'survey'
  | 'waves';

/** A worker of its own for one kind of work. All have one script, so that the core that they share is handed out once. */
export const openWorker = (kind: WorkKind): Worker =>
  new Worker(new URL('./every.worker.ts', import.meta.url), { type: 'module', name: kind });
