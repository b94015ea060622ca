import type { WorkKind } from './openWorker';

const FETCH: Readonly<Record<WorkKind, () => Promise<unknown>>> = {
  club: () => import('./club.worker'),
  debrief: () => import('./debrief.worker'),
  draw: () => import('./draw.worker'),
  elevation: () => import('./elevation.worker'),
  land: () => import('./land.worker'),
  listen: () => import('./listen.worker'),
  reading: () => import('./reading.worker'),
  rehearsal: () => import('./rehearsal.worker'),
  steady: () => import('./steady.worker'),
  survey: () => import('./survey.worker'),
  waves: () => import('./waves.worker'),
};

/** What comes before the kind of work that this worker is named for is there: handed on in its order. */
const early: unknown[] = [];
const hold = ({ data }: MessageEvent) => void early.push(data);
addEventListener('message', hold);

FETCH[self.name as WorkKind]().then(
  () => {
    removeEventListener('message', hold);
    for (const data of early) dispatchEvent(new MessageEvent('message', { data }));
  },
  // Thrown out of a promise, so that the page's `onerror` hears of it.
  (fault: unknown) =>
    setTimeout(() => {
      throw fault;
    }),
);
