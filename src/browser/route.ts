import { signal } from '@preact/signals';

/** Where in the program the page is: `#/`, `#/ground/<exercise>`, `#/debrief` and `#/debrief/<number>` for a kept run, `#/logbook`, `#/club`, `#/share/<exercise>`, `#/desk`, `#/instructor`, `#/exercise/<packed>` for an exercise in a link, `#/card/<packed>` for a score card; `#/listen/…` and `#/drills/…` are read by rooms of their own. */
export type Route =
  | { readonly room: 'start' }
  | { readonly room: 'ground'; readonly name: string }
  | { readonly room: 'debrief'; readonly key: number | null }
  | { readonly room: 'logbook' }
  | { readonly room: 'club' }
  | { readonly room: 'desk' }
  | { readonly room: 'instructor' }
  | { readonly room: 'share'; readonly name: string | null }
  | { readonly room: 'exercise' | 'card'; readonly packed: string }
  | { readonly room: 'elsewhere' };

function read(hash: string): Route {
  const [, room, name] = hash.replace(/^#/, '').split('/');
  if (room === 'ground' && name) return { room, name: plainName(name) };
  if (/^(listen|drills)(\?|$)/.test(room ?? '')) return { room: 'elsewhere' };
  if (room === 'logbook' || room === 'club' || room === 'desk' || room === 'instructor') return { room };
  if (room === 'share') return { room, name: name ? plainName(name) : null };
  if (room === 'exercise' || room === 'card') return { room, packed: name ?? '' };
  return room === 'debrief' ? { room, key: /^\d+$/.test(name ?? '') ? Number(name) : null } : { room: 'start' };
}

/** Addresses come from outside: a % that stands for nothing names no exercise. */
function plainName(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

export const route = signal<Route>(read(location.hash));
addEventListener('hashchange', () => {
  route.value = read(location.hash);
});

export const goTo = (path: string): void => {
  location.hash = path;
};
