/** Everything that a key or a button can ask for, with the key and the button it has at first. */
const LIST = [
  { id: 'turnLeft', key: 'ArrowLeft', button: null, says: 'turn the antenna left, with Shift slowly' },
  { id: 'turnRight', key: 'ArrowRight', button: null, says: 'turn the antenna right, with Shift slowly' },
  { id: 'gainUp', key: 'ArrowUp', button: 7, says: 'more gain, with Shift by 5 dB' },
  { id: 'gainDown', key: 'ArrowDown', button: 6, says: 'less gain, with Shift by 5 dB' },
  { id: 'attenuatorLess', key: '[', button: 4, says: 'attenuator 10 dB less' },
  { id: 'attenuatorMore', key: ']', button: 5, says: 'attenuator 10 dB more' },
  { id: 'tuneDown', key: ',', button: 14, says: 'tune 50 Hz down, with Shift 10 Hz' },
  { id: 'tuneUp', key: '.', button: 15, says: 'tune 50 Hz up, with Shift 10 Hz' },
  { id: 'axis', key: 'r', button: 1, says: 'antenna flat or upright' },
  { id: 'raise', key: 'e', button: 11, says: 'antenna raised or at the chest' },
  { id: 'walkNorth', key: 'w', button: null, says: 'walk north' },
  { id: 'walkWest', key: 'a', button: null, says: 'walk west' },
  { id: 'walkSouth', key: 's', button: null, says: 'walk south' },
  { id: 'walkEast', key: 'd', button: null, says: 'walk east' },
  { id: 'walk', key: ' ', button: 2, says: 'walk ahead along the antenna, or stop' },
  { id: 'vehicle', key: '1', button: null, says: 'get into the vehicle or out of it, where there is one' },
  { id: 'climb', key: '2', button: null, says: 'climb a roof that may be climbed, or come down' },
  { id: 'slower', key: 'z', button: 13, says: 'slower' },
  { id: 'faster', key: 'x', button: 12, says: 'faster' },
  { id: 'mark', key: 'm', button: 0, says: 'mark the bearing' },
  { id: 'undo', key: 'u', button: null, says: 'undo the last line of the notebook' },
  { id: 'pin', key: 'g', button: 10, says: 'guess pin: then a tap, or the next key for the middle of the map' },
  { id: 'place', key: 'Enter', button: null, says: 'set what is being placed in the middle of the map' },
  {
    id: 'iAmHere',
    key: 'o',
    button: null,
    says: 'say where I am, where the map does not show it: then a tap, or the key that sets what is placed',
  },
  { id: 'leave', key: 'Escape', button: null, says: 'put away what lies open' },
  { id: 'fix', key: 't', button: null, says: 'fix from the notebook, where the exercise has it' },
  { id: 'ruleOut', key: 'h', button: null, says: 'rule out ground: where the tag can’t be' },
  { id: 'ruleOutInView', key: 'v', button: null, says: 'rule out all ground in view from here' },
  { id: 'ruleOutByHand', key: 'b', button: null, says: 'rule out ground by hand: then a tap, or the key that sets what is placed' },
  { id: 'tags', key: 'n', button: 8, says: 'tags and their frequencies' },
  { id: 'beat', key: 'y', button: null, says: 'press on each beep: counts the tag’s rate' },
  { id: 'declare', key: 'f', button: 3, says: 'declare the find' },
  { id: 'closer', key: '+', button: null, says: 'map closer' },
  { id: 'farther', key: '-', button: null, says: 'map farther' },
  { id: 'lookUp', key: 'i', button: null, says: 'look north on the map' },
  { id: 'lookLeft', key: 'j', button: null, says: 'look west on the map' },
  { id: 'lookDown', key: 'k', button: null, says: 'look south on the map' },
  { id: 'lookRight', key: 'l', button: null, says: 'look east on the map' },
  { id: 'centre', key: 'c', button: null, says: 'centre the map on me' },
  { id: 'sayHere', key: 'q', button: null, says: 'say where I stand and how all is set' },
  { id: 'louder', key: '*', button: null, says: 'louder' },
  { id: 'softer', key: '/', button: null, says: 'softer' },
  { id: 'mute', key: '0', button: null, says: 'sound off or on' },
  { id: 'pause', key: 'p', button: 9, says: 'pause' },
] as const;

export type CommandId = (typeof LIST)[number]['id'];
export type Command = { readonly id: CommandId; readonly key: string; readonly button: number | null; readonly says: string };
export const COMMANDS: readonly Command[] = LIST;

/** Which key asks for what, and which button of a gamepad. */
export type Keys = Readonly<Record<CommandId, string>>;
export type Buttons = Readonly<Record<CommandId, number | null>>;
export const FIRST_KEYS = Object.fromEntries(LIST.map(({ id, key }) => [id, key])) as Keys;
export const FIRST_BUTTONS = Object.fromEntries(LIST.map(({ id, button }) => [id, button])) as Buttons;

/** The key of an event as it is bound: letters small. */
export const keyOf = ({ key }: Pick<KeyboardEvent, 'key'>): string => (key.length === 1 ? key.toLowerCase() : key);

/** With Shift, or on another layout, these mean the same key. */
const SAME_KEY: Readonly<Record<string, string>> = { '<': ',', '>': '.', '{': '[', '}': ']', '=': '+', '?': 'p' };

export function commandOfKey(keys: Keys, key: string): CommandId | null {
  const bound = (wanted: string | undefined) => COMMANDS.find(({ id }) => keys[id] === wanted)?.id ?? null;
  return bound(key) ?? bound(SAME_KEY[key]);
}

/** One command takes a key; the command that had it gets the other's. */
export function withSwapped<V>(bound: Readonly<Record<CommandId, V>>, id: CommandId, value: V): Readonly<Record<CommandId, V>> {
  const had = COMMANDS.find((command) => command.id !== id && bound[command.id] === value);
  return { ...bound, ...(had ? { [had.id]: bound[id] } : {}), [id]: value };
}
