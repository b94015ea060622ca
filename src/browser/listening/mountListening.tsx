import { render } from 'preact';
import '../design/design.css';
import '../controls/slide.css';
import './room.css';
import '../soundRing/drawings.css';
import './roomProjector.css';
import './roomPhone.css';
import './handout.css';
import { keepSettings } from '../storage/settings';
import { Room } from './Room';
import { openAddress, roomAddress } from './roomAddress';

/** Puts the Listening room, or the instructor's window, into an element. @returns takes it out again */
export function mountListening(into: HTMLElement, onLeave: () => void): () => void {
  const stopSettings = keepSettings();
  const follow = () => openAddress(location.hash);
  addEventListener('hashchange', follow);
  if (roomAddress(location.hash).place === 'notes') void import('./NotesWindow').then(({ NotesWindow }) => render(<NotesWindow />, into));
  else {
    follow();
    render(<Room onLeave={onLeave} />, into);
  }
  return () => {
    removeEventListener('hashchange', follow);
    stopSettings();
    render(null, into);
  };
}
