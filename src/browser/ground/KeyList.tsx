import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { COMMANDS, type CommandId, keyOf, withSwapped } from '../input/commands';
import { choosingButton, gamepadSeen } from '../input/gamepad';
import { changeHands, hands, handsAsAtFirst } from '../storage/hands';
import { KeyFace, keyName } from './KeyFace';

/** The command whose key or button is being chosen. */
const choosing = signal<{ readonly id: CommandId; readonly what: 'key' | 'button' } | null>(null);

/** Buttons by where they sit on a gamepad of the standard layout. @source W3C Gamepad, standard gamepad */
const BUTTON_NAMES = [
  'lower',
  'right',
  'left',
  'upper',
  'left shoulder',
  'right shoulder',
  'left trigger',
  'right trigger',
  'select',
  'start',
  'left stick',
  'right stick',
  'pad up',
  'pad down',
  'pad left',
  'pad right',
];
const buttonName = (button: number | null): string => (button === null ? 'none' : (BUTTON_NAMES[button] ?? `button ${button + 1}`));

/** Every command with its key, and its button where there is a gamepad; press one to choose another. */
export function KeyList() {
  useEffect(() => stopChoosing, []);
  const { keys, buttons } = hands.value;
  const asked = choosing.value;
  const isAsked = (id: CommandId, what: 'key' | 'button') => asked?.id === id && asked.what === what;
  return (
    <>
      <p class="quiet keys-note" role="status">
        {asked
          ? `Press the ${asked.what} for: ${COMMANDS.find(({ id }) => id === asked.id)!.says}. Another press of the mouse leaves it.`
          : 'Choose a key to change it.'}
        {gamepadSeen.value && ' The left stick walks, the right stick turns the antenna.'}
      </p>
      <dl class="keys">
        {COMMANDS.map(({ id, says }) => (
          <div key={id} class="keys-line">
            <dt>
              <button
                type="button"
                class={isAsked(id, 'key') ? 'key-choice asked' : 'key-choice'}
                aria-label={`${says}: ${keyName(keys[id])}. Choose another key`}
                onClick={() => choose(id, 'key')}
              >
                {isAsked(id, 'key') ? '…' : <KeyFace name={keys[id]} />}
              </button>
              {gamepadSeen.value && (
                <button
                  type="button"
                  class={isAsked(id, 'button') ? 'key-choice asked' : 'key-choice'}
                  aria-label={`${says}: ${buttonName(buttons[id])} of the gamepad. Choose another button`}
                  onClick={() => choose(id, 'button')}
                >
                  {isAsked(id, 'button') ? '…' : buttonName(buttons[id])}
                </button>
              )}
            </dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      <button type="button" class="keys-first" onClick={handsAsAtFirst}>
        Keys and buttons as at first
      </button>
    </>
  );
}

let letGo: () => void = () => {};

function stopChoosing(): void {
  letGo();
  letGo = () => {};
  choosing.value = null;
}

function choose(id: CommandId, what: 'key' | 'button'): void {
  const again = choosing.peek()?.id === id && choosing.peek()?.what === what;
  stopChoosing();
  if (again) return;
  choosing.value = { id, what };
  if (what === 'button') {
    choosingButton.value = (button) => {
      changeHands({ buttons: withSwapped<number | null>(hands.peek().buttons, id, button) });
      stopChoosing();
    };
    letGo = () => {
      choosingButton.value = null;
    };
    return;
  }
  const taken = (event: KeyboardEvent) => {
    if (['Shift', 'Control', 'Alt', 'Meta', 'Tab'].includes(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
    changeHands({ keys: withSwapped(hands.peek().keys, id, keyOf(event)) });
    stopChoosing();
  };
  addEventListener('keydown', taken, true);
  letGo = () => removeEventListener('keydown', taken, true);
}
