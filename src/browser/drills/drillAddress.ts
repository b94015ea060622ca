import { signal } from '@preact/signals';
import { drillById } from '../../core/drills/catalogue';
import type { Drill } from '../../core/drills/drill';
import type { SessionKind } from '../../core/drills/session';

/** Which of the practice pages the address names: `#/drills`, `#/drills/<drill>`, `#/drills/<drill>?check`, and two pages of their own. */
export type Place =
  | { readonly page: 'list' }
  | { readonly page: 'drill'; readonly drill: Drill; readonly kind: SessionKind }
  | { readonly page: 'hearing-check' }
  | { readonly page: 'blind-test' };

export function placeOf(hash: string): Place {
  const [path = '', rest = ''] = hash.replace(/^#\/drills\/?/, '').split('?');
  if (path === 'hearing-check' || path === 'blind-test') return { page: path };
  const drill = drillById(path);
  return drill ? { page: 'drill', drill, kind: rest === 'check' ? 'check' : 'practice' } : { page: 'list' };
}

export const place = signal<Place>(placeOf(location.hash));

/** Follows the address as long as the room is open. @returns stops */
export function followAddress(): () => void {
  const follow = () => {
    if (/^#\/drills/.test(location.hash)) place.value = placeOf(location.hash);
  };
  follow();
  addEventListener('hashchange', follow);
  return () => removeEventListener('hashchange', follow);
}

export const goTo = (path: string): void => {
  location.hash = path;
};
