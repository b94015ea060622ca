/** The one audio context of the page. Browsers let it sound only when a gesture opened it. */
let native: AudioContext | null = null;

/** Call it from a click or a key press, before anything is awaited. */
export function unlockSound(): AudioContext | null {
  if (typeof AudioContext === 'undefined') return null;
  // The shortest buffer that the device has: with "interactive" browsers keep up to 40 ms between a knob and its sound.
  native ??= new AudioContext({ latencyHint: 0, sampleRate: 48_000 });
  if (native.state !== 'running') void native.resume();
  return native;
}

export const unlockedContext = (): AudioContext | null => native;
