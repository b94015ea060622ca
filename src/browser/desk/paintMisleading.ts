import type { MisleadingPlace } from '../../core/desk/misleads';
import { NUMBERS_FONT } from '../design/palette';
import { disc, type Easel, write } from '../map/brush';

const SHOWN = 8;

/** Where bearings mislead: the more of them, the larger the ring; the number is the middle error. */
export function paintMisleading(easel: Easel, places: readonly MisleadingPlace[]): void {
  const { palette } = easel;
  for (const { at, bearings, offDeg } of places.slice(0, SHOWN)) {
    const spot = easel.at(at);
    const radius = 7 + 3 * Math.sqrt(bearings);
    disc(easel, spot, radius, null, { colour: palette.paper, width: 5 });
    disc(easel, spot, radius, null, { colour: palette.truth, width: 2, dash: [4, 3] });
    write(
      easel,
      { x: spot.x + radius + 5, y: spot.y },
      { text: `${Math.round(offDeg)}°`, colour: palette.truth, font: `600 12.5px ${NUMBERS_FONT}` },
    );
  }
}
