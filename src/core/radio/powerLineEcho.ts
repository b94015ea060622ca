import { magnitude } from '../units/complex';
import { type Bundle, coupledFields } from './bundle';
import { heightOverGroundM, secondLegDb } from './echoLeg';
import type { EchoScene } from './hillEcho';
import {
  type Candidate,
  carried,
  fadeWithDistance,
  fieldOverGround,
  type LineScene,
  lineScene,
  lineWave,
  MOST_OVER_GROUND,
  mostOf,
  NO_FIELD,
  type OverGround,
  overGround,
  sentBy,
} from './lineLeg';
import type { Lighting, LitLine, LitSpan } from './litLine';
import { supportCandidates } from './supportEcho';
import { placeOn, wireCoefficient, wireHit, wireSpread } from './thinWire';
import type { Wave } from './wave';
import { wavelengthM, waveNumber } from './wavelength';
import {
  addFields,
  dot,
  fieldPower,
  fieldSquared,
  lengthOfVector,
  minus,
  partAlong,
  plus,
  along as stretched,
  type Vector,
} from './waveVector';

/** Waves weaker than this are left out whatever else there is, (V/m)^2 for 1 W. */
const LEAST_POWER = 1e-24;
/** Waves this far below the strongest of their line are left out, dB. */
const LEAST_DB = 40;

/**
 * Waves from conductors and supports of power lines at a receiver. Conductors of one span add coherently into one wave. Waves under
 * `leastPower`, (V/m)^2 for 1 W, are left out.
 */
export function lineEchoes(lines: readonly LitLine[], scene: EchoScene, leastPower = LEAST_POWER): readonly Wave[] {
  const there = lineScene(scene);
  return lines.flatMap((line) =>
    keptWaves([...spanCandidates(line, there, leastPower), ...supportCandidates(line, there, leastPower)], leastPower),
  );
}

/**
 * Waves within LEAST_DB of the strongest, in the order of the candidates. Likely strong ones are made first, so that those which cannot
 * be kept are never made: how tight the bounds are changes neither the waves nor their order.
 */
function keptWaves(candidates: readonly Candidate[], leastPower: number): readonly Wave[] {
  const byMost = candidates.map((candidate, place) => ({ ...candidate, place })).sort((a, b) => b.mostPower - a.mostPower);
  const made: { readonly wave: Wave; readonly power: number; readonly place: number }[] = [];
  let least = leastPower;
  for (const { mostPower, make, place } of byMost) {
    if (mostPower < least) break;
    const wave = make();
    const power = fieldSquared(wave);
    made.push({ wave, power, place });
    least = Math.max(least, power / 10 ** (LEAST_DB / 10));
  }
  const kept = made.filter(({ power }) => power > least);
  return kept.sort((a, b) => a.place - b.place).map(({ wave }) => wave);
}

/** One candidate for the spans that hang from the same lighting. */
export function spanCandidates(line: LitLine, scene: LineScene, leastPower: number): readonly Candidate[] {
  const found: Candidate[] = [];
  for (const bundle of line.bundles) {
    let most = 0;
    for (const span of bundle.wires) most += mostFromSpan(span, line, scene);
    if (MOST_OVER_GROUND * most * most < leastPower) continue;
    const ways = waysOf(bundle, line, scene);
    const mostPower = mostByWays(ways, most * most, leastPower, scene);
    if (mostPower >= leastPower) found.push({ mostPower, make: () => spanWave(bundle, ways, line, scene) });
  }
  return found;
}

/** The way from a wire to the receiver: where it begins, what the ground makes of it, the distance's share, edges once they are known. */
type Way = { readonly at: Vector; readonly over: OverGround; readonly fade: number; secondDb: number | undefined };

function waysOf({ wires }: Bundle<LitSpan>, { tag }: LitLine, scene: LineScene): readonly Way[] {
  return wires.map((span) => {
    const [a, b] = [placeOn(span, tag), placeOn(span, scene.receiver)];
    const s = a.alongM + ((b.alongM - a.alongM) * a.awayM) / (a.awayM + b.awayM);
    const at = onSpan(span, s / span.lengthM);
    const fade = fadeWithDistance(lengthOfVector(minus(at, scene.receiver)));
    return { at, over: overGround(at, heightOverGroundM(scene.world, at), scene), fade, secondDb: undefined };
  });
}

const secondDbOf = (way: Way, { world, receiver, frequencyMHz }: EchoScene): number => {
  way.secondDb ??= secondLegDb(world, way.at, receiver, frequencyMHz);
  return way.secondDb;
};

/**
 * No less than the power of a wave that leaves with `power` from one of these ways. Edges are asked for only until one way lets enough
 * pass: they cost most.
 */
function mostByWays(ways: readonly Way[], power: number, leastPower: number, scene: EchoScene): number {
  let most = 0;
  for (const way of ways) {
    let left = power * mostOf(way.over) * way.fade * way.fade;
    if (left >= leastPower && most < leastPower) left *= 10 ** (-secondDbOf(way, scene) / 10);
    most = Math.max(most, left);
  }
  return most;
}

function spanWave(bundle: Bundle<LitSpan>, ways: readonly Way[], line: LitLine, scene: LineScene): Wave {
  const k = waveNumber(scene.frequencyMHz);
  const hits = bundle.wires.map((span) => wireHit(span, line.tag, scene.receiver, wavelengthM(scene.frequencyMHz)));
  const lights = bundle.wires.map((span): readonly [Lighting, Lighting] => [line.lights[span.fromLight]!, line.lights[span.toLight]!]);
  const incident = bundle.wires.map((span, i) => {
    const [[a, b], hit] = [lights[i]!, hits[i]!];
    return partAlong(addFields(carried(a, hit.fromPart, hit, scene), carried(b, hit.toPart, hit, scene)), span.axis);
  });
  const first = hits[0]!;
  const { axis } = bundle.wires[0]!;
  const cosBeta = dot(minus(first.at, line.tag), axis) / first.r1M;
  const alongM = hits.map((hit) => dot(minus(hit.at, first.at), axis));
  const alongWires = coupledFields(bundle, incident, alongM, { across: k * first.sinBeta, along: k * cosBeta });
  let field = NO_FIELD;
  let [best, strongest] = [-1, 0];
  bundle.wires.forEach((span, i) => {
    const hit = hits[i]!;
    const part = sentBy(span, hit, alongWires[i]!, wireCoefficient(k, span.radiusM, hit.sinBeta), scene);
    const power = fieldPower(part);
    field = addFields(field, part);
    if (power > best) {
      best = power;
      strongest = i;
    }
  });
  const [hit, way] = [hits[strongest]!, ways[strongest]!];
  const light = lights[strongest]![hit.share < 0.5 ? 0 : 1];
  const from = { at: way.at, wayM: hit.r1M + hit.r2M, light, secondDb: secondDbOf(way, scene) };
  return lineWave('wire', fieldOverGround(field, way.at, way.over, scene), from, scene);
}

/**
 * No less than what a span sends to the receiver, in a few operations: the more of its lights along it, and the
 * Fresnel window beyond the span's ends no more than 1/(pi v sqrt 2) each side.
 */
function mostFromSpan(span: LitSpan, { tag }: LitLine, { receiver, frequencyMHz }: EchoScene): number {
  const k = waveNumber(frequencyMHz);
  const a = placeOn(span, tag);
  const b = placeOn(span, receiver);
  const s = a.alongM + ((b.alongM - a.alongM) * a.awayM) / (a.awayM + b.awayM);
  const r1M = Math.hypot(a.awayM, s - a.alongM);
  const r2M = Math.hypot(b.awayM, s - b.alongM);
  const sine = Math.max(0.02, a.awayM / r1M);
  const beyondM = Math.max(0, -s, s - span.lengthM);
  const v = beyondM * sine * Math.sqrt((k / Math.PI) * (1 / r1M + 1 / r2M));
  const window = v > 0.5 ? 0.75 / v : 1.5;
  // lights pull the sum beyond either where the point of equal angles lies off the span
  const pull = 1 + (2 * beyondM) / span.lengthM;
  return span.mostAlong * pull * window * magnitude(wireCoefficient(k, span.radiusM, sine)) * (wireSpread(r1M, r2M) / sine);
}

/** Where a span's wave comes from: the point of equal angles, or the end next to it. */
function onSpan(span: LitSpan, share: number): Vector {
  return plus(span.from, stretched(minus(span.to, span.from), Math.min(1, Math.max(0, share))));
}
