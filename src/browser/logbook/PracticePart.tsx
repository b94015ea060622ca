import { DRILLS } from '../../core/drills/catalogue';
import { type Book, blindTestsIn, checksIn, practiceDays } from '../../core/logbook/book';
import type { Day } from '../../core/logbook/day';
import { weeksDose } from '../../core/logbook/listeningDose';
import { practiceOf } from '../../core/logbook/practice';
import { judgePractice } from '../../core/technique/keepPractising';

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The fifth habit with its four parts, what the ears had this week, and the last checks. */
export function PracticePart({ book, day }: { readonly book: Book; readonly day: Day }) {
  const practice = practiceOf(
    book,
    DRILLS.map(({ id }) => id),
    day,
  );
  const { score, components } = judgePractice(practice);
  const { daysPractised, longestGapDays, dueShare, largestSkillShare } = practice;
  const none = practiceDays(book).length === 0;
  const parts = [
    ['days', 'Days practised', none ? '–' : `${daysPractised} of 28`],
    ['gap', 'Longest gap', none ? '–' : longestGapDays === 1 ? '1 day' : `${longestGapDays} days`],
    ['due', 'Due drills in time', none ? '–' : dueShare === null ? 'none was due' : percent(dueShare)],
    ['variety', 'Most on one skill', none ? '–' : percent(largestSkillShare)],
  ] as const;
  return (
    <section class="book-part">
      <h2>Keep practising</h2>
      <p class="book-score">
        <span class="number">{none || score === null ? '–' : Math.round(score)}</span>{' '}
        <span class="quiet">of 100, over the last 28 days</span>
      </p>
      <dl class="book-parts">
        {parts.map(([id, name, value]) => (
          <div key={id}>
            <dt class="quiet">{name}</dt>
            <dd>
              <span class="number">{value}</span>
              <span class="quiet number book-mark">{components[id] == null || none ? 'not shown' : Math.round(components[id]!)}</span>
            </dd>
          </div>
        ))}
      </dl>
      <Dose book={book} day={day} />
      <LastChecks book={book} />
    </section>
  );
}

function Dose({ book, day }: { readonly book: Book; readonly day: Day }) {
  const dose = weeksDose(book, day);
  if (!dose) return <p class="quiet">The week’s listening dose is shown once a hearing check has been made.</p>;
  const { hours, levelDba, share } = dose;
  return (
    <p>
      Ears this week: {share < 0.01 && 'less than '}
      <span class="number">{percent(Math.max(0.01, share))}</span> of the weekly dose that WHO and ITU-T H.870 allow (80 dBA for 40 hours);
      at most <span class="number">{Math.max(0, Math.round(levelDba))} dBA</span> for{' '}
      <span class="number">{hours < 1 ? `${Math.round(60 * hours)} min` : `${hours.toFixed(1)} h`}</span> here, estimated from your hearing
      check.
    </p>
  );
}

function LastChecks({ book }: { readonly book: Book }) {
  const [check, blind] = [checksIn(book).at(-1), blindTestsIn(book).at(-1)];
  return (
    <>
      {check && (
        <p class="quiet">
          Hearing check of {check.day}: <span class="number">{check.thresholdDb.toFixed(1).replace('-', '−')} dB</span> re usual
          {check.device && `, ${check.device}`}.
        </p>
      )}
      {blind && (
        <p class="quiet">
          Blind test of {blind.day}: spread <span class="number">{blind.result.sdDeg.value.toFixed(1)}°</span>, bias{' '}
          <span class="number">{blind.result.biasDeg.value.toFixed(1).replace('-', '−')}°</span>.
        </p>
      )}
    </>
  );
}
