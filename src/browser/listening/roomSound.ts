import { effect, signal } from '@preact/signals';
import { type Heard, heardAt, PULSE_MS } from '../../core/listening/air';
import type { Settings } from '../../core/listening/settings';
import type { SoundingPulse, SoundOutput } from '../sound/output';
import { unlockSound } from '../sound/unlock';
import { settings as deviceSettings } from '../storage/settings';
import { beat, listened, settings, shown, sounding, spinDegPerS } from './roomState';

/** Seconds from beep to beep. */
export const PERIOD_S = 0.75;
const MAINS_HZ = 50;

let output: SoundOutput | null = null;
let opening: Promise<void> | null = null;
/** When the next beep is due, seconds of the page's own clock. */
let nextS = 0;
/** While a check by ear is open only its takes sound; null lets the room itself sound. */
export const playing = signal<{ readonly take: Settings | null } | null>(null);

/** Fetches the sound's code while nothing else is to be done, so that the first gesture sounds at once. */
export const fetchSound = (): void => void import('../sound/output');

/** Call it from a gesture: from then on the room beeps. */
export function startSound(): void {
  const context = unlockSound();
  sounding.value = true;
  if (!context || output || opening) return;
  opening = import('../sound/output')
    .then(({ openSoundOutput }) => openSoundOutput(context))
    .then((opened) => {
      if (!sounding.peek()) {
        opened.close(); // the room was left meanwhile
        return;
      }
      output = opened;
      opened.volume(deviceSettings.peek().volumeDb, deviceSettings.peek().muted);
      nextS = performance.now() / 1000; // the first beep answers the gesture
    });
}

/** What sounds now: a take of the ear check, or the room as it is set. */
const soundingNow = (): Heard | null => {
  const check = playing.peek();
  if (!check) return listened.peek().now;
  return check.take && heardAt(shown.peek().air(check.take), check.take, check.take.headingDeg);
};

/** Beeps in time, and hiss between, as long as the room is open. @returns stops and lets go of the loudspeaker */
export function beep(): () => void {
  let last: SoundingPulse | null = null;
  const tick = () => {
    const nowS = performance.now() / 1000;
    if (nowS < nextS) return;
    // After a halt of the page the beat begins anew instead of catching up.
    const atS = nowS - nextS < PERIOD_S ? nextS : nowS;
    nextS = atS + PERIOD_S;
    if (!sounding.peek() || document.hidden) return;
    const heard = soundingNow();
    beat.value++;
    if (heard) last = output?.pulse({ atS, durationS: PULSE_MS / 1000, pitchHz: heard.pitchHz, levelDb: heard.levelDb }) ?? null;
  };
  const timer = setInterval(tick, 15);
  const quieten = () => {
    if (document.hidden) output?.hush();
    else hiss();
  };
  // A beep that sounds while a dial is turned follows it, as the hiss does.
  const hiss = () => {
    const heard = soundingNow();
    output?.scene({ noiseDb: heard?.noiseDb ?? -999, buzzDb: -999, mainsHz: MAINS_HZ });
    if (heard && last && !last.isOver()) last.follow(heard.levelDb);
  };
  document.addEventListener('visibilitychange', quieten);
  const stops = [
    effect(() => {
      void [listened.value, playing.value, beat.value];
      if (sounding.value && !document.hidden) hiss();
    }),
    effect(() => {
      const { volumeDb, muted } = deviceSettings.value;
      output?.volume(volumeDb, muted);
    }),
    turnByItself(),
  ];
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', quieten);
    for (const stop of stops) stop();
    output?.hush();
    output?.close();
    [output, opening] = [null, null];
    sounding.value = false;
  };
}

/** Turns the antenna while something asks for it. */
function turnByItself(): () => void {
  let frame = 0;
  let lastMs = 0;
  let exactDeg = 0;
  const onFrame = (nowMs: number) => {
    frame = requestAnimationFrame(onFrame);
    exactDeg += (spinDegPerS.peek() * Math.min(100, nowMs - lastMs)) / 1000;
    lastMs = nowMs;
    const headingDeg = ((Math.round(exactDeg) % 360) + 360) % 360;
    if (headingDeg !== settings.peek().headingDeg) settings.value = { ...settings.peek(), headingDeg };
  };
  const stop = effect(() => {
    cancelAnimationFrame(frame);
    if (spinDegPerS.value === 0) return;
    exactDeg = settings.peek().headingDeg;
    lastMs = performance.now();
    frame = requestAnimationFrame(onFrame);
  });
  return () => {
    cancelAnimationFrame(frame);
    stop();
  };
}
