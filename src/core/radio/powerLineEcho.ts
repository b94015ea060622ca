import { type Complex, complex, exponential, multiply, scale } from '../units/complex';
import { valueAt } from '../world/grid';
import { echoWave, secondLegDb, sightOf } from './echoLeg';
import { flatEarthRatio } from './flatEarth';
import { smoothStep } from './handOver';
import type { EchoScene } from './hillEcho';
import type { Lighting, LitLine } from './litLine';
import { type Wire, type WireHit, wireCoefficient, wireHit, wireSpread } from './thinWire';
import type { Wave, WaveKind } from './wave';
import { wavelengthM, waveNumber } from './wavelength';
import {
  across,
  addFields,
  along,
  directionOf,
  type Field,
  fieldAlong,
  fieldPower,
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
/** Waves weaker than this are left out whatever else there is, (V/m)^2 for 1 W. */
const LEAST_POWER = 1e-24;
/** Waves this far below the strongest of their line are left out, dB. */
const LEAST_DB = 40;
/** Guided wave: what it takes of the field at the line, and loss along the line. Our assumptions. */
const GUIDED_COUPLING = 0.3;
const GUIDED_DB_PER_100_M = 3;

/** Waves from conductors and supports of power lines at a receiver. Conductors of one span add coherently into one wave. */
export function lineEchoes(lines: readonly LitLine[], scene: EchoScene): readonly Wave[] {
  return lines.flatMap((line) => {
    const waves = [...spanWaves(line, scene), ...supportWaves(line, scene)];
    const powers = waves.map((w) => w.power);
    const least = Math.max(LEAST_POWER, Math.max(...powers) / 10 ** (LEAST_DB / 10));
    return waves.filter((w) => w.power > least).map((w) => w.wave);
  });
}

type Weighed = { readonly wave: Wave; readonly power: number };

function spanWaves(line: LitLine, scene: EchoScene): readonly Weighed[] {
  const groups = new Map<number, { field: Field; at: Vector; wayM: number; best: number; light: Lighting }>();
  for (const span of line.spans) {
    const hit = wireHit(span, line.tag, scene.receiver, wavelengthM(scene.frequencyMHz));
    const share = Math.min(1, Math.max(0, hit.share));
    const [a, b] = [line.lights[span.fromLight]!, line.lights[span.toLight]!];
    const light = share < 0.5 ? a : b;
    const incident = addFields(carried(a, hit, scene, 1 - share), carried(b, hit, scene, share));
    const field = scattered(span, hit, incident, scene);
    const known = groups.get(span.fromLight);
    const power = fieldPower(field);
    const strongest = !known || power > known.best;
    groups.set(span.fromLight, {
      field: known ? addFields(known.field, field) : field,
      at: strongest ? hit.at : known.at,
      wayM: strongest ? hit.r1M + hit.r2M : known.wayM,
      best: Math.max(power, known?.best ?? 0),
      light: strongest ? light : known.light,
    });
  }
  return [...groups.values()].map(({ field, at, wayM, light }) => received('wire', field, at, wayM, light, scene));
}

function supportWaves(line: LitLine, scene: EchoScene): readonly Weighed[] {
  const entry = strongestLight(line);
  return line.supports.map((support) => {
    const hit = wireHit(support, line.tag, scene.receiver, wavelengthM(scene.frequencyMHz));
    const light = line.lights[support.light]!;
    const own = scattered(support, hit, carried(light, hit, scene, 1), scene);
    const field = addFields(own, guided(entry, support, hit, scene));
    return received('pole', field, hit.at, hit.r1M + hit.r2M, light, scene);
  });
}

const strongestLight = (line: LitLine): Lighting =>
  line.lights.reduce((best, light) => (fieldPower(light.field) > fieldPower(best.field) ? light : best));

/** The lighting of a support carried to the point of a hit: amplitude by distance, phase by the way, and a share of it. */
function carried(light: Lighting, hit: WireHit, scene: EchoScene, share: number): Field {
  const turn = exponential(complex(0, -waveNumber(scene.frequencyMHz) * (hit.r1M - light.r1M)));
  return turnField(light.field, scale(turn, (share * light.r1M) / hit.r1M));
}

/**
 * Field that a wire sends to the receiver: only the part in the plane of ray and wire excites it. The incident component along the
 * wire is that part times sin(beta), and the leaving field lies along the wire as far as it can.
 */
function scattered(wire: Wire, hit: WireHit, incident: Field, scene: EchoScene): Field {
  const k = waveNumber(scene.frequencyMHz);
  const axis = unit(minus(wire.to, wire.from));
  const onward = unit(minus(scene.receiver, hit.at));
  const exciting = partAlong(incident, axis);
  const coefficient = wireCoefficient(k, wire.radiusM, hit.sinBeta);
  const way = scale(exponential(complex(0, -k * hit.r2M)), wireSpread(hit.r1M, hit.r2M) / hit.sinBeta);
  const amplitude = multiply(multiply(exciting, multiply(coefficient, hit.window)), way);
  const leaving = across(axis, onward);
  const size = lengthOfVector(leaving);
  return size < 1e-6 ? fieldAlong([0, 0, 0], complex(0)) : fieldAlong(along(leaving, 1 / size), amplitude);
}

/** What the wave guided by the line sends from a support, upright: coupled at the best-lit support, losing so much per 100 m. */
function guided(entry: Lighting, support: Wire, hit: WireHit, scene: EchoScene): Field {
  const k = waveNumber(scene.frequencyMHz);
  const alongM = lengthOfVector(minus(support.to, entry.at));
  const amplitude =
    (GUIDED_COUPLING * Math.sqrt(fieldPower(entry.field)) * 10 ** ((-GUIDED_DB_PER_100_M * alongM) / 2000)) / (k * Math.max(1, hit.r2M));
  const onward = unit(minus(scene.receiver, hit.at));
  return fieldAlong(across([0, 0, 1], onward), scale(exponential(complex(0, -k * (alongM + hit.r2M))), amplitude));
}

/** Brings a field over the ground to the receiver: flat earth under the second leg, edges, and the fade with distance. */
function received(kind: WaveKind, field: Field, at: Vector, wayM: number, light: Lighting, scene: EchoScene): Weighed {
  const sight = sightOf(scene.receiver, at);
  const r2M = lengthOfVector(sight);
  const { azimuthDeg, elevationDeg } = directionOf(sight);
  const secondDb = secondLegDb(scene.world, at, scene.receiver, scene.frequencyMHz);
  const fade = (1 - smoothStep(FADES_FROM_M, GONE_AT_M, r2M)) * 10 ** (-secondDb / 20);
  const [up, right] = [upOf(azimuthDeg, elevationDeg), rightOf(azimuthDeg)];
  const path = {
    distanceM: Math.max(0.5, Math.hypot(sight[0], sight[1])),
    h1M: Math.max(1, at[2] - valueAt(scene.world.groundM, at[0], at[1])),
    h2M: Math.max(0.05, scene.receiver[2] - valueAt(scene.world.groundM, scene.receiver[0], scene.receiver[1])),
  };
  const over = (pol: 'v' | 'h'): Complex => scale(flatEarthRatio(scene.eps, pol, scene.frequencyMHz, path), fade);
  const whole = addFields(
    fieldAlong(up, multiply(partAlong(field, up), over('v'))),
    fieldAlong(right, multiply(partAlong(field, right), over('h'))),
  );
  const power = Math.max(1e-30, fieldPower(whole));
  return { wave: echoWave(kind, sight, whole, wayM, { first: light.lossDb, secondDb }, scene.frequencyMHz), power };
}
