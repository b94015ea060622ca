import { valueAt } from '../world/grid';
import type { PowerLine, Support } from '../world/world';
import { directWave, type TagSite } from './directWave';
import { spaceVector } from './echoLeg';
import type { Wire } from './thinWire';
import type { LossBudget } from './wave';
import { type Field, fieldOf, lengthOfVector, minus, type Vector } from './waveVector';

/** What lights one support of a line: the field at wire height without its phase, times the distance, so that it may be carried along. */
export type Lighting = { readonly at: Vector; readonly field: Field; readonly r1M: number; readonly lossDb: LossBudget };

/** A conductor between two supports, and which lightings stand at its ends. */
export type LitSpan = Wire & { readonly fromLight: number; readonly toLight: number };

/** A power line as the tag lights it. */
export type LitLine = {
  readonly lights: readonly Lighting[];
  readonly spans: readonly LitSpan[];
  readonly supports: readonly (Wire & { readonly light: number; readonly kind: Support['kind'] })[];
  readonly tag: Vector;
};

/** Lines are lit at every support up to this many, then at every second, third … */
const MOST_LIGHTS = 30;

/** Lights all lines once per tag position. */
export function litLines(site: TagSite): readonly LitLine[] {
  const { world, tagAt, scenario, tagIndex } = site;
  const tag = spaceVector(tagAt, valueAt(world.groundM, tagAt.eM, tagAt.nM) + scenario.tags[tagIndex]!.heightM);
  return world.powerLines.filter((line) => line.supports.length > 0).map((line) => litLine(site, line, tag));
}

function litLine(site: TagSite, line: PowerLine, tag: Vector): LitLine {
  const every = Math.ceil(line.supports.length / MOST_LIGHTS);
  const chosen = line.supports.filter((_, i) => i % every === 0 || i === line.supports.length - 1);
  const lights = chosen.map((support): Lighting => {
    const wave = directWave(site, support.foot, support.heightM * 0.85, true).wave;
    const at: Vector = [support.foot.eM, support.foot.nM, support.foot.zM + support.heightM * 0.85];
    return { at, field: fieldOf(wave), r1M: lengthOfVector(minus(tag, at)), lossDb: wave.lossDb };
  });
  const nearest = (p: Vector): number => {
    let best = 0;
    lights.forEach((light, i) => {
      if (flatGap(light.at, p) < flatGap(lights[best]!.at, p)) best = i;
    });
    return best;
  };
  return {
    tag,
    lights,
    spans: line.spans.map((span) => {
      // a hanging wire reflects like the chord lowered by two thirds of its sag
      const lowered = (p: { eM: number; nM: number; zM: number }): Vector => [p.eM, p.nM, p.zM - (2 / 3) * span.sagM];
      const [from, to] = [lowered(span.from), lowered(span.to)];
      return { from, to, radiusM: span.conductorRadiusM, fromLight: nearest(from), toLight: nearest(to) };
    }),
    supports: line.supports.map((support) => {
      const from: Vector = [support.foot.eM, support.foot.nM, support.foot.zM];
      return {
        from,
        to: [from[0], from[1], from[2] + support.heightM],
        radiusM: support.radiusM,
        light: nearest(from),
        kind: support.kind,
      };
    }),
  };
}

const flatGap = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
