import { render } from 'preact';
import '../design/design.css';
import '../controls/slide.css';
import '../soundRing/drawings.css';
import './drills.css';
import './drillPages.css';
import { keepSettings } from '../storage/settings';
import { followAddress } from './drillAddress';
import { Practice } from './Practice';

/** Puts the drills into an element. @returns takes them out again */
export function mountDrills(into: HTMLElement, onLeave: () => void): () => void {
  const stops = [keepSettings(), followAddress()];
  render(<Practice onLeave={onLeave} />, into);
  return () => {
    for (const stop of stops) stop();
    render(null, into);
  };
}
