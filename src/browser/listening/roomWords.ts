import type { Listened } from '../../core/listening/demonstration';
import { heardSides } from '../../core/listening/soundRing';
import { turnDeg } from '../../core/units/angles';
import { beepWords } from '../soundRing/beepWords';

/** What sounds, as a caption: this beep, and how the other side compares. */
export function captionWords({ now, ring }: Listened): string {
  const [top, back] = heardSides(ring);
  if (!top) return 'Hiss alone: no beep on any side';
  const beep = now.audible ? `Beep ${beepWords(now)}` : 'Nothing on this side';
  if (!back) return `${beep}; one side only`;
  const gapDb = top.levelDb - back.levelDb;
  const behind = Math.abs(turnDeg(top.headingDeg, back.headingDeg)) > 150;
  if (gapDb < 2) return behind ? `${beep}; loud in front, as loud behind` : `${beep}; two sides as loud`;
  return `${beep}; the other side ${Math.round(gapDb)} dB softer`;
}
