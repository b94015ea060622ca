import type { ScoreCard } from '../../core/club/scoreCard';
import { wordsOfDigest } from '../../core/scenario/digestWords';
import { clock } from '../../core/technique/habit';
import { outcomeWords } from '../../core/technique/outcomeWords';

const DIGEST_LETTERS = 64;

/** What a score card says, and that nobody has checked it. */
export function CardFace({ card }: { readonly card: ScoreCard }) {
  const { title, exercise, name, by, technique, found, timeS, aided, withInstructor, fixOffM, on } = card;
  const fix = fixOffM === undefined ? undefined : { offM: fixOffM, within: null, areaM: null };
  const lines: readonly (readonly [string, string])[] = [
    ['Exercise', title],
    ['Its four words', wordsOfDigest(exercise.padEnd(DIGEST_LETTERS, '0'))],
    ['Technique', technique === null ? 'not ranked' : String(Math.round(technique))],
    ['Outcome', `${outcomeWords({ found, fix })} in ${clock(timeS)}`],
    ...(on ? [['Date', on] as const] : []),
    ...(aided ? [['Aided', 'captions on'] as const] : []),
    ...(withInstructor ? [['Instructor', 'watched or changed it'] as const] : []),
    ['Checked', 'not replayed'],
  ];
  return (
    <section class="score-card" aria-label="What the card says">
      <h2>
        {name.trim() || 'Somebody'}
        {by === 'walker' && ', a walker of the program'}
      </h2>
      <dl>
        {lines.map(([what, value]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
