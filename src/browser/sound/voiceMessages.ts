import type { LevelChange, Sounded, VoiceScene } from '../../core/voice/pulse';

/** What the page tells whoever renders the sound. Samples count from the audio context's zero. */
export type VoiceMessage =
  | { readonly type: 'pulse'; readonly id: number; readonly pulse: Sounded }
  /** A hand was moved since the pulse was told: from now on it has this level. */
  | { readonly type: 'level'; readonly id: number; readonly levelDb: number }
  | { readonly type: 'scene'; readonly scene: VoiceScene }
  | { readonly type: 'hush' };

/** Nothing to hear: what a paused run sounds like. */
export const SILENCE: VoiceScene = { noiseDb: -999, buzzDb: -999, mainsHz: 50 };

/** What is to be sounded, as told so far: kept by the worklet and by the buffers alike. */
export type Score = {
  /** Takes a message in; what it changes holds from `fromSample` on. */
  readonly take: (message: VoiceMessage, fromSample: number) => void;
  readonly scene: () => VoiceScene;
  readonly pulses: () => readonly Sounded[];
  /** Forgets the pulses that are over. */
  readonly dropBefore: (sample: number) => void;
};

export function makeScore(): Score {
  let scene = SILENCE;
  let pulses = new Map<number, Sounded>();
  let inOrder: readonly Sounded[] = [];
  const keep = (next: Map<number, Sounded>) => {
    pulses = next;
    inOrder = [...next.values()];
  };
  return {
    take(message, fromSample) {
      if (message.type === 'scene') scene = message.scene;
      else if (message.type === 'hush') {
        scene = SILENCE;
        keep(new Map());
      } else if (message.type === 'pulse') keep(new Map(pulses).set(message.id, message.pulse));
      else {
        const pulse = pulses.get(message.id);
        if (pulse) keep(new Map(pulses).set(message.id, followed(pulse, { atSample: fromSample, levelDb: message.levelDb })));
      }
    },
    scene: () => scene,
    pulses: () => inOrder,
    dropBefore(sample) {
      if (inOrder.some((pulse) => isOver(pulse, sample))) keep(new Map([...pulses].filter(([, pulse]) => !isOver(pulse, sample))));
    },
  };
}

const isOver = ({ atSample, lengthSamples }: Sounded, sample: number): boolean => atSample + lengthSamples <= sample;

/** A pulse that has not begun simply has the new level; one that sounds glides there. Of two changes at one sample the later counts. */
function followed(pulse: Sounded, change: LevelChange): Sounded {
  if (change.atSample <= pulse.atSample) return { ...pulse, levelDb: change.levelDb };
  const before = (pulse.changes ?? []).filter(({ atSample }) => atSample < change.atSample);
  return { ...pulse, changes: [...before, change] };
}
