import { effect, signal } from '@preact/signals';
import { PALETTE_IDS, type PaletteId } from '../design/palette';

/** What a person chose for this device. */
export type Settings = {
  readonly palette: PaletteId;
  /** Text and a level bar that say what is heard: an aid, off until asked for. */
  readonly captions: boolean;
  /** dB under full volume. */
  readonly volumeDb: number;
  readonly muted: boolean;
  /** What run files and tables call this person; may be empty. */
  readonly name: string;
  /** What bearings are read from on the ground and in the notebook. */
  readonly north: 'true' | 'magnetic';
  /** Degrees by which a compass needle points east of true north; negative is west. */
  readonly declinationDeg: number;
  readonly lengths: 'metres' | 'yards';
  /** The first run has shown the controls, or was told to let it be. */
  readonly controlsShown: boolean;
};

const KEY = 'faintward-settings';
/** A quarter of full scale: a program that beeps never starts louder, whatever was set last time. */
export const LOUDEST_START_DB = -12;
export const QUIETEST_DB = -48;
export const VOLUME_STEP_DB = 3;
/** As long as a run file takes a name. */
export const LONGEST_NAME = 60;
/** Beyond this a compass is of little use, near the magnetic poles. */
export const MOST_DECLINATION_DEG = 40;
const DECLINATION_STEP_DEG = 0.5;

const FIRST: Settings = {
  palette: 'day',
  captions: false,
  volumeDb: LOUDEST_START_DB,
  muted: false,
  name: '',
  north: 'true',
  declinationDeg: 0,
  lengths: 'metres',
  controlsShown: false,
};

export const settings = signal<Settings>(stored());

function stored(): Settings {
  try {
    const read = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Settings>;
    return {
      palette: PALETTE_IDS.find((id) => id === read.palette) ?? FIRST.palette,
      captions: read.captions === true,
      volumeDb: Math.min(LOUDEST_START_DB, Math.max(QUIETEST_DB, Number(read.volumeDb ?? FIRST.volumeDb))),
      muted: false,
      name: typeof read.name === 'string' ? read.name.slice(0, LONGEST_NAME) : '',
      north: read.north === 'magnetic' ? 'magnetic' : 'true',
      declinationDeg: declination(Number(read.declinationDeg ?? 0)),
      controlsShown: read.controlsShown === true,
      lengths: read.lengths === 'yards' ? 'yards' : 'metres',
    };
  } catch {
    return FIRST; // private windows may refuse storage: the program works without it
  }
}

export const change = (part: Partial<Settings>): void => {
  settings.value = { ...settings.value, ...part };
};

/** One step louder (+1) or softer (-1). */
export const stepVolume = (direction: 1 | -1): void =>
  change({ muted: false, volumeDb: Math.min(0, Math.max(QUIETEST_DB, settings.value.volumeDb + direction * VOLUME_STEP_DB)) });

function declination(deg: number): number {
  return Number.isFinite(deg) ? Math.min(MOST_DECLINATION_DEG, Math.max(-MOST_DECLINATION_DEG, deg)) : 0;
}

/** Half a degree more to the east (+1) or to the west (-1). */
export const stepDeclination = (direction: 1 | -1): void =>
  change({ declinationDeg: declination(settings.peek().declinationDeg + direction * DECLINATION_STEP_DEG) });

/** Shows the palette on the page and keeps every change. */
export const keepSettings = (): (() => void) =>
  effect(() => {
    document.documentElement.dataset['palette'] = settings.value.palette;
    try {
      localStorage.setItem(KEY, JSON.stringify(settings.value));
    } catch {
      // as above
    }
  });
