import { useEffect } from 'preact/hooks';
import type { Action } from '../../core/run/actions';
import { CloseMark } from '../controls/marks';
import { act, comingState, heldUp, instructorThere, live, notebook, openRun, paused } from '../currentRun';
import type { CommandId } from '../input/commands';
import { groundGamepad } from '../input/gamepad';
import { groundKeys } from '../input/groundKeys';
import { answerInstructor } from '../instructor/runLink';
import { KeepNote } from '../KeepNote';
import { unlockSound } from '../sound/unlock';
import { change, settings, stepVolume } from '../storage/settings';
import { AntennaDial } from './AntennaDial';
import { AntennaHold } from './AntennaHold';
import { AttenuatorSteps } from './AttenuatorSteps';
import { Bar } from './Bar';
import { BriefSlip } from './BriefSlip';
import { placeShown, placingMe, sayIAmHere } from './beliefNow';
import { Caption } from './Caption';
import { Deeds } from './Deeds';
import { declare } from './declareNow';
import { FirstMinute } from './FirstMinute';
import { FixButton, FixSlip } from './FixSlip';
import { followFirstMinute } from './firstSteps';
import { chooseStart, closeFix, placingStart, toggleFix } from './fixNow';
import { GainSlide } from './GainSlide';
import { HintSlip } from './HintSlip';
import { inOrOut, KindControls, upOrDown } from './KindControls';
import { MapChrome } from './MapChrome';
import { MapWindowFrame } from './MapWindowFrame';
import { centreOnMe, lookFirst, mapSize, pan, placingPin, pointAt, zoom } from './mapView';
import { NotebookList } from './NotebookList';
import { PauseSheet } from './PauseSheet';
import { PhoneCompass } from './PhoneCompass';
import { PinInNotebook, PinNote } from './PinNote';
import { changePace, chosenPaceMPerS, paces } from './pace';
import { closePanels, notebookShown, tagsShown } from './panels';
import { pinNoteShown, tellOfPins } from './pinNow';
import { RuleOutButton, RuleOutSlip, RulingList } from './RuleOutSlip';
import { closeRuleOut, placingHatch, ruleOut, showRuleOut, toggleByHand, toggleRuleOut } from './ruleOutNow';
import { SkylineStrip } from './SkylineStrip';
import { SMeter } from './SMeter';
import { Spoken, sayHere } from './Spoken';
import { TagCheckList } from './TagCheckList';
import { TagButton, TagList, TagSlip, toggleTags } from './TagSlip';
import { TuningDial } from './TuningDial';
import { undoOf } from './undoNotebook';
import { keepWalking, WalkControl, walkOrStop } from './WalkControl';

/** The exercise itself: skyline over map, and one column of instruments. */
export function Ground({ onLeave }: { readonly onLeave: () => void }) {
  useEffect(() => {
    closePanels();
    closeFix();
    closeRuleOut();
    lookFirst();
    placingMe.value = false;
    const doing = (action: Action) => (action.type === 'declare' ? declare() : act(action));
    const hand = { state: comingState, paceMPerS: () => chosenPaceMPerS.peek(), act: doing, wish: grant, look: pan };
    const stopKeys = groundKeys(window, hand);
    const stopGamepad = groundGamepad({
      ...hand,
      fastestMPerS: () => paces.peek().at(-1)!.mPerS,
      resting: () => paused.peek(),
      goOn() {
        if (heldUp.peek()) return;
        unlockSound();
        paused.value = false;
      },
    });
    const stopPins = tellOfPins();
    const stopFirst = followFirstMinute(window);
    const rest = () => {
      paused.value = true;
    };
    const restHidden = () => {
      if (document.hidden) rest();
    };
    // With an instructor beside, a click into the other window takes the focus away and nobody has left.
    const restLeft = () => {
      if (!instructorThere.peek()) rest();
    };
    const stopAnswering = answerInstructor();
    window.addEventListener('blur', restLeft);
    document.addEventListener('visibilitychange', restHidden);
    return () => {
      stopPins();
      stopFirst();
      stopKeys();
      stopGamepad();
      stopAnswering();
      window.removeEventListener('blur', restLeft);
      document.removeEventListener('visibilitychange', restHidden);
    };
  }, []);
  if (!openRun.value) return null;
  return (
    <main class={openRun.value.exercise.scenario.aids.sMeter ? 'ground' : 'ground without-meter'} onMouseDown={keepFocus}>
      <Spoken />
      <Bar />
      <SkylineStrip />
      <div class="map">
        <MapWindowFrame />
        <MapChrome />
        <BriefSlip />
        <div class="map-foot">
          <HintSlip />
          <KeepNote />
          <FirstMinute />
          <Caption />
          <PhoneCompass />
          <div class="walk-rows">
            <WalkControl />
            <KindControls />
          </div>
        </div>
        {notebookShown.value && <NotebookSlip />}
        <FixSlip />
        <PinNote />
        <RuleOutSlip />
        <TagSlip />
      </div>
      <div class="panel">
        <AntennaHold />
        <AntennaDial />
        <GainSlide />
        <AttenuatorSteps />
        <TuningDial />
        <SMeter />
        <section class="notebook" aria-label="Notebook">
          <div class="notebook-head">
            <h2 class="label">Notebook {notebook.value.length > 0 && <span class="number">{notebook.value.length}</span>}</h2>
            <div class="notebook-buttons">
              <RuleOutButton />
              <TagButton />
              <FixButton />
            </div>
          </div>
          <NotebookList />
        </section>
        <Deeds />
      </div>
      {paused.value && <PauseSheet onLeave={onLeave} />}
    </main>
  );
}

function NotebookSlip() {
  return (
    <aside class="slip" aria-label="Notebook">
      <button
        type="button"
        class="plain slip-close"
        aria-label="Put the notebook away"
        onClick={() => {
          notebookShown.value = false;
        }}
      >
        <CloseMark />
      </button>
      <h2>Notebook</h2>
      <div class="notebook-buttons">
        <RuleOutButton />
        <FixButton />
      </div>
      <NotebookList />
      <PinInNotebook />
      <RulingList />
      <h2 class="notebook-tags">Tags</h2>
      <TagList />
      <TagCheckList />
    </aside>
  );
}

/** A click must not take the focus: the next space would press that button again instead of walking. */
function keepFocus(event: MouseEvent): void {
  if (event.target instanceof Element && event.target.closest('button')) event.preventDefault();
}

function grant(wish: CommandId): void {
  switch (wish) {
    case 'pause':
      if (!heldUp.peek()) paused.value = !paused.peek();
      return;
    case 'pin':
      placingPin.value = !placingPin.peek();
      placingHatch.value = false;
      return;
    case 'vehicle':
      inOrOut();
      return;
    case 'climb':
      upOrDown();
      return;
    case 'iAmHere':
      placingMe.value = !placeShown.peek() && !placingMe.peek();
      if (placingMe.peek()) placingPin.value = false;
      return;
    case 'place':
      setInTheMiddle();
      return;
    case 'fix':
      closeRuleOut();
      toggleFix();
      return;
    case 'ruleOut':
    case 'ruleOutInView':
    case 'ruleOutByHand':
      closeFix();
      if (wish === 'ruleOut') toggleRuleOut();
      else if (wish === 'ruleOutByHand') toggleByHand();
      else {
        showRuleOut();
        ruleOut(null);
      }
      return;
    case 'leave':
      closeFix();
      closeRuleOut();
      pinNoteShown.value = false;
      placingPin.value = false;
      placingMe.value = false;
      notebookShown.value = false;
      tagsShown.value = false;
      return;
    case 'tags':
      toggleTags();
      return;
    case 'undo': {
      const back = undoOf(live.peek()?.log ?? []);
      if (back) act(back);
      return;
    }
    case 'sayHere':
      sayHere();
      return;
    case 'walk':
      walkOrStop();
      return;
    case 'faster':
    case 'slower':
      changePace(wish === 'faster' ? 1 : -1);
      keepWalking();
      return;
    case 'closer':
    case 'farther':
      zoom(wish === 'closer' ? 1.25 : 0.8);
      return;
    case 'centre':
      centreOnMe();
      return;
    case 'louder':
    case 'softer':
      stepVolume(wish === 'louder' ? 1 : -1);
      return;
    case 'mute':
      change({ muted: !settings.peek().muted });
      return;
  }
}

/** What is being placed comes to the middle of the map. */
function setInTheMiddle(): void {
  const middle = pointAt({ x: mapSize.peek().width / 2, y: mapSize.peek().height / 2 });
  if (placingStart.peek()) chooseStart(middle);
  else if (placingMe.peek()) sayIAmHere(middle);
  else if (placingHatch.peek()) ruleOut(middle);
  else if (placingPin.peek()) {
    act({ type: 'guess', at: middle });
    placingPin.value = false;
  }
}
