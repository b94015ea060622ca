import type { HeardPulse } from '../../core/ear/hear';

/** 047° */
export const bearingText = (deg: number): string => `${String(Math.round(deg) % 360).padStart(3, '0')}°`;

/** 4:07, 1:04:07 */
export function clockText(wholeS: number): string {
  const [hours, minutes, seconds] = [Math.floor(wholeS / 3600), Math.floor(wholeS / 60) % 60, wholeS % 60];
  const tail = `${hours > 0 ? String(minutes).padStart(2, '0') : minutes}:${String(seconds).padStart(2, '0')}`;
  return hours > 0 ? `${hours}:${tail}` : tail;
}

export const walkedText = (m: number): readonly [string, string] => (m < 1_000 ? [String(m), 'm'] : [(m / 1000).toFixed(2), 'km']);

/** How loud, in a word or two: what captions say. */
export function loudnessWords(heard: Pick<HeardPulse, 'audible' | 'flatOut' | 'loudnessDb'> | null): string {
  if (!heard?.audible) return 'nothing heard';
  if (heard.flatOut) return 'beep: flat out';
  const { loudnessDb } = heard;
  return `beep: ${loudnessDb < 6 ? 'just heard' : loudnessDb < 15 ? 'faint' : loudnessDb < 28 ? 'clear' : loudnessDb < 42 ? 'loud' : 'very loud'}`;
}
