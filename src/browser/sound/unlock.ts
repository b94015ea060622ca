import { signal } from '@preact/signals';

/** Why nothing sounds that should: the device took the sound away while it ran, or it could not be opened at all; else empty. */
export const soundLoss = signal<'' | 'stopped' | 'failed'>('');

/** The one audio context of the page. Browsers let it sound only when a gesture opened it. */
let native: AudioContext | null = null;

/** Call it from a click or a key press, before anything is awaited. */
export function unlockSound(): AudioContext | null {
  if (typeof AudioContext === 'undefined') return null;
  // The shortest buffer that the device has: with "interactive" browsers keep up to 40 ms between a knob and its sound.
  native ??= watched(new AudioContext({ latencyHint: 0, sampleRate: 48_000 }));
  if (native.state !== 'running') void native.resume();
  return native;
}

/** A call, another program or pulled headphones may stop it: whoever plays must hear of it. */
function watched(context: AudioContext): AudioContext {
  let ran = false;
  context.addEventListener('statechange', () => {
    if (context.state === 'running') ran = true;
    soundLoss.value = ran && context.state !== 'running' ? 'stopped' : '';
  });
  return context;
}

export const unlockedContext = (): AudioContext | null => native;
