import { choose, confirm, leaveExample, next, showBest, takeBack } from './drillPlay';
import { lines, pin, session, stage, takeNow, trial, verdict } from './drillState';
import { playTakes } from './takes';

/** Whatever is to be pressed next, always in the same place. */
export function Answers() {
  const given = trial.value;
  if (!given) return null;
  if (stage.value === 'example') {
    return (
      <div class="drill-answers">
        <button type="button" class="primary" onClick={leaveExample}>
          I have it: begin <kbd>Enter</kbd>
        </button>
      </div>
    );
  }
  if (stage.value === 'verdict') {
    return (
      <div class="drill-answers">
        <button type="button" class="primary" onClick={next}>
          Next <kbd>Enter</kbd>
        </button>
        <button type="button" onClick={showBest}>
          Hear it right
        </button>
      </div>
    );
  }
  const way = given.answer;
  if (way.kind === 'choice') {
    return (
      <div class="drill-answers">
        {given.takes && <Takes />}
        {way.choices.map((choice, i) => (
          <button key={choice} type="button" class="drill-choice" onClick={() => choose(i)}>
            <kbd>{i + 1}</kbd> {choice}
          </button>
        ))}
      </div>
    );
  }
  return (
    <div class="drill-answers">
      <button type="button" class="primary" onClick={confirm}>
        {deedOf()} <kbd>Enter</kbd>
      </button>
      {lines.value.length > 0 && (
        <button type="button" class="plain" onClick={takeBack}>
          Take it back
        </button>
      )}
    </div>
  );
}

function deedOf(): string {
  const way = trial.value!.answer;
  if (way.kind === 'setting') return way.deed;
  if (way.kind === 'amount') return 'That far';
  if (way.kind === 'pin') return pin.value ? 'It is here' : `Mark bearing ${lines.value.length + 1} of ${way.stations.length}`;
  return '';
}

/** Which of the pair sounds now. */
function Takes() {
  const takes = trial.value?.takes ?? [];
  return (
    <div class="drill-takes">
      {takes.map(({ name }, i) => (
        <span key={name} class={takeNow.value === i ? 'drill-take drill-take-now' : 'drill-take'}>
          {name}
        </span>
      ))}
      <button type="button" class="plain" onClick={playTakes}>
        Again <kbd>Space</kbd>
      </button>
    </div>
  );
}

/** What came of the last answer, in one line. */
export function VerdictLine() {
  const judged = verdict.value;
  const seen = judged && (stage.value === 'verdict' || stage.value === 'over') && session.value?.kind === 'practice';
  return (
    <p class="drill-verdict" role="status">
      {seen && judged && (
        <>
          <strong>{judged.right ? 'Right.' : 'No.'}</strong> {judged.because}.
        </>
      )}
    </p>
  );
}
