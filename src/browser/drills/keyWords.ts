import { reachable, trial, truthShown } from './drillState';

/** The keys that mean something now. */
export function keyWords(): string {
  const given = trial.value;
  if (!given) return '';
  const words: string[] = [];
  if (reachable('headingDeg') || truthShown.value) words.push('← → turn (Shift: finely)', 'F turn about');
  if (reachable('gainDb') || truthShown.value) words.push('↑ ↓ gain (Shift: 5 dB)');
  if (reachable('rollDeg')) words.push('R other axis');
  if (reachable('walkM')) words.push('W S walk');
  if (reachable('offsetHz')) words.push(', . dial');
  if (given.answer.kind === 'amount') words.push(', . distance');
  if (given.answer.kind === 'pin') words.push('then arrows move the pin');
  words.push('* / volume', 'Esc out');
  return words.join(' · ');
}
