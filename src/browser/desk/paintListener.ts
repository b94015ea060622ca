import type { HeardHere } from '../../core/desk/hearHere';
import { fieldSquared } from '../../core/radio/waveVector';
import type { MapPoint } from '../../core/units/frames';
import { arrow, disc, type Easel, stepPx } from '../map/brush';

/** Waves weaker than this against the strongest are not drawn, dB. */
const DRAWN_DB = 20;
const LONGEST_PX = 70;
const CLEAR_PX = 12;

/** Who listens, and the waves that come there as arrows: longer for stronger ones, in the colour of truth. */
export function paintListener(easel: Easel, at: MapPoint, heard: HeardHere | null): void {
  const { palette } = easel;
  const spot = easel.at(at);
  if (heard && heard.at.eM === at.eM && heard.at.nM === at.nM) {
    const strongest = Math.max(...heard.waves.map(fieldSquared));
    for (const wave of heard.waves) {
      const downDb = 10 * Math.log10(strongest / fieldSquared(wave));
      if (wave.kind === 'scatter' || downDb > DRAWN_DB) continue;
      const far = stepPx(spot, wave.azimuthDeg, CLEAR_PX + LONGEST_PX * (1 - downDb / (DRAWN_DB + 4)));
      arrow(easel, far, stepPx(spot, wave.azimuthDeg, CLEAR_PX), { colour: palette.truth, width: 2 });
    }
  }
  disc(easel, spot, 8, palette.paper);
  disc(easel, spot, 5, palette.sound, { colour: palette.ink, width: 1.5 });
}
