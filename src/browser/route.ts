import { signal } from '@preact/signals';

/** Where in the program the page is: `#/`, `#/ground/<exercise>`, `#/debrief` and `#/debrief/<number>` for a kept run, `#/listen/…` (read by the Listening room itself). */
export type Route =
  | { readonly room: 'start' }
  | { readonly room: 'ground'; readonly name: string }
  | { readonly room: 'debrief'; readonly key: number | null }
  | { readonly room: 'listening' };

function read(hash: string): Route {
  const [, room, name] = hash.replace(/^#/, '').split('/');
  if (room === 'ground' && name) return { room, name: decodeURIComponent(name) };
  if (/^listen(\?|$)/.test(room ?? '')) return { room: 'listening' };
  return room === 'debrief' ? { room, key: /^\d+$/.test(name ?? '') ? Number(name) : null } : { room: 'start' };
}

export const route = signal<Route>(read(location.hash));
addEventListener('hashchange', () => {
  route.value = read(location.hash);
});

export const goTo = (path: string): void => {
  location.hash = path;
};
