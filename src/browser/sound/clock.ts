/**
 * Seconds of the run against seconds of the sound card. The two clocks are tied together when a run goes on and tied anew
 * where they have drifted apart by more than the ear forgives.
 */
export type SoundClock = {
  /** When a moment of the run sounds; `runNowS` is where the run stands at `audioNowS`, as seen by who ties the clocks. */
  readonly audioTimeS: (runTimeS: number, runNowS: number, audioNowS: number) => number;
  readonly untie: () => void;
};

/** A pulse that comes later than this before its time can't be sounded whole any more. */
const LATEST_S = 0.03;

export function soundClock(leadS: number): SoundClock {
  let zeroS: number | null = null;
  return {
    audioTimeS(runTimeS, runNowS, audioNowS) {
      const planned = zeroS === null ? Number.NaN : zeroS + runTimeS;
      const early = planned - audioNowS;
      if (!(early >= LATEST_S && early <= leadS + 0.25)) zeroS = audioNowS + leadS - runNowS;
      return zeroS! + runTimeS;
    },
    untie() {
      zeroS = null;
    },
  };
}
