import type { Scenario } from '../scenario/schema';

type Lesson = Scenario['lesson'];
type ReliefStyle = Scenario['ground']['relief']['style'];

const FIRST = ['Vethra', 'Ulmsey', 'Korrow', 'Dwimmer', 'Ossel', 'Tharn', 'Quillet', 'Marlow', 'Hesper', 'Brannoc', 'Yewick', 'Saddock'];
const SECOND: Readonly<Record<ReliefStyle, readonly string[]>> = {
  ridged: ['Ridges', 'Edge', 'Rigg'],
  smooth: ['Fell', 'Down', 'Common'],
  plateau: ['Moor', 'Tops', 'Heath'],
  dale: ['Dale', 'Beck', 'Bottom'],
  coast: ['Shore', 'Head', 'Sands'],
  fen: ['Fen', 'Level', 'Carr'],
};
const ANIMALS = ['sheepdog', 'terrier', 'goshawk', 'ewe', 'hare', 'hound', 'owl', 'hind'];
const NAMES = ['Tamsin', 'Moss', 'Pip', 'Wren', 'Bracken', 'Fettle', 'Nettle', 'Rook', 'Sorrel', 'Dart', 'Teasel', 'Juniper'];

const ADVICE: Readonly<Record<Lesson, string>> = {
  'quiet-gain': 'The gain you start with is far too high: take it away until one side is left, then sweep.',
  'back-signal': 'With this much gain the back sounds like the front. Turn all round before you believe a side.',
  axis: 'The whip lies nearly flat. Try the antenna upright and flat, and keep the axis that needs less gain.',
  bounce: 'A hillside may shine louder than the tag. Read again from another place before you walk far.',
  wires: 'A line of wires lies between. Near it everything points at the wires: read well back, on both sides.',
  'clear-view': 'The beep is shut in by hills and trees. Read where the ground sees far.',
  crossing: 'Take three or more bearings from well-spread places before you walk in.',
  moving: 'The tag does not stay. Old bearings go stale: keep moving and read again.',
  several: 'Several tags are out. Tune to the first of the list and find that one.',
  night: 'It is dark and your place is not shown on the map. Keep the line of your bearings.',
  'close-in': 'It is close. Attenuator, short steps, and look again after each.',
  search: 'Nobody knows where it went. Find a place to hear it from first.',
};

/** Names for a drawn exercise, all invented; `pick` draws one of a list. */
export function drawnWords(
  lesson: Lesson,
  style: ReliefStyle,
  pick: <T>(list: readonly T[]) => T,
): { title: string; brief: string; names: string[] } {
  const title = `${pick(FIRST)} ${pick(SECOND[style])}`;
  const first = pick(NAMES);
  const names = [first, ...NAMES.filter((name) => name !== first)];
  return { title, brief: `${first}, a ${pick(ANIMALS)} of the club, is somewhere out on ${title}. ${ADVICE[lesson]}`, names };
}
