import { makeVoice, type Sounded, type VoiceScene } from '../../core/voice/pulse';
import { SILENCE, type VoiceMessage } from './voiceMessages';

// The scope of an audio worklet, of which the page's types know nothing.
declare const sampleRate: number;
declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Renders the voice block by block; all it knows is what it is told. */
class PulseProcessor extends AudioWorkletProcessor {
  private readonly voice = makeVoice(sampleRate);
  private scene: VoiceScene = SILENCE;
  private pulses: Sounded[] = [];

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<VoiceMessage>) => {
      if (data.type === 'scene') this.scene = data.scene;
      else if (data.type === 'pulse') this.pulses.push(data.pulse);
      else [this.scene, this.pulses] = [SILENCE, []];
    };
  }

  process(_inputs: Float32Array[][], outputs: Float32Array[][]): boolean {
    const out = outputs[0]![0]!;
    this.voice.render(out, currentFrame, this.pulses, this.scene);
    const reached = currentFrame + out.length;
    if (this.pulses.length > 0) this.pulses = this.pulses.filter((pulse) => pulse.atSample + pulse.lengthSamples > reached);
    return true;
  }
}

registerProcessor('pulse', PulseProcessor);
