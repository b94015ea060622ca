import { useSignal } from '@preact/signals';
import type { Ratings } from '../../core/debrief/moments';
import { HABIT_IDS } from '../../core/technique/habit';
import { Segments } from '../controls/Segments';
import { HABIT_ASKS, HABIT_NAMES } from './habitWords';

const SAID = ['not at all', 'seldom', 'half the time', 'mostly', 'always'];

/** Rate yourself first: the grade teaches more when it is compared with something. */
export function SelfRating({ onDone }: { readonly onDone: (ratings: Ratings) => void }) {
  const ratings = useSignal<Ratings>({});
  return (
    <main class="rating">
      <div class="rating-inner">
        <h1>How did it go?</h1>
        <p class="quiet">Say it yourself before the grade does: 1 is not at all, 5 is always.</p>
        <ol class="rating-list">
          {HABIT_IDS.map((id) => (
            <li key={id}>
              <div>
                <b>{HABIT_NAMES[id]}</b>
                <p class="quiet">{HABIT_ASKS[id]}</p>
              </div>
              <Segments
                name={HABIT_NAMES[id]}
                choices={SAID.map((said, i) => ({ value: i + 1, text: String(i + 1), said: `${HABIT_NAMES[id]}: ${said}` }))}
                chosen={ratings.value[id] ?? 0}
                onChoose={(value) => {
                  ratings.value = { ...ratings.value, [id]: value };
                }}
              />
            </li>
          ))}
        </ol>
        <div class="sheet-deeds">
          <button type="button" class="primary" onClick={() => onDone(ratings.value)}>
            See the grade
          </button>
          <button type="button" class="plain" onClick={() => onDone({})}>
            Skip
          </button>
        </div>
      </div>
    </main>
  );
}
