import { computed, signal } from '@preact/signals';
import type { Judged, MarkedLine, Move, Trial } from '../../core/drills/drill';
import type { Session } from '../../core/drills/session';
import type { Listener } from '../../core/ear/loudness';
import { type Heard, heardAt, heardRound } from '../../core/listening/air';
import type { Spot } from '../../core/listening/picture';
import { FIRST_SETTINGS, onDial, type SettingId, type Settings } from '../../core/listening/settings';

/** Where a session stands: waiting for a gesture, showing how it is done, asking, telling what was so, over. */
export type Stage = 'waiting' | 'example' | 'trial' | 'verdict' | 'over';

export const session = signal<Session | null>(null);
export const trial = signal<Trial | null>(null);
export const stage = signal<Stage>('waiting');
export const settings = signal<Settings>(FIRST_SETTINGS);
export const listener = signal<Listener>({ thresholdDb: 0 });
export const verdict = signal<Judged | null>(null);
export const hinted = signal(false);
/** Bearings marked on the way to a pin, and the pin. */
export const lines = signal<readonly MarkedLine[]>([]);
export const pin = signal<Spot | null>(null);
export const amount = signal(600);
/** Which take of a pair plays, `null` between. */
export const takeNow = signal<number | null>(null);
export const spinDegPerS = signal(0);
/** Counts beats: the ring swells with each. */
export const beat = signal(0);
/** Headings heard since gain, roll or place were last changed: what a hint may show. */
export const heardSoFar = signal<readonly Heard[]>([]);

let moves: Move[] = [];
let begunMs = 0;
export const takeMoves = (): readonly Move[] => moves;

/** Everything is laid out before the learner. */
export const truthShown = computed(() => stage.value === 'verdict' || stage.value === 'over' || stage.value === 'example');
export const air = computed(() => trial.value?.air(settings.value) ?? null);
export const now = computed<Heard | null>(() =>
  air.value ? heardAt(air.value, settings.value, settings.value.headingDeg, listener.value) : null,
);
const withoutHeading = computed(() => JSON.stringify({ ...settings.value, headingDeg: 0 }));
/** The whole turn, worked out only where it is shown. */
export const ring = computed<readonly Heard[] | null>(() => {
  void withoutHeading.value;
  return truthShown.value && air.value ? heardRound(air.value, settings.peek(), listener.value) : null;
});

export const reachable = (key: SettingId): boolean => trial.value?.dials.some((dial) => dial.key === key) ?? false;

/** Turns controls; those out of reach stay, and a trial may hold some of them where they are. */
export function set(by: Partial<Settings>): void {
  const given = trial.peek();
  if (!given) return;
  const before = settings.peek();
  const wanted: Record<SettingId, number> = { ...before };
  for (const dial of dialsNow(given)) {
    const value = by[dial.key];
    if (value !== undefined) wanted[dial.key] = onDial(dial, value);
  }
  const next = given.allowed && stage.peek() === 'trial' ? given.allowed(before, wanted) : wanted;
  if ((Object.keys(next) as SettingId[]).every((key) => next[key] === before[key])) return;
  if (next.gainDb !== before.gainDb || next.rollDeg !== before.rollDeg || next.walkM !== before.walkM || next.choice !== before.choice)
    heardSoFar.value = [];
  settings.value = next;
  moves.push({ atS: (performance.now() - begunMs) / 1_000, settings: next });
}

/** Afterwards the antenna and the gain are free, whatever was held before. */
function dialsNow(given: Trial): Trial['dials'] {
  if (!truthShown.peek()) return given.dials;
  const has = (key: SettingId) => given.dials.some((dial) => dial.key === key);
  return [
    ...given.dials,
    ...(has('headingDeg') ? [] : [{ key: 'headingDeg', name: 'Antenna', from: 0, to: 359, step: 1, unit: '°' } as const]),
    ...(has('gainDb') ? [] : [{ key: 'gainDb', name: 'Gain', from: 0, to: 90, step: 1, unit: 'dB' } as const]),
  ];
}

/** Lays out a trial as it begins. */
export function layOut(given: Trial): void {
  moves = [{ atS: 0, settings: given.start }];
  begunMs = performance.now();
  spinDegPerS.value = 0;
  heardSoFar.value = [];
  lines.value = [];
  pin.value = null;
  takeNow.value = null;
  verdict.value = null;
  amount.value = 600;
  settings.value = given.start;
  trial.value = given;
}
