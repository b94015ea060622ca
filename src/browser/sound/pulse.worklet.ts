import { makeVoice } from '../../core/voice/pulse';
import { makeScore, type VoiceMessage } from './voiceMessages';

// The scope of an audio worklet, of which the page's types know nothing.
declare const sampleRate: number;
declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Renders the voice block by block; all it knows is what it is told. A message counts from the block that is rendered next. */
class PulseProcessor extends AudioWorkletProcessor {
  private readonly voice = makeVoice(sampleRate);
  private readonly score = makeScore();
  private told: VoiceMessage[] = [];

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<VoiceMessage>) => this.told.push(data);
  }

  process(_inputs: Float32Array[][], outputs: Float32Array[][]): boolean {
    const out = outputs[0]![0]!;
    for (const message of this.told.splice(0)) this.score.take(message, currentFrame);
    this.voice.render(out, currentFrame, this.score.pulses(), this.score.scene());
    this.score.dropBefore(currentFrame + out.length);
    return true;
  }
}

registerProcessor('pulse', PulseProcessor);
