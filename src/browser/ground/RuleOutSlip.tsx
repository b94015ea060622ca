import { CloseMark, RestoreMark, StrikeMark } from '../controls/marks';
import { act } from '../currentRun';
import {
  closeRuleOut,
  hatchShare,
  placingHatch,
  ruleOut,
  ruleOutAllowed,
  ruleOutSaid,
  ruleOutShown,
  rulings,
  toggleByHand,
  toggleRuleOut,
} from './ruleOutNow';
import { clockText } from './words';

export function RuleOutButton() {
  if (!ruleOutAllowed.value) return null;
  return (
    <button type="button" class="tag-button" aria-expanded={ruleOutShown.value} title="H" onClick={toggleRuleOut}>
      Rule out
    </button>
  );
}

const share = (part: number): string => (part > 0 && part < 0.01 ? 'Under 1 %' : `${Math.round(100 * part)} %`);

/** What was ruled out, the newest on top; each can be taken back. */
export function RulingList() {
  const lines = rulings.value.map((ruling, number) => ({ ruling, number })).reverse();
  if (lines.length === 0) return null;
  return (
    <ol class="rule-lines" aria-label="Ground ruled out">
      {lines.map(({ ruling, number }) => (
        <li key={number} class={ruling.takenBack ? 'rule-line struck' : 'rule-line'}>
          <span>{ruling.around ? 'Ground by hand' : 'Ground in view'}</span>
          <span class="quiet number">{clockText(Math.floor(ruling.atTick / 20))}</span>
          <button
            type="button"
            class="plain"
            aria-label={ruling.takenBack ? `Rule out ${number + 1} again` : `Take back ruling ${number + 1}`}
            title={ruling.takenBack ? 'Rule out again' : 'Take back'}
            onClick={() => act({ type: ruling.takenBack ? 'ruleOutAgain' : 'takeBack', ruling: number })}
          >
            {ruling.takenBack ? <RestoreMark /> : <StrikeMark />}
          </button>
        </li>
      ))}
    </ol>
  );
}

/** Ground is hatched from here: all in view, or round a place. */
export function RuleOutSlip() {
  if (!ruleOutShown.value) return null;
  return (
    <aside class={placingHatch.value ? 'slip rule-slip rule-slip-placing' : 'slip rule-slip'} aria-label="Rule out ground">
      <button type="button" class="plain slip-close" aria-label="Put ruling out away" onClick={closeRuleOut}>
        <CloseMark />
      </button>
      <h2>Rule out ground</h2>
      <p role="status">
        {ruleOutSaid.value ||
          (hatchShare.value > 0
            ? `${share(hatchShare.value)} of the map is ruled out.`
            : 'Hatch what you see from here and heard nothing from.')}
      </p>
      <div class="rule-deeds">
        <button type="button" title="V" onClick={() => ruleOut(null)}>
          All in view
        </button>
        <button type="button" title="B" aria-pressed={placingHatch.value} onClick={toggleByHand}>
          {placingHatch.value ? 'Tap the map' : 'By hand'}
        </button>
      </div>
      <RulingList />
    </aside>
  );
}
