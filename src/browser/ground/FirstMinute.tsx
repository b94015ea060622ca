import { paused } from '../currentRun';
import { hands } from '../storage/hands';
import { FIRST_STEPS, type FirstStep, type HandsOn, handsOn, skipFirstMinute, stepNow } from './firstSteps';
import { KeyFace, keyName } from './KeyFace';

/** What to do with a finger or a mouse; keys are named as they are set. */
const WORDS: Readonly<Record<FirstStep, Readonly<Record<Exclude<HandsOn, 'keys'>, string>>>> = {
  turn: { touch: 'Turn the antenna: drag round its dial.', mouse: 'Turn the antenna: drag round its dial.' },
  gain: { touch: 'Less gain: draw its knob down.', mouse: 'Less gain: draw its knob to the left.' },
  walk: { touch: 'Walk: tap the map, or Walk ahead.', mouse: 'Walk: click the map, or Walk ahead.' },
  mark: { touch: 'Mark where it is loudest: tap Mark bearing.', mouse: 'Mark where it is loudest: click Mark bearing.' },
};

/** A key as it is drawn, and as it is said. */
function Pressed({ name }: { readonly name: string }) {
  return (
    <kbd>
      <span aria-hidden="true">
        <KeyFace name={name} />
      </span>
      <span class="unseen">{keyName(name)}</span>
    </kbd>
  );
}

function KeyWords({ step }: { readonly step: FirstStep }) {
  const { keys } = hands.value;
  switch (step) {
    case 'turn':
      return (
        <>
          Turn the antenna: hold <Pressed name={keys.turnLeft} /> or <Pressed name={keys.turnRight} />
        </>
      );
    case 'gain':
      return (
        <>
          Less gain: press <Pressed name={keys.gainDown} /> till it is faint
        </>
      );
    case 'walk':
      return (
        <>
          Walk ahead: press <Pressed name={keys.walk} />
        </>
      );
    case 'mark':
      return (
        <>
          Mark where it is loudest: press <Pressed name={keys.mark} />
        </>
      );
  }
}

/** The controls, a short line at a time, in the first run on a device; each goes when it was done. */
export function FirstMinute() {
  const step = stepNow.value;
  if (step === null || paused.value) return null;
  return (
    <div class="first-minute">
      <p role="status">
        {step === 'last' ? (
          'That is all it takes. The rest lies behind Pause.'
        ) : handsOn.value === 'keys' ? (
          <KeyWords step={step} />
        ) : (
          WORDS[step][handsOn.value]
        )}
      </p>
      {step !== 'last' && (
        <>
          <span class="first-minute-count number">
            {FIRST_STEPS.indexOf(step) + 1}/{FIRST_STEPS.length}
          </span>
          <button type="button" class="plain" aria-label="Skip the first steps" onClick={skipFirstMinute}>
            Skip
          </button>
        </>
      )}
    </div>
  );
}
