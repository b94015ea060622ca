import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Debriefing } from '../../core/debrief/debriefing';
import { HABIT_IDS } from '../../core/technique/habit';
import { outcomeWords } from '../../core/technique/outcomeWords';
import type { OpenRun } from '../currentRun';
import { type OnItsWay, steadyWalk } from '../workers/steadyWalk';
import { clock } from './charts/chartFrame';
import { HABIT_NAMES } from './habitWords';

/** The same exercise walked by the built-in expert from sound and map alone, beside the learner's run. */
export function SteadyPart({
  open,
  own,
  steady,
  onShow,
}: {
  readonly open: OpenRun;
  readonly own: Debriefing;
  readonly steady: Signal<Debriefing | null>;
  readonly onShow: () => void;
}) {
  const soFar = useSignal<OnItsWay | null>(null);
  const fault = useSignal('');
  const stop = useRef<() => void>(() => {});
  const { companion } = open.exercise.scenario;
  const keptBack = useSignal(companion === 'afterwards');
  const walked = useRef<Debriefing | null>(null);
  const send = () => {
    const { scenario, world } = open.exercise;
    soFar.value = { timeS: 0, walkedM: 0, usualS: 1 };
    const walk = steadyWalk({ scenario, world }, (now) => {
      soFar.value = now;
    });
    stop.current = walk.close;
    walk.result.then(
      (debriefing) => {
        soFar.value = null;
        walked.current = debriefing;
        if (!keptBack.peek()) steady.value = debriefing;
      },
      (failed: Error) => {
        soFar.value = null;
        fault.value = failed.message;
      },
    );
  };
  useEffect(() => {
    if (companion) send();
    return () => stop.current();
  }, []);
  if (steady.value) {
    return (
      <>
        <Columns own={own} steady={steady.value} />
        <div class="part-deeds">
          <button type="button" onClick={onShow}>
            Show both on the map
          </button>
        </div>
      </>
    );
  }
  if (keptBack.value) {
    return (
      <>
        <p class="steady-what">The steady walker does this exercise too, as your companion. Look at your own run first.</p>
        <div class="part-deeds">
          <button
            type="button"
            onClick={() => {
              keptBack.value = false;
              steady.value = walked.current;
            }}
          >
            Show the companion’s run
          </button>
        </div>
      </>
    );
  }
  return (
    <>
      <p class="steady-what">
        The steady walker hears and sees what you do, no more: it keeps the gain low, leaves the knobs alone while it turns, and walks by
        ear from one clear view to the next.
      </p>
      {soFar.value ? (
        <Walking {...soFar.value} />
      ) : (
        <div class="part-deeds">
          <button type="button" onClick={send}>
            Send the steady walker
          </button>
        </div>
      )}
      <p role="alert">{fault.value}</p>
    </>
  );
}

function Walking({ timeS, walkedM, usualS }: OnItsWay) {
  const share = Math.min(0.98, timeS / Math.max(1, usualS));
  return (
    <div class="steady-walking">
      <div
        class="layer-progress"
        role="progressbar"
        aria-label="The steady walker is on its way"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(100 * share)}
      >
        <span style={{ width: `${100 * share}%` }} />
      </div>
      <p class="quiet">
        On its way: <span class="number">{clock(timeS)}</span>, <span class="number">{Math.round(walkedM)}</span> m walked
      </p>
    </div>
  );
}

type Line = { readonly name: string; readonly of: (run: Debriefing) => string };

const score = (value: number | null): string => (value === null ? 'not shown' : String(Math.round(value)));
const LINES: readonly Line[] = [
  { name: 'Technique', of: ({ grade }) => (grade.technique === null ? 'not ranked' : score(grade.technique)) },
  ...HABIT_IDS.map((id): Line => ({ name: HABIT_NAMES[id], of: ({ grade }) => score(grade.habits[id].score) })),
  { name: 'Tag', of: ({ grade }) => outcomeWords(grade.outcome) },
  { name: 'Time', of: ({ grade }) => clock(grade.outcome.timeS) },
  { name: 'Walked, m', of: ({ grade }) => String(grade.outcome.walkedM) },
  { name: 'Bearings', of: ({ bearings }) => String(bearings.length) },
  {
    name: 'Bearings, median error',
    of: ({ grade }) => (grade.outcome.bearingErrorDeg === null ? '–' : `${Math.round(grade.outcome.bearingErrorDeg)}°`),
  },
  { name: 'Beeps at quiet gain', of: ({ shares }) => `${Math.round(100 * shares.quiet)} %` },
];

function Columns({ own, steady }: { readonly own: Debriefing; readonly steady: Debriefing }) {
  return (
    <table class="steady-table">
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">What</span>
          </th>
          <th scope="col">This run</th>
          <th scope="col" class="steady-name">
            Steady walker
          </th>
        </tr>
      </thead>
      <tbody>
        {LINES.map(({ name, of }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td class="number">{of(own)}</td>
            <td class="number steady-value">{of(steady)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
