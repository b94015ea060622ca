import type { Outcome } from '../../core/technique/grade';

const clock = (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`;
const ENDINGS: Readonly<Record<string, string>> = { found: 'found', 'gave-up': 'given up', 'out-of-time': 'out of time' };

/** What came of it: beside the grade, never inside it. */
export function OutcomeNumbers({ outcome, aided }: { readonly outcome: Outcome; readonly aided: boolean }) {
  const { timeS, walkedM, bearingErrorDeg, guessErrorM, declarations, atOtherTag = 0, found, ending } = outcome;
  const wrong = declarations - (found ? 1 : 0);
  const lines: readonly (readonly [string, string, string])[] = [
    ['Tag', ENDINGS[ending ?? ''] ?? '–', ''],
    ['Time', clock(timeS), ''],
    ['Walked', walkedM < 1_000 ? String(walkedM) : (walkedM / 1_000).toFixed(2), walkedM < 1_000 ? 'm' : 'km'],
    ['Bearings, median error', bearingErrorDeg === null ? '–' : `${bearingErrorDeg}°`, ''],
    ['Guess pin off by', guessErrorM === null ? '–' : String(guessErrorM), guessErrorM === null ? '' : 'm'],
    ['Wrong declarations', String(wrong), ''],
    ...(atOtherTag > 0 ? [['of them at another tag', String(atOtherTag), ''] as const] : []),
  ];
  return (
    <dl class="outcome">
      {lines.map(([name, value, unit]) => (
        <div key={name}>
          <dt class="label">{name}</dt>
          <dd class="number">
            {value}
            {unit && <span class="unit"> {unit}</span>}
          </dd>
        </div>
      ))}
      {aided && (
        <div>
          <dt class="label">Aided</dt>
          <dd>captions on</dd>
        </div>
      )}
    </dl>
  );
}
