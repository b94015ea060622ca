import { useEffect } from 'preact/hooks';
import type { Recording } from '../../core/run/record';
import { LESSONS, type Scenario } from '../../core/scenario/schema';
import { OwnFile } from '../controls/OwnFile';
import { goTo } from '../route';
import { SettingsPanel } from '../settings/SettingsPanel';
import { unlockSound } from '../sound/unlock';
import { openBook } from '../storage/book';
import type { KeptRun } from '../storage/unfinished';
import { HillsDrawing } from './HillsDrawing';
import { LESSON_WORDS } from './lessonWords';
import { RecentRuns } from './RecentRuns';
import { type Shipped, shipped } from './shipped';
import { hasPractised, TodayCard, TodayDeed } from './TodayCard';
import { minutesOf, Unfinished } from './Unfinished';
import { VersionLine } from './VersionLine';

type Doors = {
  readonly onStart: (choice: Shipped) => void;
  readonly onOwn: (scenario: Scenario) => void;
  readonly onFinished: (key: number) => void;
  readonly onRunFile: (recording: Recording) => void;
  /** Unfinished runs, the newest first. */
  readonly kept: readonly KeptRun[];
  readonly onGoOn: (from: KeptRun) => void;
  readonly onForget: (run: KeptRun) => void;
};

/** What this is for, and one press into it. */
export function StartPage({ onStart, onOwn, onFinished, onRunFile, kept, onGoOn, onForget }: Doors) {
  const [newest, ...older] = kept;
  const first = shipped.find(({ scenario }) => scenario.lesson === 'quiet-gain') ?? shipped[0];
  useEffect(() => void openBook(), []);
  return (
    <div class="start">
      <HillsDrawing />
      <main class="start-body">
        <header class="start-head">
          <h1>Faintward</h1>
          <p class="start-sentence">
            Somewhere out there a small transmitter beeps. Turn the antenna, use as little gain as still hears it, and walk to it.
          </p>
          <div class="start-deeds">
            {hasPractised() && <TodayDeed />}
            {first && (
              <button type="button" class={hasPractised() ? 'start-go' : 'primary start-go'} onClick={() => onStart(first)}>
                Start
                <span class="start-go-what">{first.scenario.title}</span>
              </button>
            )}
            <button
              type="button"
              class="start-go"
              onClick={() => {
                unlockSound();
                goTo('/listen/back-signal');
              }}
            >
              Listening room
              <span class="start-go-what">hear what gain does</span>
            </button>
            {!hasPractised() && <TodayDeed />}
            {newest && (
              <button type="button" class="start-go" onClick={() => onGoOn(newest)}>
                Go on with {newest.run.scenario.title}
                <span class="start-go-what">
                  <span class="number">{minutesOf(newest)}</span> min walked
                </span>
              </button>
            )}
          </div>
          <p class="quiet">Headphones help. Sound begins soft; there are keys for everything: press ? in an exercise.</p>
        </header>
        <section class="start-list">
          <TodayCard />
          <h2>Exercises</h2>
          {shipped.length === 0 && <p class="quiet">None came with this copy.</p>}
          {LESSONS.map((lesson) => (
            <Ladder key={lesson} rungs={shipped.filter(({ scenario }) => scenario.lesson === lesson)} onStart={onStart} />
          ))}
          <OwnFile onOpen={onOwn} />
          <ClubDoors />
          {older.length > 0 && <Unfinished runs={kept} onGoOn={onGoOn} onForget={onForget} />}
          <RecentRuns onOpen={onFinished} onFile={onRunFile} />
        </section>
        <aside class="start-aside">
          <section>
            <h2>Before you take this outdoors</h2>
            <Cautions />
          </section>
          <section>
            <h2>Settings</h2>
            <SettingsPanel />
          </section>
        </aside>
        <VersionLine />
      </main>
    </div>
  );
}

/** For whoever runs the evening: one exercise for everybody. */
function ClubDoors() {
  return (
    <section class="club-doors">
      <h2>For a club evening</h2>
      <p class="quiet">
        One exercise for everybody, by code, link or file; at the end all runs in one table. Exercises are made at the desk. Nothing needs a
        server.
      </p>
      <div class="today-more">
        <button type="button" onClick={() => goTo('/share')}>
          Share an exercise
        </button>
        <button type="button" onClick={() => goTo('/club')}>
          Club table
        </button>
        <button type="button" onClick={() => goTo('/desk')}>
          Course desk
        </button>
      </div>
    </section>
  );
}

/** The exercises of one lesson, easiest first. */
function Ladder({ rungs, onStart }: { readonly rungs: readonly Shipped[]; readonly onStart: (choice: Shipped) => void }) {
  const lowest = rungs[0];
  if (!lowest) return null;
  return (
    <>
      <h3>{LESSON_WORDS[lowest.scenario.lesson]}</h3>
      <ul>
        {rungs.map((choice) => (
          <li key={choice.name}>
            <ExerciseLine choice={choice} onStart={onStart} />
          </li>
        ))}
      </ul>
    </>
  );
}

function ExerciseLine({ choice, onStart }: { readonly choice: Shipped; readonly onStart: (choice: Shipped) => void }) {
  const { title, brief, level, limits, parS } = choice.scenario;
  return (
    <button type="button" class="exercise" onClick={() => onStart(choice)}>
      <span class="exercise-title">{title}</span>
      <span class="exercise-lesson quiet">{parS === undefined ? 'without par' : `steady walker ${Math.round(parS / 60)} min`}</span>
      <span class="exercise-brief quiet">{brief}</span>
      <span class="exercise-level">
        <span class="unseen">Level {level} of 5, </span>
        <svg viewBox="0 0 58 10" width="58" height="10" aria-hidden="true">
          {[1, 2, 3, 4, 5].map((n) => (
            <circle key={n} class={n <= level ? 'level-on' : 'level-off'} cx={n * 12 - 7} cy="5" r="4" />
          ))}
        </svg>
        <span class="number quiet">{Math.round(limits.timeS / 60)} min at most</span>
      </span>
    </button>
  );
}

/** In our own words; local rules and the land's owner come first. */
function Cautions() {
  return (
    <ul class="cautions">
      <li>
        Keep yourself and the antenna 20 m from overhead lines. Lower it near them, cross under them only on a road or path, and never go
        near a fallen one.
      </li>
      <li>Watch the ground, not the receiver: steep slopes, old workings, water and soft banks don’t beep.</li>
      <li>Take the headphones off at roads. Begin soft, and rest your ears.</li>
      <li>Weather, dark and going alone: tell somebody your plan and turn back early.</li>
      <li>Other people’s land: ask first. Leave gates, stock, burrows and nests as they are.</li>
      <li>Transmitters need a licence or type approval where you are, and fitting one to an animal is work for licensed hands.</li>
      <li>
        What the law and the land’s owner say comes before anything said here. Being good at this program is not yet being good outdoors.
      </li>
    </ul>
  );
}
