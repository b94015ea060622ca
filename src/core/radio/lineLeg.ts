import { type Complex, complex, exponential, multiply, scale } from '../units/complex';
import { valueAt } from '../world/grid';
import { echoWave, sightOf } from './echoLeg';
import { tabledEarthRatios } from './flatEarth';
import { smoothStep } from './handOver';
import type { EchoScene } from './hillEcho';
import type { Lighting } from './litLine';
import { type Wire, type WireHit, wireSpread } from './thinWire';
import type { Wave, WaveKind } from './wave';
import { waveNumber } from './wavelength';
import {
  across,
  addFields,
  along,
  directionOf,
  type Field,
  fieldAlong,
  lengthOfVector,
  minus,
  partAlong,
  rightOf,
  turnField,
  unit,
  upOf,
  type Vector,
} from './waveVector';

/** Wires farther than this give nothing, fading from the first distance to the second, metres. */
const FADES_FROM_M = 1_200;
const GONE_AT_M = 1_500;

/** A wave that may prove too weak to be kept: no less than its power, and how to make it. (V/m)^2 for 1 W. */
export type Candidate = { readonly mostPower: number; readonly make: () => Wave };

export const NO_FIELD: Field = fieldAlong([0, 0, 0], complex(0));

/** The light at one end of a wire with its phase carried to the point of a hit, weighed by that end's part of the wire's window. */
export function carried(light: Lighting, part: Complex, hit: WireHit, scene: EchoScene): Field {
  const turn = exponential(complex(0, -waveNumber(scene.frequencyMHz) * (hit.r1M - light.r1M)));
  return turnField(light.field, multiply(turn, part));
}

/**
 * Field that a wire sends to the receiver: only the part in the plane of ray and wire excites it. The incident component along the
 * wire is that part times sin(beta), and the leaving field lies along the wire as far as it can. `incident` has the window in it.
 */
export const scattered = (wire: Wire, hit: WireHit, incident: Field, coefficient: Complex, scene: EchoScene): Field =>
  sentBy(wire, hit, partAlong(incident, wire.axis), coefficient, scene);

/** The same from the incident part along the wire, as a number. */
export function sentBy(wire: Wire, hit: WireHit, alongWire: Complex, coefficient: Complex, scene: EchoScene): Field {
  const k = waveNumber(scene.frequencyMHz);
  const { axis } = wire;
  const onward = unit(minus(scene.receiver, hit.at));
  const way = scale(exponential(complex(0, -k * hit.r2M)), wireSpread(hit.r1M, hit.r2M) / hit.sinBeta);
  const amplitude = multiply(multiply(alongWire, coefficient), way);
  const leaving = across(axis, onward);
  const size = lengthOfVector(leaving);
  return size < 1e-6 ? NO_FIELD : fieldAlong(along(leaving, 1 / size), amplitude);
}

/** Where a line's waves are received: the scene, and the antenna's height over its ground, metres. */
export type LineScene = EchoScene & { readonly overM: number };

export const lineScene = (scene: EchoScene): LineScene => ({
  ...scene,
  overM: Math.max(0.05, scene.receiver[2] - valueAt(scene.world.groundM, scene.receiver[0], scene.receiver[1])),
});

/** Field over flat ground at the receiver, of what leaves a point, over that in free space: upright and level. */
export type OverGround = { readonly v: Complex; readonly h: Complex };

/** `overM`: the point's height over its own ground, see `heightOverGroundM`. */
export function overGround([e, n]: Vector, overM: number, scene: LineScene): OverGround {
  const [east, north] = [e - scene.receiver[0], n - scene.receiver[1]];
  return tabledEarthRatios(scene.eps, scene.frequencyMHz, {
    distanceM: Math.max(0.5, Math.hypot(east, north)),
    h1M: overM,
    h2M: scene.overM,
  });
}

/** Brings a field over flat ground to the receiver, upright and level part each in its own way. */
export function fieldOverGround(field: Field, at: Vector, over: OverGround, scene: EchoScene): Field {
  const { azimuthDeg, elevationDeg } = directionOf(sightOf(scene.receiver, at));
  const [up, right] = [upOf(azimuthDeg, elevationDeg), rightOf(azimuthDeg)];
  return addFields(fieldAlong(up, multiply(partAlong(field, up), over.v)), fieldAlong(right, multiply(partAlong(field, right), over.h)));
}

/** Ground makes a field at most twice as strong, near terms a little more: as power. */
export const MOST_OVER_GROUND = 6;

/** What the ground makes of either polarization at most, as power. */
export const mostOf = ({ v, h }: OverGround): number => Math.max(v.re * v.re + v.im * v.im, h.re * h.re + h.im * h.im);

/** Share of the field that the distance to a line leaves. */
export const fadeWithDistance = (r2M: number): number => 1 - smoothStep(FADES_FROM_M, GONE_AT_M, r2M);

/** Where a wave comes from: the point, the whole way, what lights it, and the loss by edges on the way to the receiver, dB. */
export type Origin = { readonly at: Vector; readonly wayM: number; readonly light: Lighting; readonly secondDb: number };

/** A field at the receiver as a wave, edges of the ground on its way taken off. */
export function lineWave(kind: WaveKind, field: Field, { at, wayM, light, secondDb }: Origin, scene: EchoScene): Wave {
  const sight = sightOf(scene.receiver, at);
  const left = fadeWithDistance(lengthOfVector(sight)) * 10 ** (-secondDb / 20);
  return echoWave(kind, sight, turnField(field, complex(left)), wayM, { first: light.lossDb, secondDb }, scene.frequencyMHz);
}
