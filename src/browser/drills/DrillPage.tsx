import { useEffect, useMemo } from 'preact/hooks';
import type { Drill } from '../../core/drills/drill';
import { numberText, type SessionKind } from '../../core/drills/session';
import { sessionsOf } from '../../core/logbook/book';
import { COMPASS_WORDS, deviceCompass, mayHaveCompass } from '../input/deviceCompass';
import { beepWords } from '../soundRing/beepWords';
import { book } from '../storage/book';
import { settings as deviceSettings } from '../storage/settings';
import { Answers, VerdictLine } from './Answers';
import { DrillControls } from './DrillControls';
import { DrillDial } from './DrillDial';
import { goTo } from './drillAddress';
import { drillKeys } from './drillKeys';
import { begin, forgetDrill, openDrill } from './drillPlay';
import { openBeeps } from './drillSound';
import { beat, hinted, now, pin, reachable, session, set, settings, stage, trial, truthShown } from './drillState';
import { Ended } from './Ended';
import { KeyLine } from './KeyLine';
import { PageHead } from './PageHead';
import { PlanWithPin } from './PlanWithPin';
import { TrialDots } from './TrialDots';

const toList = () => goTo('/drills');

/** One drill from its first gesture to its number. */
export function DrillPage({ drill, kind }: { readonly drill: Drill; readonly kind: SessionKind }) {
  useEffect(() => {
    const stops = [openBeeps(), drillKeys(toList), forgetDrill];
    void openDrill(drill, kind);
    return () => {
      for (const stop of stops) stop();
    };
  }, [drill, kind]);
  if (session.value?.drill !== drill) return null;
  return (
    <main class="drill">
      <PageHead title={drill.title} out="All drills" onLeave={toList}>
        <TrialDots />
      </PageHead>
      {stage.value === 'waiting' ? <Waiting drill={drill} kind={kind} /> : <Board />}
    </main>
  );
}

/** Before the first gesture: what it is about. */
function Waiting({ drill, kind }: { readonly drill: Drill; readonly kind: SessionKind }) {
  const before = sessionsOf(book.value ?? [], drill.id).at(-1);
  return (
    <div class="drill-waiting">
      <p class="drill-skill">Practise to {drill.skill}.</p>
      <p class="quiet">
        {before ? `Last time: ${numberText(drill, before.number)}${drill.unit === '°' ? '' : ' '}${drill.unit} ${drill.measures}. ` : ''}
        {kind === 'check'
          ? 'A check: no hints, and no word on any answer before the end.'
          : 'It grows harder as you get it right, and easier again.'}
      </p>
      {drill.caution && <p class="drill-caution">{drill.caution}</p>}
      <button type="button" class="primary drill-begin" onClick={begin}>
        Begin <kbd>Enter</kbd>
      </button>
      <p class="quiet">Headphones on. About a minute, {drill.trials} questions.</p>
    </div>
  );
}

/** Dial, controls and answers; a blind test has them too. */
export function Board() {
  const open = session.value!;
  const given = trial.value!;
  const over = stage.value === 'over';
  return (
    <div class={boardKind(Boolean(given.plan))}>
      <div class="drill-words">
        {stage.value === 'example' && <Example steps={open.drill.example} />}
        {stage.value === 'trial' && <p class="drill-ask">{given.ask}</p>}
        {stage.value === 'trial' && hinted.value && <p class="drill-hint">{given.hint}</p>}
        {over && <Ended />}
        <VerdictLine />
        {(stage.value === 'verdict' || over || stage.value === 'example') && <p class="quiet">{given.truth.said}</p>}
      </div>
      <div class="drill-dial-place">
        <DrillDial />
        <CompassButton />
        <Caption />
      </div>
      <div class="drill-set">
        <DrillControls />
      </div>
      <div class="drill-plan">
        <PlanWithPin />
      </div>
      {!over && <Answers />}
      <KeyLine />
    </div>
  );
}

/** Where the pin is to be put, the plan takes the dial's place. */
function boardKind(hasPlan: boolean): string {
  if (stage.value === 'trial' && pin.value) return 'drill-board drill-board-pin';
  return hasPlan || truthShown.value ? 'drill-board drill-board-plan' : 'drill-board';
}

function Example({ steps }: { readonly steps: readonly string[] }) {
  return (
    <section class="drill-example">
      <h2>How it is done</h2>
      <ol>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p class="quiet">Here it is as it should end: the truth is drawn in, the antenna is where it belongs. Try it.</p>
    </section>
  );
}

/** The phone as the antenna, where there is a compass in it. */
function CompassButton() {
  const compass = useMemo(
    () =>
      deviceCompass(
        () => settings.peek().headingDeg,
        (headingDeg) => set({ headingDeg }),
      ),
    [],
  );
  useEffect(() => compass.leave, []);
  if (!mayHaveCompass() || !(reachable('headingDeg') || truthShown.value)) return null;
  const state = compass.state.value;
  return (
    <>
      <button
        type="button"
        class="drill-compass"
        aria-pressed={state === 'on'}
        aria-label="Turn the antenna with the phone"
        onClick={() => void compass.toggle()}
      >
        Compass
      </button>
      {COMPASS_WORDS[state] && <p role="status">{COMPASS_WORDS[state]}</p>}
    </>
  );
}

/** What is heard in words and as a bar, for those who asked for it: results say so. */
function Caption() {
  const heard = now.value;
  if (!deviceSettings.value.captions || !heard) return null;
  const share = Math.min(1, Math.max(0, heard.loudnessDb / 60));
  return (
    <div class="drill-caption" key={beat.value}>
      <span>Beep {beepWords(heard)}</span>
      <svg class="drill-caption-level" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect class="drill-caption-room" width="100" height="6" />
        <rect class="drill-caption-bar" width={(100 * share).toFixed(1)} height="6" />
      </svg>
    </div>
  );
}
