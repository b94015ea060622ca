import { soundLoss } from './unlock';

/** What is to be said where sound should be and is not; empty else. */
export const soundLossWords = (): string =>
  ({
    '': '',
    stopped: 'The device stopped the sound: a call, another program, or pulled headphones. Press to have it again.',
    failed: 'No sound could be opened. Press again.',
  })[soundLoss.value];

export function SoundLossLine() {
  return soundLoss.value === '' ? null : <p role="alert">{soundLossWords()}</p>;
}
