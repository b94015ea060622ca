import type { LossBudget, Wave, WaveKind } from '../radio/wave';
import { wavePowerDbm } from '../radio/waveVector';
import type { Exercise } from '../run/exercise';
import { tagHere } from '../run/sense';
import { toDb, toPowerRatio } from '../units/decibels';
import type { MapPoint } from '../units/frames';

/** Waves of one kind that come from one side: as one arrow is drawn for them. */
export type WaveArrow = {
  readonly kind: ArrowKind;
  readonly azimuthDeg: number;
  /** Of all of them together in an isotropic antenna, dBm. */
  readonly powerDbm: number;
  /** What each cause took from the strongest of them, positive dB. */
  readonly lossDb: LossBudget;
};

/** Poles belong to their wires here. */
export type ArrowKind = Exclude<WaveKind, 'pole'>;
export const ARROW_KINDS: readonly ArrowKind[] = ['direct', 'hillside', 'wall', 'wire', 'scatter'];

/** Waves of a kind within such a sector are told as one. */
const SECTOR_DEG = 20;
/** What is weaker than this under the strongest moves no bearing. */
const LEAST_DB = -25;
const MOST_ARROWS = 12;

const kindOf = ({ kind }: Wave): ArrowKind => (kind === 'pole' ? 'wire' : kind);

/** The waves of a tag at a place and time, strongest first: those of a kind and sector summed in power, the weak ones left out. */
export function waveArrows(exercise: Exercise, tag: number, at: MapPoint, heightM: number, timeS: number): readonly WaveArrow[] {
  const here = tagHere(exercise, tag, at, heightM, timeS);
  const mhz = exercise.scenario.tags[tag]!.frequencyMHz;
  const waves = here.arrivals.waves.map((wave) => ({ wave, powerDbm: wavePowerDbm(wave, here.eirpDbm, mhz) }));
  const groups = new Map<string, { wave: Wave; powerDbm: number }[]>();
  for (const one of waves) {
    const key = `${kindOf(one.wave)}/${Math.floor(one.wave.azimuthDeg / SECTOR_DEG)}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const arrows = [...groups.values()].map(arrowOf).sort((a, b) => b.powerDbm - a.powerDbm);
  const strongest = arrows[0]?.powerDbm ?? 0;
  return arrows.filter(({ powerDbm }) => powerDbm >= strongest + LEAST_DB).slice(0, MOST_ARROWS);
}

function arrowOf(group: readonly { readonly wave: Wave; readonly powerDbm: number }[]): WaveArrow {
  const strongest = group.reduce((a, b) => (b.powerDbm > a.powerDbm ? b : a));
  const watts = group.reduce((sum, { powerDbm }) => sum + toPowerRatio(powerDbm), 0);
  return {
    kind: kindOf(strongest.wave),
    azimuthDeg: strongest.wave.azimuthDeg,
    powerDbm: toDb(watts),
    lossDb: strongest.wave.lossDb,
  };
}
