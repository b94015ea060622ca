import { batch, computed, signal } from '@preact/signals';
import { type Heard, heardAt, heardRound } from '../../core/listening/air';
import { DEMONSTRATIONS } from '../../core/listening/catalogue';
import type { Demonstration, Listened } from '../../core/listening/demonstration';
import { changed, otherWay } from '../../core/listening/demonstrationDials';
import type { Settings } from '../../core/listening/settings';

/** What the room shows and how it is set. Everything on the screen and every beep is worked out from these. */
export const shown = signal<Demonstration>(DEMONSTRATIONS[0]!);
export const settings = signal<Settings>(DEMONSTRATIONS[0]!.start);
export const projector = signal(false);
/** Sound has been asked for by a gesture. */
export const sounding = signal(false);
/** Counts beeps: the ring swells with each. */
export const beat = signal(0);
/** The antenna turns by itself, degrees a second; 0 where a hand holds it. */
export const spinDegPerS = signal(0);

const air = computed(() => shown.value.air(settings.value));
const withoutHeading = computed(() => JSON.stringify({ ...settings.value, headingDeg: 0 }));

/** The whole turn at the present settings; it stays while only the antenna turns. */
export const ring = computed<readonly Heard[]>(() => {
  void withoutHeading.value;
  return heardRound(air.value, settings.peek());
});

export const listened = computed<Listened>(() => ({
  air: air.value,
  settings: settings.value,
  now: heardAt(air.value, settings.value, settings.value.headingDeg),
  ring: ring.value,
}));

/** The same with the antenna straight ahead: what is printed does not change as it turns. */
export const still = computed<Listened>(() => {
  void withoutHeading.value;
  const ahead = { ...settings.peek(), headingDeg: 0 };
  return { air: air.value, settings: ahead, now: ring.value[0]!, ring: ring.value };
});

const otherOne = computed(() => {
  void withoutHeading.value;
  return shown.value.ways[otherWay(shown.value, settings.peek())];
});
export const otherWayName = computed(() => otherOne.value.name);
/** The other way to hear it, as a ring beside the present one. */
export const otherRing = computed<readonly Heard[]>(() => {
  void withoutHeading.value;
  const other = changed(shown.value, settings.peek(), otherOne.value.sets);
  return heardRound(shown.value.air(other), other);
});

export const set = (by: Partial<Settings>): void => {
  settings.value = changed(shown.value, settings.value, by);
};

/** Opens a demonstration, with the settings of an address where it gives some. */
export function show(demonstration: Demonstration, at: Settings = demonstration.start): void {
  batch(() => {
    shown.value = demonstration;
    settings.value = at;
    spinDegPerS.value = 0;
  });
}

export function showNext(by: 1 | -1): void {
  const index = DEMONSTRATIONS.indexOf(shown.peek());
  const next = DEMONSTRATIONS[(index + by + DEMONSTRATIONS.length) % DEMONSTRATIONS.length]!;
  show(next);
}

export const hearOtherWay = (): void => {
  const now = settings.peek();
  set(shown.peek().ways[otherWay(shown.peek(), now)].sets);
};
