import { useMemo } from 'preact/hooks';
import { type ScoreCard, unpackedCard } from '../../core/club/scoreCard';
import { type Fault, InputFaults } from '../../core/scenario/faults';
import { CardFace } from './CardFace';
import './share.css';
import './scoreCard.css';

/** The score card that a link brought, or why it is none. */
export function CardByLink({ packed, onBack }: { readonly packed: string; readonly onBack: () => void }) {
  const came = useMemo(() => read(packed), [packed]);
  return (
    <main class="opening">
      <div class="opening-inner">
        {'card' in came ? (
          <>
            <h1>Score card</h1>
            <CardFace card={came.card} />
            <p>
              Not replayed: it says what the device that made it says, and anybody can write such a card. A run file can be checked: in the
              club table each run is walked through again.
            </p>
          </>
        ) : (
          <>
            <h1>No score card in this link</h1>
            <ul role="alert" class="received-faults">
              {came.faults.slice(0, 6).map(({ path, found, mend }) => (
                <li key={`${path}${found}`}>
                  {path !== '' && <code>{path} </code>}
                  {found}. <span class="quiet">Mend: {mend}.</span>
                </li>
              ))}
            </ul>
          </>
        )}
        <div class="share-deeds">
          <button type="button" onClick={onBack}>
            Start page
          </button>
        </div>
      </div>
    </main>
  );
}

function read(packed: string): { readonly card: ScoreCard } | { readonly faults: readonly Fault[] } {
  try {
    return { card: unpackedCard(packed) };
  } catch (fault) {
    if (fault instanceof InputFaults) return { faults: fault.faults };
    throw fault;
  }
}
