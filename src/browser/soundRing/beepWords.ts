import type { Heard } from '../../core/listening/air';

/** One beep in a word or two. */
export function beepWords(heard: Pick<Heard, 'audible' | 'flatOut' | 'loudnessDb'>): string {
  if (!heard.audible) return 'nothing heard';
  if (heard.flatOut) return 'flat out';
  const { loudnessDb } = heard;
  return loudnessDb < 6 ? 'just heard' : loudnessDb < 15 ? 'faint' : loudnessDb < 28 ? 'clear' : 'loud';
}
