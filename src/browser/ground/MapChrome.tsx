import { HereMark, MinusMark, PlusMark } from '../controls/marks';
import { openRun } from '../currentRun';
import { centreOnMe, following, mapView, zoom } from './mapView';
import { northWord, readDeg, scaleLength } from './measures';

/** What a map carries at its rim: north, scale, contour interval, and the ways to look at it. */
export function MapChrome() {
  return (
    <>
      <div class="map-north" aria-hidden="true">
        <svg viewBox="0 0 20 34" width="20" height="34" aria-hidden="true">
          <path d="M10 2l5 15h-10z" fill="currentColor" />
          <path d="M10 17v5" stroke="currentColor" stroke-width="1.600" />
          {northWord() === 'magnetic' && (
            <path
              d="M10 17V-2M10 -2l-2.500 5"
              transform={`rotate(${-readDeg(0)} 10 17)`}
              stroke="currentColor"
              stroke-width="1"
              fill="none"
            />
          )}
          <text x="10" y="33" text-anchor="middle" font-size="11" font-weight="700" fill="currentColor">
            N
          </text>
        </svg>
      </div>
      <div class="map-looks">
        <button type="button" class="map-button" aria-label="Closer" title="Closer (+)" onClick={() => zoom(1.5)}>
          <PlusMark />
        </button>
        <button type="button" class="map-button" aria-label="Farther" title="Farther (−)" onClick={() => zoom(1 / 1.5)}>
          <MinusMark />
        </button>
        <button
          type="button"
          class="map-button"
          aria-label="Centre on me"
          title="Centre on me (C)"
          aria-pressed={following.value}
          onClick={centreOnMe}
        >
          <HereMark />
        </button>
      </div>
      <MapScale />
    </>
  );
}

function MapScale() {
  const { pxPerM } = mapView.value;
  const length = scaleLength(170 / pxPerM);
  const interval = openRun.value?.land.contourIntervalM ?? 10;
  return (
    <div class="map-scale number">
      <span class="map-scale-words">
        <span>{length.text}</span>
        <span class="map-interval">contours {interval} m</span>
      </span>
      <span class="map-scale-bar" style={{ width: `${length.m * pxPerM}px` }} />
    </div>
  );
}
