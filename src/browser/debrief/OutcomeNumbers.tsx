import type { Outcome } from '../../core/technique/grade';
import { outcomeEndings } from './outcomeEndings';

const clock = (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`;

/** A declared fix against the truth; nothing where the task was a find. */
function fixLines(fix: Outcome['fix']): readonly (readonly [string, string, string])[] {
  if (!fix) return [];
  const { offM, within, areaM } = fix;
  return [
    ['Fix off by', offM === null ? '–' : String(offM), offM === null ? '' : 'm'],
    ['Tag in its area', within === null ? '–' : within ? 'yes' : 'no', ''],
    ['Area, longer half axis', areaM === null ? '–' : String(areaM), areaM === null ? '' : 'm'],
  ];
}

/** What came of it: beside the grade, never inside it. */
export function OutcomeNumbers({
  outcome,
  aided,
  withInstructor,
}: {
  readonly outcome: Outcome;
  readonly aided: boolean;
  readonly withInstructor: boolean;
}) {
  const { timeS, walkedM, bearingErrorDeg, guessErrorM, declarations, atOtherTag = 0, placeErrorM, drivenM, fix, ending } = outcome;
  const wrong = declarations - (ending === 'found' ? 1 : 0);
  const lines: readonly (readonly [string, string, string])[] = [
    ['Tag', outcomeEndings[ending ?? ''] ?? '–', ''],
    ...fixLines(fix),
    ['Time', clock(timeS), ''],
    ['Walked', walkedM < 1_000 ? String(walkedM) : (walkedM / 1_000).toFixed(2), walkedM < 1_000 ? 'm' : 'km'],
    ...(drivenM === undefined ? [] : [['Driven', (drivenM / 1_000).toFixed(2), 'km'] as const]),
    ['Bearings, median error', bearingErrorDeg === null ? '–' : `${bearingErrorDeg}°`, ''],
    ...(placeErrorM === undefined ? [] : [['Own place, median error', String(placeErrorM), 'm'] as const]),
    ['Guess pin off by', guessErrorM === null ? '–' : String(guessErrorM), guessErrorM === null ? '' : 'm'],
    ...(fix === undefined ? [['Wrong declarations', String(wrong), ''] as const] : []),
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
      {withInstructor && (
        <div>
          <dt class="label">Instructor</dt>
          <dd>watched or changed it</dd>
        </div>
      )}
    </dl>
  );
}
