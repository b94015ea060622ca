import type { Caution } from '../core/scenario/schema';

/** What to mind outdoors, one sentence a caution. */
export const CAUTION_WORDS: Readonly<Record<Caution, string>> = {
  wires: 'Overhead lines: stay 20 m away with the antenna lowered, cross only on a road or path, and never go near a fallen one.',
  heights: 'Steep ground and high places: a fall costs more than any find.',
  water: 'Water: keep off ice, weirs and soft banks.',
  roads: 'Roads: take the headphones off before you cross.',
  weather: 'Weather and dark: turn back early rather than late.',
  alone: 'Going alone: tell somebody where, and when you will be back.',
  land: 'Other people’s land: ask first, shut gates, mind burrows and nests.',
  hearing: 'Hearing: begin soft, and rest your ears.',
};
