import type { ComponentChildren } from 'preact';
import { MinusMark, PlusMark } from '../controls/marks';

type Wanted = {
  readonly zoom: (factor: number) => void;
  readonly whole: () => void;
  /** What the third button brings into view, said to who can't see it. */
  readonly wholeSaid: string;
  readonly children?: ComponentChildren;
};

const STEP = 1.5;

/** Closer, farther, all: the column of buttons at the right of a map that is looked over at leisure. */
export function LookButtons({ zoom, whole, wholeSaid, children }: Wanted) {
  return (
    <div class="run-map-looks">
      <button type="button" class="map-button" aria-label="Closer" onClick={() => zoom(STEP)}>
        <PlusMark />
      </button>
      <button type="button" class="map-button" aria-label="Farther" onClick={() => zoom(1 / STEP)}>
        <MinusMark />
      </button>
      <button type="button" class="map-button map-whole" aria-label={wholeSaid} onClick={whole}>
        All
      </button>
      {children}
    </div>
  );
}
