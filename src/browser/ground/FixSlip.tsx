import type { Fix } from '../../core/fix/fix';
import { CloseMark } from '../controls/marks';
import { notebook } from '../currentRun';
import { declareFix, isFixTask } from './declareNow';
import { chooseStart, chosenStart, closeFix, fixAllowed, fixNow, fixShown, placingStart, toggleFix } from './fixNow';
import { lengthText } from './measures';

function Length({ m }: { readonly m: number }) {
  const [value, unit] = lengthText(Math.max(1, m));
  return (
    <>
      <span class="number">{value}</span> <span class="unit">{unit}</span>
    </>
  );
}

/** Asks for the fix, where the exercise grants one. */
export function FixButton() {
  if (!fixAllowed.value) return null;
  return (
    <button type="button" class="fix-button" aria-pressed={fixShown.value} title="T" onClick={toggleFix}>
      Fix
    </button>
  );
}

/** What the bearings that stand say of the place: its area and crossing angle, or why there is no fix; then where to start. */
export function FixSlip() {
  const fix = fixNow.value;
  if (!fix) return null;
  const standing = notebook.value.filter(({ struckOut }) => !struckOut).length;
  return (
    <aside class={placingStart.value ? 'slip fix-slip fix-slip-placing' : 'slip fix-slip'} aria-label="Fix">
      <button type="button" class="plain slip-close" aria-label="Put the fix away" onClick={closeFix}>
        <CloseMark />
      </button>
      <h2>
        Fix <span class="quiet">from {standing === 1 ? 'one bearing' : `${standing} bearings`}</span>
      </h2>
      <div role="status">
        <FixWords fix={fix} />
      </div>
      {fix.ok && (isFixTask.value ? <DeclareWords /> : <StartWords />)}
    </aside>
  );
}

/** Where the fix is the task: the run ends with it. */
function DeclareWords() {
  return (
    <div class="fix-start">
      <p class="quiet">Declared, it ends the run. Strike out what you doubt first.</p>
      <button type="button" class="primary" title="F" onClick={declareFix}>
        Declare this fix
      </button>
    </div>
  );
}

function FixWords({ fix }: { readonly fix: Fix }) {
  if (!fix.ok) return <p>{fix.reason}</p>;
  const { learnerEllipse: area, crossingAngleDeg, warnings } = fix;
  return (
    <>
      <dl class="fix-figures">
        <div>
          <dt class="label">Crossing</dt>
          <dd>
            <span class="number">{Math.round(crossingAngleDeg)}°</span>
          </dd>
        </div>
        {area && (
          <div>
            <dt class="label">Area, half axes</dt>
            <dd>
              <Length m={area.semiMajorM} /> × <Length m={area.semiMinorM} />
            </dd>
          </div>
        )}
      </dl>
      {warnings.map((warning) => (
        <p key={warning} class="fix-warning">
          {warning}
        </p>
      ))}
    </>
  );
}

function StartWords() {
  const start = chosenStart.value;
  return (
    <div class="fix-start">
      <p class="quiet">
        {start ? 'Your start is marked on the map. The debrief says how good it was.' : 'From which road or track would you start now?'}
      </p>
      <button
        type="button"
        aria-pressed={placingStart.value}
        onClick={() => {
          placingStart.value = !placingStart.value;
        }}
      >
        {placingStart.value ? 'Tap the map' : start ? 'Choose another' : 'Choose a start'}
      </button>
      {start && (
        <button type="button" class="plain" onClick={() => chooseStart(null)}>
          Take it back
        </button>
      )}
    </div>
  );
}
