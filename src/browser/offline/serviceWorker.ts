export {};

/** Written in front of this file by the build: all files of the page, and a digest of them. */
declare const KEPT_FILES: readonly string[];
declare const KEPT_VERSION: string;

type Lasting = Event & { readonly waitUntil: (work: Promise<unknown>) => void };
type Asked = Lasting & { readonly request: Request; readonly respondWith: (answer: Promise<Response>) => void };
type Told = MessageEvent<unknown>;
type Scope = {
  readonly registration: { readonly scope: string };
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
  readonly addEventListener: {
    (kind: 'install' | 'activate', heard: (event: Lasting) => void): void;
    (kind: 'fetch', heard: (event: Asked) => void): void;
    (kind: 'message', heard: (event: Told) => void): void;
  };
};
const worker = self as unknown as Scope;

/** Several copies may be served from one host, each from a folder of its own. */
const FAMILY = `faintward ${worker.registration.scope} `;
const OWN = FAMILY + KEPT_VERSION;
const addressOf = (file: string): string => new URL(file, worker.registration.scope).href;

/** All or nothing: a page that is kept only in part would fail on a hill. */
worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(OWN).then((cache) => cache.addAll(KEPT_FILES.map((file) => new Request(addressOf(file), { cache: 'reload' })))),
  );
});

/**
 * The version before stays: another window may still run from it, with rooms that it has not fetched yet. The page of the first visit
 * is taken in at once: without that a newer version would not wait for it.
 */
worker.addEventListener('activate', (event) => {
  event.waitUntil(
    caches.keys().then((names) => {
      const older = names.filter((name) => name.startsWith(FAMILY) && name !== OWN);
      return Promise.all([worker.clients.claim(), ...older.slice(0, -1).map((name) => caches.delete(name))]);
    }),
  );
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
  event.respondWith(answer(request));
});

async function answer(request: Request): Promise<Response> {
  const address = request.url.split(/[?#]/)[0]!;
  const wanted = address === worker.registration.scope ? addressOf('index.html') : address;
  const own = await (await caches.open(OWN)).match(wanted, { ignoreVary: true });
  return own ?? (await caches.match(wanted, { ignoreVary: true })) ?? fetch(request);
}

/** A page asks which version it runs from, and says when a newer one may take over. */
worker.addEventListener('message', ({ data, ports }) => {
  if (data === 'version') ports[0]?.postMessage(KEPT_VERSION);
  if (data === 'take over') void worker.skipWaiting();
});
