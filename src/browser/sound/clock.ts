/**
 * Seconds of the run against seconds of the sound card. The two clocks are tied together when a run goes on and tied anew
 * where they have drifted apart by more than the ear forgives.
 */
export type SoundClock = { readonly audioTimeS: (runTimeS: number, audioNowS: number) => number; readonly untie: () => void };

export function soundClock(leadS: number): SoundClock {
  let zeroS: number | null = null;
  return {
    audioTimeS(runTimeS, audioNowS) {
      const planned = zeroS === null ? Number.NaN : zeroS + runTimeS;
      const early = planned - audioNowS;
      if (!(early >= 0.005 && early <= leadS + 0.25)) zeroS = audioNowS + leadS - runTimeS;
      return zeroS! + runTimeS;
    },
    untie() {
      zeroS = null;
    },
  };
}
