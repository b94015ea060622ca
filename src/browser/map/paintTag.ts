import type { MapPoint } from '../../core/units/frames';
import { WORDS_FONT } from '../design/palette';
import { disc, type Easel, write } from './brush';

/** A tag with its name, in the colour of truth and dashed: what only a finished run may show. */
export function paintTag(easel: Easel, name: string, at: MapPoint): void {
  const { palette } = easel;
  const spot = easel.at(at);
  disc(easel, spot, 11, palette.paper, { colour: palette.truth, width: 2.4, dash: [4, 3] });
  disc(easel, spot, 3.4, palette.truth);
  write(easel, { x: spot.x + 16, y: spot.y }, { text: name, colour: palette.truth, font: `700 15px ${WORDS_FONT}` });
}
