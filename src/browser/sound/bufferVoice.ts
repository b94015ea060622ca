import { makeVoice, type Sounded, type VoiceScene } from '../../core/voice/pulse';
import { SILENCE, type VoiceMessage } from './voiceMessages';

const CHUNK_S = 0.05;
/** How far ahead sound is laid down: timers of a busy page come late. */
export const BUFFERED_AHEAD_S = 0.2;

/** Over plain http there is no audio worklet: the same voice fills buffers that are laid end to end. */
export function bufferVoice(
  context: AudioContext,
  into: AudioNode,
): { readonly tell: (message: VoiceMessage) => void; readonly close: () => void } {
  const voice = makeVoice(context.sampleRate);
  const length = Math.round(CHUNK_S * context.sampleRate);
  let scene: VoiceScene = SILENCE;
  let pulses: Sounded[] = [];
  let nextSample = Math.ceil((context.currentTime + CHUNK_S) * context.sampleRate);
  const fill = () => {
    const now = context.currentTime * context.sampleRate;
    if (nextSample < now) nextSample = Math.ceil(now + length);
    while (nextSample < now + BUFFERED_AHEAD_S * context.sampleRate) {
      const buffer = context.createBuffer(1, length, context.sampleRate);
      voice.render(buffer.getChannelData(0), nextSample, pulses, scene);
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(into);
      source.start(nextSample / context.sampleRate);
      nextSample += length;
      pulses = pulses.filter((pulse) => pulse.atSample + pulse.lengthSamples > nextSample);
    }
  };
  const timer = setInterval(fill, 25);
  return {
    tell(message) {
      if (message.type === 'scene') scene = message.scene;
      else if (message.type === 'pulse') pulses.push(message.pulse);
      else [scene, pulses] = [SILENCE, []];
    },
    close: () => clearInterval(timer),
  };
}
