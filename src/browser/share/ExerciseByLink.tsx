import { useMemo } from 'preact/hooks';
import { wordsOfDigest } from '../../core/scenario/digestWords';
import { type Fault, InputFaults } from '../../core/scenario/faults';
import { unpackedScenario } from '../../core/scenario/link';
import type { Scenario } from '../../core/scenario/schema';
import { digestOf } from '../../core/scenario/seal';
import { CAUTION_WORDS } from '../cautionWords';
import { PlainHttp } from '../PlainHttp';
import { exerciseFileName, saveFile } from '../saveFile';
import './share.css';

type Wanted = { readonly packed: string; readonly onStart: (scenario: Scenario) => void; readonly onBack: () => void };

/** What a link brought: an exercise to start, or why it is none. */
export function ExerciseByLink({ packed, onStart, onBack }: Wanted) {
  const came = useMemo(() => read(packed), [packed]);
  return (
    <main class="opening">
      {'scenario' in came ? (
        <Received scenario={came.scenario} onStart={onStart} onBack={onBack} />
      ) : (
        <div class="opening-inner">
          <h1>No exercise in this link</h1>
          <ul role="alert" class="received-faults">
            {came.faults.slice(0, 6).map(({ path, found, mend }) => (
              <li key={`${path}${found}`}>
                {path !== '' && <code>{path} </code>}
                {found}. <span class="quiet">Mend: {mend}.</span>
              </li>
            ))}
          </ul>
          <div class="share-deeds">
            <button type="button" onClick={onBack}>
              Start page
            </button>
          </div>
        </div>
      )}
    </main>
  );
}

function Received({ scenario, onStart, onBack }: Omit<Wanted, 'packed'> & { readonly scenario: Scenario }) {
  const { title, brief, author, level, limits, cautions } = scenario;
  return (
    <div class="opening-inner">
      <h1>{title}</h1>
      <p class="quiet">
        An exercise by {author || 'somebody'}, level {level}, <span class="number">{Math.round(limits.timeS / 60)}</span> min at most
      </p>
      <p class="opening-brief">{brief}</p>
      <p class="share-words">{wordsOfDigest(digestOf(scenario))}</p>
      <p class="quiet">Everybody with these four words has the same exercise.</p>
      <div class="share-deeds">
        <button type="button" class="primary" onClick={() => onStart(scenario)}>
          Start
        </button>
        <button type="button" onClick={() => saveFile(exerciseFileName(title), `${JSON.stringify(scenario, null, 2)}\n`)}>
          Save the file
        </button>
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </div>
      <PlainHttp />
      {cautions.length > 0 && (
        <>
          <h2>Outdoors, mind</h2>
          <ul class="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{CAUTION_WORDS[caution]}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function read(packed: string): { readonly scenario: Scenario } | { readonly faults: readonly Fault[] } {
  try {
    return { scenario: unpackedScenario(packed) };
  } catch (fault) {
    if (fault instanceof InputFaults) return { faults: fault.faults };
    throw fault;
  }
}
