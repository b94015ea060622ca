import { effect, useSignal } from '@preact/signals';
import { render } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Recording } from '../core/run/record';
import type { Scenario } from '../core/scenario/schema';
import { leaveRun, openRun, paused } from './currentRun';
import { GoingThrough } from './debrief/GoingThrough';
import './design/design.css';
import './controls/slide.css';
import './start/start.css';
import './start/version.css';
import './settings/settings.css';
import './ground/ground.css';
import './ground/mapChrome.css';
import './ground/sheet.css';
import './ground/panel.css';
import './ground/firstMinute.css';
import './ground/fix.css';
import './ground/pinNote.css';
import './ground/ruleOut.css';
import './ground/tags.css';
import './ground/hintSlip.css';
import './ground/panelOnPhones.css';
import './debrief/rating.css';
import './debrief/debrief.css';
import './debrief/debriefMap.css';
import './debrief/debriefParts.css';
import './debrief/debriefPrint.css';
import { finishedRun, forgetFinished, openKept, openRecording, reading } from './finishedRun';
import './logbook/logbook.css';
import './start/today.css';
import { laterRoom, PartMissing } from './laterRoom';
import { opening, openRunOf, openSound, runFileText, sound, tendRun } from './openExercise';
import { goTo, route } from './route';
import { startRunClock } from './runClock';
import { enterRun } from './runEntry';
import { ownExercise } from './share/ownExercise';
import { unlockSound } from './sound/unlock';
import { LESSON_WORDS } from './start/lessonWords';
import { Opening } from './start/Opening';
import { StartPage } from './start/StartPage';
import { shipped } from './start/shipped';
import { keepSettings } from './storage/settings';
import { forgetOldest, forgetUnfinished, type KeptRun, unfinishedRuns } from './storage/unfinished';

/** An exercise of the person's own, or a kept run, on its way to `#/ground/own`. */
let own: { readonly scenario: Scenario; readonly kept: KeptRun | null } | null = null;

function start(name: string): void {
  unlockSound();
  leaveRun();
  goTo(`/ground/${encodeURIComponent(name)}`);
}

function startOwn(scenario: Scenario, kept: KeptRun | null = null): void {
  own = { scenario, kept };
  start(shipped.find((choice) => choice.scenario === scenario)?.name ?? 'own');
}

function leave(): void {
  paused.value = true;
  goTo('/');
}

/** The exercise of the address that the open run came from. */
let openedAs: string | null = null;

/** Opens what the address names, unless it is open already. */
function followRoute(): void {
  const now = route.value;
  if (now.room === 'debrief') {
    followDebrief(now.key);
    return;
  }
  if (now.room !== 'ground' && (openRun.peek() || reading.peek())) {
    leaveRun();
    forgetFinished();
    return;
  }
  if (now.room !== 'ground') return;
  if (now.name === openedAs && (opening.peek() || (openRun.peek() && !finishedRun.peek()))) return;
  if (openRun.peek()) {
    // The address names another exercise, or the run is over: it is kept, and the exercise opened.
    leaveRun();
    forgetFinished();
  }
  openedAs = now.name;
  const named = own && now.name === 'own' ? own : (shipped.find(({ name }) => name === now.name) ?? null);
  if (!named) {
    goTo('/');
    return;
  }
  void openRunOf(named.scenario, 'kept' in named ? named.kept : null, Ground.ahead());
}

/** The run that is open, or the kept one that the address names. */
function followDebrief(key: number | null): void {
  const open = finishedRun.peek();
  if (reading.peek() || (open && (key === null || open.key === key))) return;
  leaveRun();
  if (key === null) goTo('/');
  else {
    void openKept(key).then((found) => {
      if (!found) goTo('/');
    });
  }
}

const Ground = laterRoom(async () => (await import('./ground/Ground')).Ground);
const Debrief = laterRoom(async () => (await import('./debrief/Debrief')).Debrief);
const Logbook = laterRoom(async () => (await import('./logbook/Logbook')).Logbook);
const Club = laterRoom(async () => (await import('./club/Club')).Club);
const Desk = laterRoom(async () => (await import('./desk/Desk')).Desk);
const Instructor = laterRoom(async () => (await import('./instructor/Instructor')).Instructor);
const Share = laterRoom(async () => (await import('./share/Share')).Share);
const ScoreCode = laterRoom(async () => (await import('./share/ScoreCode')).ScoreCode, PartMissing);
const CardByLink = laterRoom(async () => (await import('./share/CardByLink')).CardByLink);
const ExerciseByLink = laterRoom(async () => (await import('./share/ExerciseByLink')).ExerciseByLink);

function Rooms() {
  const now = route.value;
  if (now.room === 'elsewhere') return null; // entry.ts opens it
  if (now.room === 'ground') {
    if (opening.value) return <OpeningRoom />;
    return openRun.value ? <Ground onLeave={leave} /> : null;
  }
  if (now.room === 'debrief') {
    if (reading.value) return <GoingThrough onBack={() => goTo('/')} />;
    if (!openRun.value || !finishedRun.value) return null;
    return (
      <Debrief
        runFileText={runFileText}
        openSound={openSound}
        sound={sound}
        onGraded={enterRun}
        ScoreCode={ScoreCode}
        onAgain={again}
        onOther={() => goTo('/')}
      />
    );
  }
  if (now.room === 'logbook')
    return <Logbook onBack={() => goTo('/')} onDrills={() => goTo('/drills')} onDebrief={(key) => goTo(`/debrief/${key}`)} />;
  if (now.room === 'instructor') return <Instructor onBack={() => goTo('/')} />;
  if (now.room === 'club') return <Club shipped={shipped} onBack={() => goTo('/')} onDebrief={openRunFile} />;
  if (now.room === 'desk')
    return (
      <Desk
        lessons={LESSON_WORDS}
        shipped={shipped}
        onWalk={(scenario) => startOwn(scenario)}
        onShare={shareOwn}
        onBack={() => goTo('/')}
      />
    );
  if (now.room === 'share')
    return (
      <Share choices={shipped} name={now.name} onChoose={(name) => goTo(`/share/${encodeURIComponent(name)}`)} onBack={() => goTo('/')} />
    );
  if (now.room === 'card') return <CardByLink packed={now.packed} onBack={() => goTo('/')} />;
  if (now.room === 'exercise') return <ExerciseByLink packed={now.packed} onStart={startOwn} onBack={() => goTo('/')} />;
  return <StartRoom />;
}

function shareOwn(scenario: Scenario): void {
  ownExercise.value = scenario;
  goTo('/share/own');
}

function openRunFile(recording: Recording): void {
  void openRecording(recording);
  goTo('/debrief');
}

function again(): void {
  const scenario = openRun.peek()!.exercise.scenario;
  leaveRun();
  startOwn(scenario);
}

function OpeningRoom() {
  const { scenario, stage, fault } = opening.value!;
  if (fault === null) return <Opening scenario={scenario} stage={stage} />;
  return (
    <main class="opening">
      <div class="opening-inner">
        <h1>{scenario.title}</h1>
        <p role="alert">This exercise could not be opened: {fault}</p>
        <button
          type="button"
          onClick={() => {
            opening.value = null;
            goTo('/');
          }}
        >
          Back
        </button>
      </div>
    </main>
  );
}

function StartRoom() {
  const kept = useSignal<readonly KeptRun[]>([]);
  const look = async () => {
    kept.value = await unfinishedRuns();
  };
  useEffect(() => {
    void forgetOldest().then(look);
  }, []);
  return (
    <StartPage
      kept={kept.value}
      onStart={({ name }) => start(name)}
      onOwn={startOwn}
      onFinished={(key) => goTo(`/debrief/${key}`)}
      onRunFile={openRunFile}
      onGoOn={(from) => {
        own = { scenario: from.run.scenario, kept: from };
        start('own');
      }}
      onForget={({ name }) => void forgetUnfinished(name).then(look)}
    />
  );
}

keepSettings();
startRunClock(() => sound.peek());
tendRun((key) => goTo(key === null ? '/debrief' : `/debrief/${key}`));
effect(followRoute);
// A run that is being played needs its debrief, and the network may be gone by then.
effect(() => {
  if (openRun.value) void Debrief.ahead();
});
render(<Rooms />, document.getElementById('app')!);
