import type { AntennaId } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import type { Intervention } from './intervention';
import type { StageBegun } from './stages';

/** The run's clock counts whole ticks, so that a log replays exactly whatever the frame rate was. */
export const TICKS_PER_S = 20;
export const TICK_S = 1 / TICKS_PER_S;

/** How the antenna is held. rollDeg 0 is flat (elements level), 90 upright; raised is the outstretched arm. */
export type Hold = {
  readonly headingDeg: number;
  readonly rollDeg: number;
  readonly raised: boolean;
  readonly antenna: AntennaId;
  /** How high above the ground its owner has climbed, metres; left out on the ground. */
  readonly aloftM?: number;
};

/** What the hands have set on the receiver. */
export type Controls = { readonly gainDb: number; readonly attenuatorDb: number; readonly tunedMHz: number };

/** The legs: a course and a pace, or a place to stop at. paceMPerS 0 is standing. */
export type Legs = { readonly courseDeg: number; readonly paceMPerS: number; readonly until: MapPoint | null };

/** One line of the notebook. */
export type Mark = {
  readonly atTick: number;
  readonly at: MapPoint;
  readonly bearingDeg: number;
  readonly gainDb: number;
  readonly attenuatorDb: number;
  readonly struckOut: boolean;
  /** Where its owner believed to stand; left out where the map shows it. */
  readonly believedAt?: MapPoint;
};

export type Vehicle = { readonly at: MapPoint; readonly aboard: boolean };

/** Where the learner says to be, where the map does not show it, and how far he had walked then. */
export type Belief = { readonly at: MapPoint; readonly walkedM: number };

/** Where one would start the search afresh, and when that was chosen. */
export type StartChoice = { readonly atTick: number; readonly at: MapPoint };

/** Ground that was hatched from a place: round another one, or all in view. */
export type Ruling = {
  readonly atTick: number;
  readonly at: MapPoint;
  readonly walkedM: number;
  readonly around: MapPoint | null;
  readonly takenBack: boolean;
};

/** A press on a beep, when and how far from the start. */
export type Beat = { readonly atTick: number; readonly walkedM: number };

/** "It is here." */
export type Declaration = {
  readonly atTick: number;
  readonly at: MapPoint;
  readonly right: boolean;
  /** From the tag that is asked for, or from the nearest where any counts, metres. */
  readonly offM: number;
  /** Another tag than the one asked for that it was said at; `null` where it was said at none. */
  readonly otherTag: number | null;
};

/** A fix that was declared: when, and by which bearings of the notebook, counted from 0. */
export type DeclaredFix = { readonly atTick: number; readonly bearings: readonly number[] };

/** `fixed`: a fix was declared; `too-near`: the task's bound round the tag was crossed; `walked-out`: as far as may be walked. */
export type Ending = 'found' | 'fixed' | 'too-near' | 'walked-out' | 'gave-up' | 'out-of-time';

/** What was asked for was done, well or not: the run did not end by a bound or by giving up. */
export const isDone = (ending: Ending | null): boolean => ending === 'found' || ending === 'fixed';

/** A run is read-only data; the only way to the next state is `step` and `advance`. */
export type RunState = {
  readonly tick: number;
  readonly at: MapPoint;
  readonly hold: Hold;
  /** Antenna changing by itself while a key or stick is held, degrees per second, clockwise positive. */
  readonly spinDegPerS: number;
  readonly controls: Controls;
  readonly legs: Legs;
  /** Metres gone since the start, on foot and aboard. */
  readonly walkedM: number;
  /** Of them aboard. */
  readonly drivenM: number;
  /** Where it stands and whether one sits in it; `null` where the exercise has none. */
  readonly vehicle: Vehicle | null;
  /** True where the last tick's movement was stopped by water, a building or the map's edge. */
  readonly blocked: boolean;
  /** Until this tick the hands are busy changing the antenna or climbing. */
  readonly busyUntilTick: number;
  /** `null` where the map shows the own place. */
  readonly belief: Belief | null;
  readonly notebook: readonly Mark[];
  readonly guess: MapPoint | null;
  readonly rulings: readonly Ruling[];
  readonly beats: readonly Beat[];
  readonly startChoice: StartChoice | null;
  readonly declarations: readonly Declaration[];
  readonly declaredFixes: readonly DeclaredFix[];
  /** Texts between that have come, each with where its stage began. */
  readonly stages: readonly StageBegun[];
  /** What an instructor did to the run. */
  readonly interventions: readonly Intervention[];
  readonly ending: Ending | null;
};

/** Antenna height above ground, metres: chest or outstretched arm, over what was climbed. */
export const antennaHeightM = (hold: Hold): number => (hold.raised ? 2.4 : 1.7) + (hold.aloftM ?? 0);

/** Metres gone on foot. */
export const onFootM = ({ walkedM, drivenM }: Pick<RunState, 'walkedM' | 'drivenM'>): number => walkedM - drivenM;

export const timeS = (state: RunState): number => state.tick / TICKS_PER_S;
