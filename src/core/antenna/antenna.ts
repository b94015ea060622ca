import type { AntennaId } from '../scenario/schema';
import type { BodyShadow } from './body';
import type { WireChain } from './wireChain';

/**
 * The complex vector pattern of an antenna at one frequency, in its own frame: boom along +x (forward), elements along y
 * when it is held flat, z up. Components along the spherical unit vectors theta (down from the zenith) and phi
 * (counter-clockwise from +x, seen from above). |theta|² + |phi|² is the gain as a power ratio over isotropic.
 */
export type Pattern = {
  readonly frequencyMHz: number;
  /** Writes thetaRe, thetaIm, phiRe, phiIm for a direction given by the unit vector into `out` (length 4). */
  readonly fieldInto: (x: number, y: number, z: number, out: Float64Array) => void;
  readonly forwardDbi: number;
  readonly impedanceOhm: readonly [number, number];
  /** What the body behind the antenna takes; not part of `fieldInto`. */
  readonly body?: BodyShadow;
};

/** One kind of antenna that can be carried. */
export type Antenna = {
  readonly id: AntennaId;
  readonly name: string;
  /** When one would take it, one sentence. */
  readonly whenToTake: string;
  /** The wires themselves, metres, cut for a design frequency: what is solved is what is drawn. */
  readonly wires: (designMHz: number) => readonly WireChain[];
  /** Roll in which a hand takes it up, degrees: elements level (0), or standing where it hears upright waves best that way (90). */
  readonly takenUpRollDeg: 0 | 90;
  /** Boom length in metres at a frequency. */
  readonly boomM: (frequencyMHz: number) => number;
  /** May it be carried along on foot? A long one is changed at the vehicle. */
  readonly onFoot: boolean;
  /** Design frequency under which it is too large to hold; 0 where there is none. */
  readonly leastMHz: number;
  readonly pattern: (frequencyMHz: number, designMHz: number) => Pattern;
};
