// Part by part: the package's index opens an audio context of its own, with a blob: worker, as soon as it is imported.
import { Volume } from 'tone/build/esm/component/channel/Volume.js';
import { Limiter } from 'tone/build/esm/component/dynamics/Limiter.js';
import 'tone/build/esm/core/context/Destination.js'; // gives contexts their way out
import { Context } from 'tone/build/esm/core/context/Context.js';
import { connect } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { setContext } from 'tone/build/esm/core/Global.js';
import type { HeardPulse } from '../../core/ear/hear';
import type { VoiceScene } from '../../core/voice/pulse';
import { BUFFERED_AHEAD_S, bufferVoice } from './bufferVoice';
import { soundClock } from './clock';
import workletUrl from './pulse.worklet.ts?worker&url';
import type { VoiceMessage } from './voiceMessages';

/** The loudspeaker's side of a run. Everything that arrives here is ready to play. */
export type SoundOutput = {
  readonly pulse: (heard: Pick<HeardPulse, 'atS' | 'durationS' | 'pitchHz' | 'levelDb'>) => void;
  readonly scene: (scene: VoiceScene) => void;
  /** Silence at once, until the next scene. */
  readonly hush: () => void;
  readonly volume: (db: number, muted: boolean) => void;
  readonly close: () => void;
};

/** Seconds between working a pulse out and sounding it: more than a frame, less than an eye and an ear tell apart. */
const LEAD_S = 0.07;

/** Native context to Tone, the voice through Tone's limiter and volume to the loudspeaker. */
export async function openSoundOutput(native: AudioContext): Promise<SoundOutput> {
  setContext(new Context({ context: native, lookAhead: 0, updateInterval: 0.02, clockSource: 'timeout' }));
  const volume = new Volume(-60).toDestination();
  const limiter = new Limiter(-1).connect(volume);
  const voice = await openVoice(native, limiter);
  const clock = soundClock(voice.leadS);
  return {
    pulse({ atS, durationS, pitchHz, levelDb }) {
      const audioS = clock.audioTimeS(atS, native.currentTime);
      const atSample = Math.round(audioS * native.sampleRate);
      voice.tell({ type: 'pulse', pulse: { atSample, lengthSamples: Math.round(durationS * native.sampleRate), pitchHz, levelDb } });
    },
    scene: (scene) => voice.tell({ type: 'scene', scene }),
    hush() {
      clock.untie();
      voice.tell({ type: 'hush' });
    },
    volume(db, muted) {
      volume.mute = muted;
      if (!muted) volume.volume.rampTo(db, 0.05);
    },
    close() {
      voice.close();
      limiter.dispose();
      volume.dispose();
    },
  };
}

type OpenVoice = { readonly tell: (message: VoiceMessage) => void; readonly close: () => void; readonly leadS: number };

async function openVoice(native: AudioContext, into: Limiter): Promise<OpenVoice> {
  if (!native.audioWorklet) {
    const gate = native.createGain();
    connect(gate, into);
    return { ...bufferVoice(native, gate), leadS: BUFFERED_AHEAD_S + 0.1 };
  }
  await native.audioWorklet.addModule(workletUrl);
  const node = new AudioWorkletNode(native, 'pulse', { numberOfInputs: 0, outputChannelCount: [1] });
  connect(node, into);
  return { tell: (message) => node.port.postMessage(message), close: () => node.disconnect(), leadS: LEAD_S };
}
