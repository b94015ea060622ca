import { check, chooseAnswer, chosenNow, closeCheck, nextQuestion, playTakes, question, rightSoFar, takeNow } from './earCheck';

/** Three questions by ear; what the ring would show is covered meanwhile. */
export function EarCheck() {
  const now = check.value;
  const asked = question.value;
  if (!now || !asked) return null;
  const chosen = chosenNow.value;
  const last = now.at + 1 === now.questions.length;
  return (
    <section class="ear-check" aria-label="Check by ear">
      <p class="ear-check-count">
        <span class="number">{now.at + 1}</span> of <span class="number">{now.questions.length}</span>, by ear
      </p>
      <h2 class="ear-check-ask">{asked.ask}</h2>
      <div class="ear-check-takes">
        {asked.takes.map(({ name }, i) => (
          <span key={name} class={takeNow.value === i ? 'ear-check-take ear-check-playing' : 'ear-check-take'}>
            {name}
          </span>
        ))}
        <button type="button" class="plain" onClick={playTakes}>
          Play again
        </button>
      </div>
      <div class="ear-check-choices">
        {asked.choices.map((choice, i) => (
          <button
            key={choice}
            type="button"
            aria-pressed={chosen === i}
            class={chosen !== null && i === asked.answer ? 'ear-check-choice ear-check-true' : 'ear-check-choice'}
            onClick={() => chooseAnswer(i)}
          >
            <kbd>{i + 1}</kbd> {choice}
          </button>
        ))}
      </div>
      <div class="ear-check-verdict" role="status">
        {chosen !== null && (
          <p>
            <strong>{chosen === asked.answer ? 'Right.' : `No: ${asked.choices[asked.answer]!.toLowerCase()}.`}</strong> {asked.because}.
            {last && ` ${rightSoFar.value} of ${now.questions.length} right.`}
          </p>
        )}
      </div>
      <div class="ear-check-deeds">
        {chosen !== null && (
          <button type="button" class="primary" onClick={nextQuestion}>
            {last ? 'Back to the demonstration' : 'Next question'}
          </button>
        )}
        {!(chosen !== null && last) && (
          <button type="button" class="plain" onClick={closeCheck}>
            Leave the check
          </button>
        )}
      </div>
    </section>
  );
}
