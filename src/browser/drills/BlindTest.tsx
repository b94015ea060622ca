import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { BLIND_PLACES, type BlindResult, type Bounded, blindResult, PUBLISHED } from '../../core/drills/blindTest';
import { entryNow, keepInBook } from '../storage/book';
import { settings as deviceSettings } from '../storage/settings';
import { BLIND_TEST } from './blindDrill';
import { Board } from './DrillPage';
import { drillKeys } from './drillKeys';
import { begin, forgetDrill, type GivenAt, openDrill } from './drillPlay';
import { openBeeps } from './drillSound';
import { session, stage } from './drillState';
import { PageHead } from './PageHead';

type Outcome = { readonly result: BlindResult | null; readonly on: string };

const bearingsOf = (given: readonly GivenAt[]) =>
  given.flatMap(({ trial, answer }) =>
    answer.kind === 'setting' ? [{ trueDeg: trial.truth.settings.headingDeg, markedDeg: answer.settings.headingDeg }] : [],
  );

/** Thirty drawn places, bearings only, and at the end a page that compares with what field studies published. */
export function BlindTest({ onLeave }: { readonly onLeave: () => void }) {
  const outcome = useSignal<Outcome | null>(null);
  const open = () =>
    void openDrill(BLIND_TEST, 'check', (given) => {
      const result = blindResult(bearingsOf(given));
      const entry = entryNow();
      outcome.value = { result, on: entry.day };
      if (result) void keepInBook([{ ...entry, kind: 'blind', result }]);
    });
  useEffect(() => {
    const stops = [openBeeps(), drillKeys(onLeave), forgetDrill];
    open();
    return () => {
      for (const stop of stops) stop();
    };
  }, []);
  if (session.value?.drill !== BLIND_TEST) return null;
  const done = session.value.answers.length;
  return (
    <main class="drill blind">
      <PageHead title="Blind test" out="All drills" onLeave={onLeave}>
        {stage.value === 'trial' && (
          <span class="number">
            {done + 1} of {BLIND_PLACES}
          </span>
        )}
      </PageHead>
      {stage.value === 'waiting' && <Before />}
      {stage.value === 'trial' && <Board />}
      {outcome.value && stage.value === 'over' && <Certificate {...outcome.value} onAgain={open} />}
    </main>
  );
}

function Before() {
  return (
    <div class="drill-waiting">
      <p class="drill-skill">Thirty places, one bearing at each, no hints and no answers before the end.</p>
      <p class="quiet">
        This is how bearing error is measured in the field: by spread and bias over hidden places. It takes about ten minutes in one
        sitting; a closed page begins anew.
      </p>
      <button type="button" class="primary drill-begin" onClick={begin}>
        Begin <kbd>Enter</kbd>
      </button>
    </div>
  );
}

const deg = (value: number): string => `${value.toFixed(1).replace('-', '−')}°`;
const span = ({ low, high }: Bounded): string => `${deg(low)} to ${deg(high)}`;

function Certificate({ result, on, onAgain }: Outcome & { readonly onAgain: () => void }) {
  if (!result)
    return (
      <div class="drill-waiting">
        <p class="drill-skill">
          Fewer than ten bearings were on the right side: too few to say anything. Find the loud side at a lower gain first.
        </p>
        <button type="button" class="primary" onClick={onAgain}>
          Once more
        </button>
      </div>
    );
  const { name } = deviceSettings.value;
  return (
    <article class="certificate">
      <h2>Bearing error over {result.places} hidden places</h2>
      <p class="quiet">
        {name.trim() && `${name.trim()}, `}
        {on}. Taken in the Faintward simulator with a hand antenna over level ground.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Who</th>
            <th scope="col">Spread (SD)</th>
            <th scope="col">Bias</th>
          </tr>
        </thead>
        <tbody>
          <tr class="certificate-own">
            <th scope="row">Here</th>
            <td>
              <span class="number">{deg(result.sdDeg.value)}</span> <span class="quiet number">({span(result.sdDeg)})</span>
            </td>
            <td>
              <span class="number">{deg(result.biasDeg.value)}</span> <span class="quiet number">({span(result.biasDeg)})</span>
            </td>
          </tr>
          {PUBLISHED.map(({ source, sdDeg, biasDeg }) => (
            <tr key={source}>
              <th scope="row">{source}</th>
              <td class="number">{sdDeg}°</td>
              <td class="number">{biasDeg === null ? 'not given' : `${biasDeg}°`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        In brackets: bounds that hold the value with 95 % confidence. Bearings on the wrong side, counted apart:{' '}
        <span class="number">{result.wrongSide}</span>.
      </p>
      <p class="quiet">A bearing taken here is not yet one taken outdoors: the guide has a protocol for measuring that.</p>
      <div class="drill-answers drill-answers-end not-printed">
        <button type="button" class="primary" onClick={() => print()}>
          Print
        </button>
        <button type="button" onClick={onAgain}>
          Once more
        </button>
      </div>
    </article>
  );
}
