import { COVER } from './world';

/** Scores are told apart this finely. */
const CLASSES = 8_192;

/** Gives a cover to the free cells with the highest scores until it has its share of the map. */
export function claim(cover: Uint8Array, scores: Float32Array, kind: number, share: number): void {
  const wished = Math.round(share * cover.length);
  if (wished === 0) return;
  const span = { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
  inStretches(cover.length, (at, end) => widen(span, cover, scores, at, end));
  const { low, high } = span;
  const perClass = (CLASSES - 1) / (high > low ? high - low : 1);
  const counts = new Int32Array(CLASSES);
  inStretches(cover.length, (at, end) => countScores(counts, cover, scores, low, perClass, at, end));
  let from = CLASSES;
  for (let claimed = 0; from > 0 && claimed < wished; ) claimed += counts[--from]!;
  inStretches(cover.length, (at, end) => takeBest(cover, scores, low, perClass, from, kind, at, end));
}

/** Work over many cells in stretches: a short loop that is called often is compiled sooner than a long one that is called once. */
function inStretches(count: number, work: (at: number, end: number) => void): void {
  for (let at = 0; at < count; at += 1_024) work(at, Math.min(count, at + 1_024));
}

function widen(span: { low: number; high: number }, cover: Uint8Array, scores: Float32Array, at: number, end: number): void {
  let { low, high } = span;
  for (let i = at; i < end; i++) {
    if (cover[i] !== COVER.open) continue;
    const score = scores[i]!;
    if (score < low) low = score;
    if (score > high) high = score;
  }
  span.low = low;
  span.high = high;
}

function countScores(
  counts: Int32Array,
  cover: Uint8Array,
  scores: Float32Array,
  low: number,
  perClass: number,
  at: number,
  end: number,
): void {
  for (let i = at; i < end; i++) if (cover[i] === COVER.open) counts[Math.floor((scores[i]! - low) * perClass)]! += 1;
}

function takeBest(
  cover: Uint8Array,
  scores: Float32Array,
  low: number,
  perClass: number,
  from: number,
  kind: number,
  at: number,
  end: number,
): void {
  // A whole number of classes: (score - low) * perClass >= from says the same as its floor would.
  for (let i = at; i < end; i++) if (cover[i] === COVER.open && (scores[i]! - low) * perClass >= from) cover[i] = kind;
}
