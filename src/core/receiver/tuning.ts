/**
 * Tuning: the beat between the tag's carrier and the dial gives the note; the passband decides what is left of it.
 * Radio frequencies in MHz, sound in Hz.
 */

/** The note at which a learner hears best: the middle of the passband to the ear. */
export const CLEAREST_NOTE_HZ = 1_000;
/** Passband of the receiver's audio, Hz. */
export const PASSBAND_HZ = { from: 300, to: 2_800 } as const;

/** Pitch of the beat note, Hz. */
export const pitchHz = (tagMHz: number, tunedMHz: number): number => Math.abs(tagMHz - tunedMHz) * 1e6;

/** The dial setting that puts a tag on its clearest note, MHz. */
export const clearestDialMHz = (tagMHz: number): number => tagMHz - CLEAREST_NOTE_HZ / 1e6;

/**
 * What the filter and the ear take from a note, dB >= 0: nothing at 1 kHz, 2 dB per octave squared inside the passband
 * (the ear and small loudspeakers; our choice), then skirts of 0.1 dB per Hz below and 0.05 dB per Hz above, at most 90 dB.
 */
export function tuningLossDb(noteHz: number): number {
  const inside = Math.min(PASSBAND_HZ.to, Math.max(PASSBAND_HZ.from, noteHz));
  const octaves = Math.log2(inside / CLEAREST_NOTE_HZ);
  const skirtDb = noteHz < PASSBAND_HZ.from ? (PASSBAND_HZ.from - noteHz) * 0.1 : Math.max(0, noteHz - PASSBAND_HZ.to) * 0.05;
  return Math.min(90, 2 * octaves * octaves + skirtDb);
}
