import type { SetDownKind } from '../../core/desk/setDown';
import type { AntennaId, Caution, CoverName, GroundPlan, LinePlan, Scenario, Tag } from '../../core/scenario/schema';

export const SET_DOWN_WORDS: Readonly<Record<SetDownKind, string>> = {
  tag: 'Tag',
  building: 'Building',
  wall: 'Wall',
  'power-line': 'Power line',
  patch: 'Patch of cover',
};

export const COVER_WORDS: Readonly<Record<CoverName, string>> = {
  open: 'Open',
  wood: 'Wood',
  scrub: 'Scrub',
  wet: 'Wet ground',
  water: 'Water',
  rock: 'Rock',
};

export const RELIEF_WORDS: Readonly<Record<GroundPlan['relief']['style'], string>> = {
  ridged: 'Ridges',
  smooth: 'Gentle',
  plateau: 'Plateau',
  dale: 'Dales',
  coast: 'Coast',
  fen: 'Fen',
};

export const ANTENNA_WORDS: Readonly<Record<AntennaId, string>> = {
  yagi3: 'Yagi, three elements',
  yagi2: 'Yagi, two elements',
  phased2: 'Two phased dipoles',
  yagi5: 'Long Yagi, five elements',
  loop: 'Loop',
  whip: 'Whip',
};

export const CAUTION_NAMES: Readonly<Record<Caution, string>> = {
  wires: 'Wires',
  heights: 'Heights',
  water: 'Water',
  roads: 'Roads',
  weather: 'Weather and dark',
  alone: 'Going alone',
  land: 'Other people’s land',
  hearing: 'Hearing',
};

export const AID_NAMES: Readonly<Record<keyof Scenario['aids'], string>> = {
  ownPosition: 'Own place on the map',
  sMeter: 'S-meter',
  compass: 'Compass',
  fix: 'Fix on request',
  soundRing: 'Sound ring drawn in full',
};

export const VOLTAGE_WORDS: Readonly<Record<LinePlan['voltage'], string>> = {
  low: 'Low, house line',
  medium: 'Medium, wooden poles',
  high: 'High, steel towers',
};

export const MOVEMENT_WORDS: Readonly<Record<Tag['movement']['kind'], string>> = {
  stays: 'Stays',
  path: 'Walks a path',
  wanders: 'Wanders',
};

export const GROUND_CLASS_WORDS: Readonly<Record<Scenario['radio']['groundClass'], string>> = {
  'very-dry': 'Very dry',
  'medium-dry': 'Medium dry',
  wet: 'Wet',
  'fresh-water': 'Fresh water',
};

export const NOISE_WORDS: Readonly<Record<Scenario['radio']['noise'], string>> = {
  city: 'City',
  residential: 'Residential',
  rural: 'Country',
  'quiet-rural': 'Quiet country',
};
