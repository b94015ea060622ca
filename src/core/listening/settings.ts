/** Everything that a demonstration's controls can set; each demonstration uses some of them and leaves the rest at its start. */
export const SETTING_IDS = ['headingDeg', 'gainDb', 'attenuatorDb', 'rollDeg', 'walkM', 'offsetHz', 'choice'] as const;
export type SettingId = (typeof SETTING_IDS)[number];

/**
 * headingDeg: antenna, clockwise from the top of the ring. rollDeg: 0 flat, 90 upright. walkM: along the demonstration's own walk.
 * offsetHz: how far the dial is from the clearest note. choice: which of the demonstration's cases.
 */
export type Settings = Readonly<Record<SettingId, number>>;

/** Least, most and step of a control, and what the choices are called where it has only a few. */
export type Dial = {
  readonly key: SettingId;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly unit: string;
  /** Names of from, from + step, … */
  readonly choices?: readonly string[];
};

export const HEADING: Dial = { key: 'headingDeg', name: 'Antenna', from: 0, to: 359, step: 3, unit: '°' };
export const GAIN: Dial = { key: 'gainDb', name: 'Gain', from: 0, to: 90, step: 1, unit: 'dB' };
export const ROLL: Dial = { key: 'rollDeg', name: 'Antenna held', from: 0, to: 90, step: 90, unit: '', choices: ['flat', 'upright'] };

export const FIRST_SETTINGS: Settings = { headingDeg: 0, gainDb: 40, attenuatorDb: 0, rollDeg: 90, walkM: 0, offsetHz: 0, choice: 0 };

/** A value brought onto the dial: headings go round, everything else stops at its ends. */
export function onDial({ key, from, to, step }: Dial, value: number): number {
  if (!Number.isFinite(value)) return from;
  if (key === 'headingDeg') return ((Math.round(value) % 360) + 360) % 360;
  return Math.min(to, Math.max(from, from + Math.round((value - from) / step) * step));
}

/** Settings as the part of an address after `?`: only what differs from `start`. */
export function settingsText(settings: Settings, start: Settings): string {
  return SETTING_IDS.filter((id) => settings[id] !== start[id])
    .map((id) => `${id}=${settings[id]}`)
    .join('&');
}

/** Settings from an address. Unknown names, values that are no numbers and controls the demonstration lacks are passed over. */
export function readSettings(text: string, start: Settings, dials: readonly Dial[]): Settings {
  const read: Record<SettingId, number> = { ...start };
  for (const part of text.split('&')) {
    const [name, value] = part.split('=');
    const dial = dials.find(({ key }) => key === name);
    if (dial && value && Number.isFinite(Number(value))) read[dial.key] = onDial(dial, Number(value));
  }
  return read;
}
