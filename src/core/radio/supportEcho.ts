import { type Complex, complex, exponential, multiply, scale } from '../units/complex';
import { cylinderCoefficient } from './cylinder';
import { secondLegDb } from './echoLeg';
import type { EchoScene } from './hillEcho';
import {
  type Candidate,
  carried,
  fadeWithDistance,
  fieldOverGround,
  type LineScene,
  lineWave,
  MOST_OVER_GROUND,
  mostOf,
  NO_FIELD,
  type OverGround,
  overGround,
  scattered,
} from './lineLeg';
import type { Lighting, LitLine, LitSupport } from './litLine';
import { placeOn, wireHit, wireSpread } from './thinWire';
import { wavelengthM, waveNumber } from './wavelength';
import { across, addFields, type Field, fieldAlong, lengthOfVector, minus, unit, type Vector } from './waveVector';

/** Guided wave: what it takes of the field at the line. Our assumption. */
const GUIDED_COUPLING = 0.3;

/**
 * Waves from the supports of a line: each an upright cylinder lit along its height, its pieces added with the ground's part at the
 * height of each; and what the wave guided by the line sends from it.
 */
export function supportCandidates(line: LitLine, scene: LineScene, leastPower: number): readonly Candidate[] {
  const entry = strongestLight(line);
  const found: Candidate[] = [];
  for (const support of line.supports) {
    const flatM = Math.max(0.5, Math.hypot(scene.receiver[0] - support.topM[0], scene.receiver[1] - support.topM[1]));
    const guide = guidedAmplitude(line, entry, support.topM, flatM, scene);
    const most = mostScattered(support, line.tag, flatM, scene) + guide;
    if (MOST_OVER_GROUND * most * most < leastPower) continue;
    const at = mirrorPoint(support, line.tag, scene);
    const fade = fadeWithDistance(lengthOfVector(minus(at, scene.receiver)));
    if (fade === 0 || MOST_OVER_GROUND * most * most * fade * fade < leastPower) continue;
    const secondDb = secondLegDb(scene.world, at, scene.receiver, scene.frequencyMHz);
    const onWay = most * most * fade * fade * 10 ** (-secondDb / 10);
    if (MOST_OVER_GROUND * onWay < leastPower) continue;
    const over = support.lights.map((light) => overGround(light.at, light.overM, scene));
    const mostPower = onWay * mostOverGround(over);
    if (mostPower >= leastPower) found.push({ mostPower, make: () => supportWave(support, { at, over, guide, secondDb }, line, scene) });
  }
  return found;
}

/** What is known of a support's wave before it is made: where it comes from, the ground at the height of each light, the guided part, edges. */
type Known = { readonly at: Vector; readonly over: readonly OverGround[]; readonly guide: number; readonly secondDb: number };

/** What the ground at the receiver makes of any part of a support's wave at most, as power: of the upright ones, and of both at the top. */
function mostOverGround(over: readonly OverGround[]): number {
  let most = mostOf(over[over.length - 1]!);
  for (const { v } of over) most = Math.max(most, v.re * v.re + v.im * v.im);
  return most;
}

/** Where the wave comes from: where the mirror point stands on the support. */
function mirrorPoint({ wires, topM }: LitSupport, tag: Vector, { receiver }: EchoScene): Vector {
  const [a, b] = [placeOn(wires[0]!, tag), placeOn(wires[0]!, receiver)];
  const lowM = wires[0]!.from[2];
  const zM = lowM + a.alongM + ((b.alongM - a.alongM) * a.awayM) / (a.awayM + b.awayM);
  return [topM[0], topM[1], Math.min(topM[2], Math.max(lowM, zM))];
}

function supportWave(support: LitSupport, { at, over, guide, secondDb }: Known, line: LitLine, scene: LineScene) {
  const { wires, lights, topM } = support;
  const turn = turnRound(line.tag, topM, scene.receiver);
  const hits = wires.map((wire) => wireHit(wire, line.tag, scene.receiver, wavelengthM(scene.frequencyMHz)));
  const first = hits[0]!;
  const coefficient = cylinderCoefficient(waveNumber(scene.frequencyMHz), wires[0]!.radiusM, first.sinBeta, turn);
  const field = wires.reduce<Field>((sum, wire, i) => {
    const hit = hits[i]!;
    const incident = addFields(
      carried(lights[i]!, multiply(hit.fromPart, over[i]!.v), hit, scene),
      carried(lights[i + 1]!, multiply(hit.toPart, over[i + 1]!.v), hit, scene),
    );
    return addFields(sum, scattered(wire, hit, incident, coefficient, scene));
  }, NO_FIELD);
  const along = fieldOverGround(guidedField(guide, support, line, scene), topM, over[over.length - 1]!, scene);
  const light = lights[Math.floor(lights.length / 2)]!;
  return lineWave('pole', addFields(field, along), { at, wayM: first.r1M + first.r2M, light, secondDb }, scene);
}

/**
 * No less than the field which a support scatters: each piece as bright as the brighter of its ends, its thickness at its most, and a
 * piece shorter than half a Fresnel length in proportion.
 */
function mostScattered({ wires, lights }: LitSupport, tag: Vector, r2M: number, scene: EchoScene): number {
  const k = waveNumber(scene.frequencyMHz);
  const r1M = Math.max(0.5, Math.hypot(tag[0] - wires[0]!.from[0], tag[1] - wires[0]!.from[1]));
  const halfM = Math.sqrt((wavelengthM(scene.frequencyMHz) * r1M * r2M) / (r1M + r2M));
  let light = 0;
  for (let i = 0; i < wires.length; i++)
    light += Math.max(lights[i]!.amplitude, lights[i + 1]!.amplitude) * Math.min(1.3, wires[i]!.lengthM / halfM);
  return light * Math.sqrt(2 / (Math.PI * k)) * (2 * k * wires[0]!.radiusM + 0.6) * wireSpread(r1M, r2M);
}

const strongestLight = (line: LitLine): Lighting => line.lights.reduce((best, light) => (light.amplitude > best.amplitude ? light : best));

/** Angle round an upright axis by which a wave turns from its way: 0 straight on, pi straight back. */
function turnRound(from: Vector, axis: Vector, to: Vector): number {
  const [inE, inN, outE, outN] = [axis[0] - from[0], axis[1] - from[1], to[0] - axis[0], to[1] - axis[1]];
  return Math.atan2(inE * outN - inN * outE, inE * outE + inN * outN);
}

/** What the wave guided by the line sends from a support: coupled at the best-lit support, losing so much per 100 m. */
function guidedAmplitude({ guidedDbPer100M }: LitLine, entry: Lighting, top: Vector, r2M: number, scene: EchoScene): number {
  const lossDb = (guidedDbPer100M * lengthOfVector(minus(top, entry.at))) / 100;
  return (GUIDED_COUPLING * entry.amplitude * 10 ** (-lossDb / 20)) / (waveNumber(scene.frequencyMHz) * Math.max(1, r2M));
}

/** It leaves upright. */
function guidedField(amplitude: number, { topM }: LitSupport, line: LitLine, scene: EchoScene): Field {
  const onward = minus(scene.receiver, topM);
  const wayM = lengthOfVector(minus(topM, strongestLight(line).at)) + lengthOfVector(onward);
  const phase: Complex = exponential(complex(0, -waveNumber(scene.frequencyMHz) * wayM));
  return fieldAlong(across([0, 0, 1], unit(onward)), scale(phase, amplitude));
}
