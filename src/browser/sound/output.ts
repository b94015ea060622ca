// Part by part: the package's index opens an audio context of its own, with a blob: worker, as soon as it is imported.
import { Volume } from 'tone/build/esm/component/channel/Volume.js';
import 'tone/build/esm/core/context/Destination.js'; // gives contexts their way out
import { Context } from 'tone/build/esm/core/context/Context.js';
import { connect } from 'tone/build/esm/core/context/ToneAudioNode.js';
import { setContext } from 'tone/build/esm/core/Global.js';
import type { HeardPulse } from '../../core/ear/hear';
import type { VoiceScene } from '../../core/voice/pulse';
import { bufferVoice } from './bufferVoice';
import { soundClock } from './clock';
import workletUrl from './pulse.worklet.ts?worker&url';
import type { VoiceMessage } from './voiceMessages';

/** The loudspeaker's side of a run. Everything that arrives here is ready to play. */
export type SoundOutput = {
  /** `nowS` is the run's time now, less what pulses may come late; without it the pulse itself is now. */
  readonly pulse: (heard: Pick<HeardPulse, 'atS' | 'durationS' | 'pitchHz' | 'levelDb'>, nowS?: number) => SoundingPulse;
  readonly scene: (scene: VoiceScene) => void;
  /** Silence at once, until the next scene. */
  readonly hush: () => void;
  readonly volume: (db: number, muted: boolean) => void;
  readonly close: () => void;
};

/** A pulse on its way to the loudspeaker: until it is over it follows the hand, since what is turned now must be heard now. */
export type SoundingPulse = { readonly follow: (levelDb: number) => void; readonly isOver: () => boolean };

/** Seconds between working a pulse out and sounding it: more than a frame, less than an eye and an ear tell apart. */
const LEAD_S = 0.07;

/**
 * Native context to Tone, the voice through Tone's volume to the loudspeaker. The voice keeps itself under -1 dBFS and the volume
 * only takes away: a compressor behind it would lift the peaks and cost 6 ms.
 */
export async function openSoundOutput(native: AudioContext): Promise<SoundOutput> {
  setContext(new Context({ context: native, lookAhead: 0, updateInterval: 0.02, clockSource: 'timeout' }));
  const volume = new Volume(-60).toDestination();
  const voice = await openVoice(native, volume);
  const clock = soundClock(LEAD_S);
  let pulses = 0;
  let told: VoiceScene | null = null;
  return {
    pulse({ atS, durationS, pitchHz, levelDb }, nowS = atS) {
      const id = pulses++;
      const atSample = Math.round(clock.audioTimeS(atS, nowS, native.currentTime) * native.sampleRate);
      const lengthSamples = Math.round(durationS * native.sampleRate);
      voice.tell({ type: 'pulse', id, pulse: { atSample, lengthSamples, pitchHz, levelDb } });
      let sentDb = levelDb;
      return {
        follow(nowDb) {
          if (nowDb !== sentDb) voice.tell({ type: 'level', id, levelDb: nowDb });
          sentDb = nowDb;
        },
        isOver: () => native.currentTime * native.sampleRate >= atSample + lengthSamples,
      };
    },
    scene(scene) {
      if (sameScene(scene, told)) return;
      told = scene;
      voice.tell({ type: 'scene', scene });
    },
    hush() {
      told = null;
      clock.untie();
      voice.tell({ type: 'hush' });
    },
    volume(db, muted) {
      volume.mute = muted;
      if (!muted) volume.volume.rampTo(db, 0.05);
    },
    close() {
      voice.close();
      volume.dispose();
    },
  };
}

const sameScene = (a: VoiceScene, b: VoiceScene | null): boolean =>
  a.noiseDb === b?.noiseDb && a.buzzDb === b.buzzDb && a.mainsHz === b.mainsHz;

type OpenVoice = { readonly tell: (message: VoiceMessage) => void; readonly close: () => void };

async function openVoice(native: AudioContext, into: Volume): Promise<OpenVoice> {
  if (!native.audioWorklet) {
    const gate = native.createGain();
    connect(gate, into);
    return bufferVoice(native, gate);
  }
  await native.audioWorklet.addModule(workletUrl);
  const node = new AudioWorkletNode(native, 'pulse', { numberOfInputs: 0, outputChannelCount: [1] });
  connect(node, into);
  return { tell: (message) => node.port.postMessage(message), close: () => node.disconnect() };
}
