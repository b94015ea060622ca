import { session } from './drillState';

/** One dot a trial: filled where it was right, crossed where it was wrong, empty where it is to come. A check shows only how far one is. */
export function TrialDots() {
  const open = session.value;
  if (!open) return null;
  const { answers, drill, kind } = open;
  const words = `${answers.length} of ${drill.trials} done`;
  return (
    <span class="trial-dots">
      <span class="unseen">{words}</span>
      <svg viewBox={`0 0 ${drill.trials * 15} 14`} width={drill.trials * 15} height="14" aria-hidden="true">
        {Array.from({ length: drill.trials }, (_, i) => {
          const answer = answers[i];
          const x = i * 15 + 7;
          if (!answer) return <circle key={x} class="trial-open" cx={x} cy="7" r="4.5" />;
          if (kind === 'check' || answer.right) return <circle key={x} class="trial-done" cx={x} cy="7" r="5" />;
          return <path key={x} class="trial-missed" d={`M${x - 4} 3l8 8M${x + 4} 3l-8 8`} />;
        })}
      </svg>
    </span>
  );
}
