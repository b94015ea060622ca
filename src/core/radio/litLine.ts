import { magnitude } from '../units/complex';
import { valueAt } from '../world/grid';
import type { PowerLine, Support } from '../world/world';
import { type Bundle, makeBundle } from './bundle';
import { directWave, type TagSite } from './directWave';
import { heightOverGroundM, spaceVector } from './echoLeg';
import { makeWire, type Wire } from './thinWire';
import type { LossBudget } from './wave';
import { type Field, fieldOf, fieldPower, lengthOfVector, minus, partAlong, type Vector } from './waveVector';

/** What lights one support of a line: the field at wire height without its phase, times the distance, so that it may be carried along. */
export type Lighting = {
  readonly at: Vector;
  /** Over the ground under it, metres. */
  readonly overM: number;
  readonly field: Field;
  readonly amplitude: number;
  readonly r1M: number;
  readonly lossDb: LossBudget;
};

/** A conductor between two supports, which lightings stand at its ends, and the stronger of their fields' parts along it. */
export type LitSpan = Wire & { readonly fromLight: number; readonly toLight: number; readonly mostAlong: number };

/** A support cut into wires one over the other, lit at each cut from the foot to the top: in a shadow the top may see what the foot does not. */
export type LitSupport = { readonly wires: readonly Wire[]; readonly lights: readonly Lighting[]; readonly topM: Vector };

/** A power line as the tag lights it. */
export type LitLine = {
  /** At the height of the wires, at the chosen supports. */
  readonly lights: readonly Lighting[];
  /** Spans side by side, from one support to the next. */
  readonly bundles: readonly Bundle<LitSpan>[];
  readonly supports: readonly LitSupport[];
  readonly tag: Vector;
  /** Loss of the guided wave along the line, dB. */
  readonly guidedDbPer100M: number;
};

/** Lines are lit at every support up to this many, then at every second, third … */
const MOST_LIGHTS = 30;
/** Supports are lit at these heights, metres, and at their tops. */
const CUTS_M = [0, 3, 8, 18, 30];
/** The foot's light is read so high, metres: at the ground itself a level field is nil. */
const FOOT_M = 0.5;
/** Loss of the wave along a line where the scenario does not say, dB per 100 m: our assumption. */
const GUIDED_DB_PER_100_M = 3;

/** Lights all lines once per tag position. */
export function litLines(site: TagSite): readonly LitLine[] {
  const { world, tagAt, scenario, tagIndex } = site;
  const tag = spaceVector(tagAt, valueAt(world.groundM, tagAt.eM, tagAt.nM) + scenario.tags[tagIndex]!.heightM);
  return world.powerLines.filter((line) => line.supports.length > 0).map((line) => litLine(site, line, tag));
}

function litLine(site: TagSite, line: PowerLine, tag: Vector): LitLine {
  const every = Math.ceil(line.supports.length / MOST_LIGHTS);
  const chosen = line.supports.filter((_, i) => i % every === 0 || i === line.supports.length - 1);
  const hangM = hangingM(line);
  const lights = chosen.map((support) => lightAt(site, support, hangM, tag));
  const nearest = (p: Vector): number => {
    let best = 0;
    lights.forEach((light, i) => {
      if (flatGap(light.at, p) < flatGap(lights[best]!.at, p)) best = i;
    });
    return best;
  };
  const spans = line.spans.map((span): LitSpan => {
    // a hanging wire reflects like the chord lowered by two thirds of its sag
    const lowered = (p: { eM: number; nM: number; zM: number }): Vector => [p.eM, p.nM, p.zM - (2 / 3) * span.sagM];
    const [from, to] = [lowered(span.from), lowered(span.to)];
    const wire = makeWire(from, to, span.conductorRadiusM);
    const [fromLight, toLight] = [nearest(from), nearest(to)];
    const mostAlong = Math.max(...[fromLight, toLight].map((light) => magnitude(partAlong(lights[light]!.field, wire.axis))));
    return { ...wire, fromLight, toLight, mostAlong };
  });
  return {
    tag,
    lights,
    guidedDbPer100M: site.scenario.radio.guidedDbPer100M ?? GUIDED_DB_PER_100_M,
    bundles: sideBySide(line, spans),
    supports: line.supports.map((support) => litSupport(site, support, tag)),
  };
}

/** Spans by the support at which they begin. */
function sideBySide({ supports }: PowerLine, spans: readonly LitSpan[]): readonly Bundle<LitSpan>[] {
  const from = new Map<number, LitSpan[]>();
  for (const span of spans) {
    const gapsM = supports.map(({ foot }) => Math.hypot(foot.eM - span.from[0], foot.nM - span.from[1]));
    const nearest = gapsM.indexOf(Math.min(...gapsM));
    from.set(nearest, [...(from.get(nearest) ?? []), span]);
  }
  return [...from.values()].map(makeBundle);
}

/** Height of the lowest wires over the feet of their supports, metres. */
function hangingM({ supports, spans }: PowerLine): number {
  const foot = supports[0]!.foot;
  return spans.length === 0 ? supports[0]!.heightM : Math.max(1, spans[0]!.from.zM - foot.zM);
}

function lightAt(site: TagSite, { foot }: Support, heightM: number, tag: Vector): Lighting {
  const wave = directWave(site, foot, heightM, true).wave;
  const at: Vector = [foot.eM, foot.nM, foot.zM + heightM];
  const field = fieldOf(wave);
  return {
    at,
    overM: heightOverGroundM(site.world, at),
    field,
    amplitude: Math.sqrt(fieldPower(field)),
    r1M: lengthOfVector(minus(tag, at)),
    lossDb: wave.lossDb,
  };
}

function litSupport(site: TagSite, support: Support, tag: Vector): LitSupport {
  const { foot, heightM, radiusM } = support;
  const cuts = [...CUTS_M.filter((cut) => cut < heightM - 2), heightM];
  const up = (m: number): Vector => [foot.eM, foot.nM, foot.zM + m];
  return {
    wires: cuts.slice(1).map((to, i) => makeWire(up(cuts[i]!), up(to), radiusM)),
    lights: cuts.map((cut) => lightAt(site, support, Math.max(FOOT_M, cut), tag)),
    topM: up(heightM),
  };
}

const flatGap = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
