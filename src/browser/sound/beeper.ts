import type { Received } from '../../core/receiver/receive';
import type { SoundingPulse, SoundOutput } from './output';
import { soundLoss, unlockSound } from './unlock';

/** Beeps at a steady beat of whatever is to be heard at that moment, with the receiver's hiss between. */
export type Beeper = {
  /** Call it from a gesture: from then on it sounds. */
  readonly start: () => void;
  /** Something else is to be heard: the hiss follows at once. */
  readonly changed: () => void;
  readonly volume: (db: number, muted: boolean) => void;
  readonly close: () => void;
};

type Sounds = Pick<Received, 'pitchHz' | 'levelDb' | 'noiseDb'>;
/** `silentBeep`: the hiss goes on, no beep is given. */
export type ToSound = (Sounds & { readonly silentBeep?: boolean }) | null;

type Wishes = {
  readonly periodS: number;
  readonly pulseMs: number;
  /** What is heard now, `null` for silence. */
  readonly heard: () => ToSound;
  /** Called with every beat, sounded or not. */
  readonly onBeat: () => void;
};

const MAINS_HZ = 50;
const TICK_MS = 15;

export function makeBeeper({ periodS, pulseMs, heard, onBeat }: Wishes): Beeper {
  let output: SoundOutput | null = null;
  let opening = false;
  let closed = false;
  let last: SoundingPulse | null = null;
  let volumeNow: readonly [number, boolean] = [-60, false];
  let nextS = performance.now() / 1_000;
  const hiss = () => {
    const now = document.hidden ? null : heard();
    output?.scene({ noiseDb: now?.noiseDb ?? -999, buzzDb: -999, mainsHz: MAINS_HZ });
    // A beep that sounds while a knob is turned follows it, as the hiss does.
    if (now && !now.silentBeep && last && !last.isOver()) last.follow(now.levelDb);
  };
  const tick = () => {
    const nowS = performance.now() / 1_000;
    if (nowS < nextS) return;
    // After a halt of the page the beat begins anew instead of catching up.
    const atS = nowS - nextS < periodS ? nextS : nowS;
    nextS = atS + periodS;
    if (document.hidden) return;
    onBeat();
    const now = heard();
    if (now && !now.silentBeep)
      last = output?.pulse({ atS, durationS: pulseMs / 1_000, pitchHz: now.pitchHz, levelDb: now.levelDb }) ?? null;
    hiss();
  };
  const timer = setInterval(tick, TICK_MS);
  document.addEventListener('visibilitychange', hiss);
  return {
    start() {
      const context = unlockSound();
      if (!context || opening) return;
      opening = true;
      void import('./output')
        .then(({ openSoundOutput }) => openSoundOutput(context))
        .then((opened) => {
          if (closed) {
            opened.close();
            return;
          }
          output = opened;
          opened.volume(...volumeNow);
          nextS = performance.now() / 1_000; // the first beep answers the gesture
        })
        .catch(() => {
          soundLoss.value = 'failed';
          opening = false; // the next gesture tries again
        });
    },
    changed: hiss,
    volume(db, muted) {
      volumeNow = [db, muted];
      output?.volume(db, muted);
    },
    close() {
      closed = true;
      clearInterval(timer);
      document.removeEventListener('visibilitychange', hiss);
      output?.hush();
      output?.close();
      output = null;
    },
  };
}
