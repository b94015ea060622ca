import { makeVoice, type VoiceMemory } from '../../core/voice/pulse';
import { makeScore, type VoiceMessage } from './voiceMessages';

/** How far ahead sound is laid down: timers of a busy page come late. */
const LAID_AHEAD_S = 0.2;
/** What is laid at once when something was told; the rest follows when the page has a moment. */
const LAID_AT_ONCE_S = 0.06;
/** What has been laid less than this ahead is left as it is: the page needs it to render what follows. */
const LEFT_ALONE_S = 0.006;
/** The same for handing it over once it is rendered. */
const HAND_OVER_S = 0.003;

/** Sound that is laid down, [from, to) in samples, and what the voice remembered at its beginning. */
type Laid = { readonly source: AudioBufferSourceNode; readonly from: number; readonly to: number; readonly before: VoiceMemory };

/**
 * Over plain http there is no audio worklet: the same voice fills buffers that are laid end to end. They reach far enough ahead to
 * bridge a busy page; whatever a hand changes replaces what was laid from a moment ahead, so that it is heard as soon as in a worklet.
 */
export function bufferVoice(
  context: AudioContext,
  into: AudioNode,
): { readonly tell: (message: VoiceMessage) => void; readonly close: () => void } {
  const voice = makeVoice(context.sampleRate);
  const score = makeScore();
  const bufferS = context.baseLatency ?? 0;
  const sampleAfter = (seconds: number) => Math.ceil((context.currentTime + bufferS + seconds) * context.sampleRate);
  const reached = () => laid.at(-1)?.to ?? 0;
  const told: VoiceMessage[] = [];
  let laid: Laid[] = [];

  /** Renders [from, to) and lets it take the place of whatever was laid there, or from a little later where the page was slow. */
  const lay = (from: number, to: number): void => {
    const before = voice.memory();
    const buffer = context.createBuffer(1, to - from, context.sampleRate);
    voice.render(buffer.getChannelData(0), from, score.pulses(), score.scene());
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(into);
    const cut = Math.max(from, sampleAfter(HAND_OVER_S));
    source.start(cut / context.sampleRate, (cut - from) / context.sampleRate);
    const kept: Laid[] = [];
    for (const piece of laid) {
      if (piece.to <= cut) kept.push(piece);
      else if (piece.from >= cut) piece.source.disconnect();
      else {
        piece.source.stop(cut / context.sampleRate);
        kept.push({ ...piece, to: cut });
      }
    }
    laid = [...kept.filter((piece) => piece.to > sampleAfter(-1)), { source, from, to, before }];
    score.dropBefore(sampleAfter(-1));
  };

  /** Brings the voice back to what it was at a sample that has been laid already. */
  const backTo = (sample: number): void => {
    const piece = [...laid].reverse().find(({ from, to }) => from <= sample && sample < to);
    if (!piece) return;
    voice.recall(piece.before);
    voice.render(new Float32Array(sample - piece.from), piece.from, [], score.scene());
  };

  /** Everything told within one turn of the page is taken in at once. */
  const takeIn = (): void => {
    const from = sampleAfter(LEFT_ALONE_S);
    backTo(from);
    for (const message of told.splice(0)) score.take(message, from);
    lay(from, sampleAfter(LAID_AT_ONCE_S));
    clearTimeout(rest);
    rest = setTimeout(layOn);
  };

  const layOn = (): void => {
    if (reached() > sampleAfter(LAID_AHEAD_S / 2)) return;
    lay(Math.max(reached(), sampleAfter(LEFT_ALONE_S)), sampleAfter(LAID_AHEAD_S));
  };
  const timer = setInterval(layOn, 25);
  let rest: ReturnType<typeof setTimeout> | undefined;
  return {
    tell(message) {
      told.push(message);
      if (told.length === 1) queueMicrotask(takeIn);
    },
    close() {
      clearInterval(timer);
      clearTimeout(rest);
      for (const { source } of laid.splice(0)) source.disconnect();
    },
  };
}
