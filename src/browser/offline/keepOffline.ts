import { signal } from '@preact/signals';

/** Digest of the files that this page is kept as on the device; empty where it is not kept. */
export const keptVersion = signal('');
/** A newer version is on the device and waits to be let in. */
export const newerWaits = signal(false);

let waiting: ServiceWorker | null = null;
let asked = false;

/**
 * Keeps the page on the device, once it has settled, so that it opens without a network from then on. A newer version is fetched
 * beside it and waits: nothing is ever reloaded but by the person's own press.
 */
export function keepOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  if (document.readyState === 'complete') void keep();
  else addEventListener('load', () => void keep(), { once: true });
}

async function keep(): Promise<void> {
  try {
    const registration = await navigator.serviceWorker.register('./offline.js');
    const look = () => {
      waiting = registration.active ? registration.waiting : null;
      newerWaits.value = waiting !== null;
      void tellVersion(registration.active);
    };
    const watch = (worker: ServiceWorker | null) => worker?.addEventListener('statechange', look);
    registration.addEventListener('updatefound', () => watch(registration.installing));
    watch(registration.installing);
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      if (asked) location.reload();
    });
    look();
  } catch {
    // refused, or the file is not there: the page works from the network
  }
}

async function tellVersion(worker: ServiceWorker | null): Promise<void> {
  if (worker?.state !== 'activated' && worker?.state !== 'activating') return;
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }: MessageEvent<string>) => {
    keptVersion.value = data;
    port1.close();
  };
  worker.postMessage('version', [port2]);
}

/** Lets the newer version in and opens this window anew with it. */
export function takeNewer(): void {
  asked = true;
  waiting?.postMessage('take over');
}
