import type { ExerciseReport } from '../../core/club/clubReport';
import type { Placed } from '../../core/club/rank';
import { marksOf, wrongDeclarations } from '../../core/club/tableRow';
import { clock } from '../../core/technique/habit';
import { outcomeWords } from '../../core/technique/outcomeWords';
import { Segments } from '../controls/Segments';
import { fileOfRun, order } from './clubTable';
import { inFront, pick } from './tracks';

const HEADS = ['Place', 'Name', 'Technique', 'Quiet gain', 'Set, then sweep', 'Walk and listen', 'Clear view', 'Outcome', 'Replay'];
const shown = (value: number | null, digits = 0): string => (value === null ? '–' : value.toFixed(digits));

type Wanted = { readonly of: ExerciseReport; readonly onDebrief: (file: File) => void };

/** The runs of one exercise by technique or by outcome; equals share a place, and who takes none is told why. */
export function Ranking({ of: { exercise, words, runs }, onDebrief }: Wanted) {
  const by = order.value;
  const ordered = by === 'technique' ? runs : [...runs].sort((a, b) => placeOrLast(a.outcome) - placeOrLast(b.outcome));
  const taken = runs.map((placed) => placed[by]);
  return (
    <section class="club-ranking" aria-label={`Ranking of ${exercise.title}`}>
      <header class="club-ranking-head">
        <div>
          <h2>{exercise.title}</h2>
          <p class="quiet">
            Level {exercise.level}. Same words, same exercise: <b>{words}</b>
          </p>
        </div>
        <Segments
          name="Order"
          choices={[
            { value: 'technique', text: 'By technique' },
            { value: 'outcome', text: 'By outcome' },
          ]}
          chosen={by}
          onChoose={(value) => {
            order.value = value;
          }}
        />
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by key */}
      <section class="club-scroll" tabIndex={0} aria-label={`Ranking of ${exercise.title}, table`}>
        <table class="club-table">
          <thead>
            <tr>
              {HEADS.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ordered.map((placed) => (
              <Line
                key={`${placed.row.run}${placed.row.name}${placed.row.begunAt}`}
                placed={placed}
                place={placed[by]}
                shared={placed[by] !== null && taken.filter((place) => place === placed[by]).length > 1}
                onDebrief={onDebrief}
              />
            ))}
          </tbody>
        </table>
      </section>
      <p class="quiet club-hint">
        A dash is not shown: the run gave no chance for that habit. “=” shares its place. A press on a name puts the way in front on the
        map.
      </p>
    </section>
  );
}

const placeOrLast = (place: number | null): number => place ?? Number.MAX_SAFE_INTEGER;

type OneLine = { readonly placed: Placed; readonly place: number | null; readonly shared: boolean } & Pick<Wanted, 'onDebrief'>;

function Line({ placed: { row, outcome: outcomePlace, why }, place, shared, onDebrief }: OneLine) {
  const { habits, outcome } = row;
  const scores = [habits.quietGain, habits.setThenSweep, habits.walkAndListen, habits.clearView];
  const front = inFront.value.some(({ run }) => run === row.run);
  const file = fileOfRun(row.run);
  const name = row.name || 'no name';
  return (
    <tr class={row.sound ? '' : 'club-unsound'}>
      <td class="number club-place">
        {place ?? '–'}
        {shared && '='}
      </td>
      <th scope="row">
        {row.track.length > 0 ? (
          <button type="button" class="plain club-name" aria-pressed={front} onClick={() => pick(row.run)}>
            {name}
          </button>
        ) : (
          <span class="club-name">{name}</span>
        )}
        {why && why !== row.mark && <span class="club-why">{why}</span>}
      </th>
      <td class="number">{shown(row.technique, 1)}</td>
      {scores.map((score, i) => (
        <td key={i} class="number">
          {shown(score)}
        </td>
      ))}
      <td class="club-outcome">{outcome ? <Outcome outcome={outcome} place={outcomePlace} /> : '–'}</td>
      <td>
        <div class="club-replay">
          <span class={row.mark === 'checked' ? '' : 'club-mark'}>{marksOf(row)}</span>
          {file && row.sound && (
            <button type="button" class="plain club-debrief" aria-label={`Debrief of ${name}`} onClick={() => onDebrief(file)}>
              Debrief
            </button>
          )}
        </div>
        {row.reasons.length > 0 && <span class="club-why">{row.reasons.join(' ')}</span>}
      </td>
    </tr>
  );
}

function Outcome({ outcome, place }: { readonly outcome: NonNullable<Placed['row']['outcome']>; readonly place: number | null }) {
  const wrong = wrongDeclarations(outcome);
  return (
    <>
      {outcomeWords(outcome)} <span class="number">{clock(outcome.timeS)}</span>
      {wrong > 0 && `, ${wrong} wrong`}
      {place !== null && order.value === 'technique' && <span class="club-why">place {place}</span>}
    </>
  );
}
