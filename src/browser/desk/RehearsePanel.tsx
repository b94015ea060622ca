import type { ArrowKind } from '../../core/debrief/lossBudget';
import type { Verdict } from '../../core/desk/verdict';
import type { Scenario } from '../../core/scenario/schema';
import { Segments } from '../controls/Segments';
import { draft, land, lookAt, setField, sound } from './deskState';
import { beginRehearsal, going, outdated, rehearsalFault, stopRehearsal, verdict, WALK_COUNTS, walkCount } from './rehearsals';

type Lessons = Readonly<Record<Scenario['lesson'], string>>;
const minutes = (s: number): string => String(Math.max(1, Math.round(s / 60)));

/** Sends the steady walker through the exercise many times and tells what came of it. */
export function RehearsePanel({ lessons }: { readonly lessons: Lessons }) {
  const said = verdict.value;
  return (
    <div class="desk-rehearse">
      <p class="quiet">The steady walker does the exercise from sound and map alone, each time with another ear.</p>
      <Segments
        name="Walks"
        choices={WALK_COUNTS.map((count) => ({ value: count, text: `${count} walks` }))}
        chosen={walkCount.value}
        onChoose={(count) => {
          walkCount.value = count;
        }}
      />
      <div class="desk-deeds">
        <button type="button" class="primary" disabled={!sound.value || !land.value || going.value !== null} onClick={beginRehearsal}>
          Rehearse
        </button>
        {going.value && (
          <button type="button" onClick={stopRehearsal}>
            Stop
          </button>
        )}
      </div>
      <Going />
      {rehearsalFault.value !== '' && <p role="alert">{rehearsalFault.value}</p>}
      {!sound.value && <p class="quiet">It can be rehearsed once it is without fault.</p>}
      {outdated.value && !going.value && <p class="quiet">The exercise was changed since the last rehearsal.</p>}
      {said && !going.value && <Said verdict={said} lessons={lessons} />}
    </div>
  );
}

function Going() {
  const now = going.value;
  if (!now) return null;
  return (
    <>
      <div
        class="layer-progress"
        role="progressbar"
        aria-label="Rehearsal"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(100 * now.share)}
      >
        <span style={{ width: `${100 * now.share}%` }} />
      </div>
      <p class="quiet" role="status">
        <span class="number">{now.walks}</span> of <span class="number">{now.of}</span> walks over, the tag found in{' '}
        <span class="number">{now.found}</span>.
      </p>
    </>
  );
}

const SOLVABLE: Readonly<Record<Verdict['solvable'], string>> = {
  yes: 'It can be solved',
  mostly: 'It is solved more often than not',
  seldom: 'It is seldom solved',
  no: 'Nobody has solved it',
};

const WAVES: Readonly<Record<ArrowKind, string>> = {
  direct: 'the direct wave',
  hillside: 'a hillside',
  wall: 'a wall',
  wire: 'a power line',
  scatter: 'scatter from all round',
};

function Said({ verdict: said, lessons }: { readonly verdict: Verdict; readonly lessons: Lessons }) {
  const scenario = draft.value!;
  const own = lessons[scenario.lesson];
  return (
    <div class="desk-verdict">
      <section>
        <h2>{SOLVABLE[said.solvable]}</h2>
        <p>
          Found in <b class="number">{said.found}</b> of <b class="number">{said.walks}</b> walks.
        </p>
      </section>
      {said.timeS && (
        <section>
          <h2>How long</h2>
          <p>
            <b class="number">{minutes(said.timeS.middle)}</b> min in the middle, <b class="number">{minutes(said.timeS.fastest)}</b> to{' '}
            <b class="number">{minutes(said.timeS.slowest)}</b>; <b class="number">{minutes(scenario.limits.timeS)}</b> min are there.
          </p>
          {scenario.parS !== Math.round(said.timeS.middle) && (
            <button type="button" onClick={() => setField('parS', Math.round(said.timeS!.middle), 'take the middle time as par')}>
              Take the middle as par
            </button>
          )}
        </section>
      )}
      <section>
        <h2>Where it misleads</h2>
        <p>
          {said.misleadingShare === null ? (
            'No bearing was taken.'
          ) : (
            <>
              <b class="number">{Math.round(100 * said.misleadingShare)}</b> % of <b class="number">{said.bearings}</b> bearings are off by
              more than 15°; the middle one by <b class="number">{Math.round(said.middleErrorDeg!)}</b>°.
              {said.found > 0 && (
                <>
                  {' '}
                  That is like level <b class="number">{said.likeLevel}</b>
                  {said.likeLevel === scenario.level ? ', as it says.' : `; it says ${scenario.level}.`}
                </>
              )}
            </>
          )}
        </p>
        <ul class="desk-places">
          {said.places.slice(0, 5).map(({ at, bearings, offDeg, by }) => (
            <li key={`${at.eM}/${at.nM}`}>
              <button
                type="button"
                class="desk-place"
                onClick={() => {
                  lookAt.value = { ...at };
                }}
              >
                <span>
                  {bearings} off by {Math.round(offDeg)}°; strongest there: {WAVES[by]}
                </span>
                <span class="quiet number">
                  {at.eM} · {at.nM}
                </span>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>What it teaches</h2>
        <p>{said.teachesItsLesson ? `Its lesson, ${own}, is in it.` : `Its lesson, ${own}, did not show in the rehearsals.`}</p>
        <ul class="desk-lessons">
          {said.lessons.map(({ lesson, because }) => (
            <li key={lesson}>
              <b>{lessons[lesson]}</b>: {because}
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>What is unfair</h2>
        {said.unfair.length === 0 && <p>Nothing that was looked for.</p>}
        <ul class="desk-lessons">
          {said.unfair.map(({ found, mend }) => (
            <li key={found}>
              {found}. <span class="quiet">Mend: {mend}.</span>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}
