import type { Sounded, VoiceScene } from '../../core/voice/pulse';

/** What the page tells whoever renders the sound. Samples count from the audio context's zero. */
export type VoiceMessage =
  | { readonly type: 'pulse'; readonly pulse: Sounded }
  | { readonly type: 'scene'; readonly scene: VoiceScene }
  | { readonly type: 'hush' };

/** Nothing to hear: what a paused run sounds like. */
export const SILENCE: VoiceScene = { noiseDb: -999, buzzDb: -999, mainsHz: 50 };
