import { describe, expect, test } from 'vitest';
import { makeAirspace } from '../../../src/core/radio/arrivals';
import { coupledFields, makeBundle } from '../../../src/core/radio/bundle';
import { GROUND, permittivity } from '../../../src/core/radio/ground';
import { lineScene } from '../../../src/core/radio/lineLeg';
import { litLines } from '../../../src/core/radio/litLine';
import { spanCandidates } from '../../../src/core/radio/powerLineEcho';
import { supportCandidates } from '../../../src/core/radio/supportEcho';
import { makeWire, wireCoefficient, wireHit, wireSpread } from '../../../src/core/radio/thinWire';
import { plateEchoRatio } from '../../../src/core/radio/wallEcho';
import { wavelengthM, waveNumber } from '../../../src/core/radio/wavelength';
import { fieldSquared, type Vector } from '../../../src/core/radio/waveVector';
import { randomFor } from '../../../src/core/random/draw';
import type { Scenario } from '../../../src/core/scenario/schema';
import { toRad } from '../../../src/core/units/angles';
import { add, complex, exponential, magnitude, multiply, scale } from '../../../src/core/units/complex';
import { generateWorld } from '../../../src/core/world/generate';
import { valueAt } from '../../../src/core/world/grid';
import { plainScenario } from '../world/fixtureScenario';

const wire = makeWire([0, 0, 10], [200, 0, 10], 0.006);

/** What parallel wires send back over what reaches the middle of them, dB. */
function bundleEchoDb(asideM: readonly number[], deg: number): number {
  const k = waveNumber(150);
  const [beta, round] = [toRad(deg), toRad(250)];
  const source: Vector = [-60 * Math.cos(beta), 60 * Math.sin(beta), 0];
  const target: Vector = [15 * Math.cos(beta), 15 * Math.sin(beta) * Math.cos(round), 15 * Math.sin(beta) * Math.sin(round)];
  const bundle = makeBundle(asideM.map((y) => makeWire([-5_000, y, 0], [5_000, y, 0], 0.0125)));
  const hits = bundle.wires.map((one) => wireHit(one, source, target, wavelengthM(150)));
  const incident = hits.map((hit) => scale(exponential(complex(0, -k * (hit.r1M - 60))), 60 / hit.r1M));
  const fields = coupledFields(
    bundle,
    incident,
    hits.map((hit) => hit.at[0]),
    { across: k * Math.sin(beta), along: k * Math.cos(beta) },
  );
  const sum = hits.reduce((so, hit, i) => {
    const way = scale(exponential(complex(0, -k * hit.r2M)), wireSpread(hit.r1M, hit.r2M));
    return add(so, multiply(multiply(fields[i]!, wireCoefficient(k, 0.0125, hit.sinBeta)), way));
  }, complex(0));
  return 20 * Math.log10(magnitude(sum));
}

describe('thin wires and plates', () => {
  test('the point of a wire hit has equal angles to both ends within 1e-9', () => {
    const hit = wireHit(wire, [20, -150, 1], [150, 60, 2], 2);
    const [sourceCos, targetCos] = [(hit.at[0] - 20) / hit.r1M, (150 - hit.at[0]) / hit.r2M];
    expect(Math.abs(sourceCos - targetCos)).toBeLessThan(1e-9);
  });

  test('two halves of a wire give what the whole one gives within 1e-9', () => {
    const [source, target] = [
      [20, -150, 1],
      [150, 60, 2],
    ] as const;
    const whole = wireHit(wire, source, target, 2).window;
    const middle = [80, 0, 10] as const;
    const parts = [makeWire(wire.from, middle, 0.006), makeWire(middle, wire.to, 0.006)].map((part) => wireHit(part, source, target, 2));
    expect(Math.abs(parts[0]!.window.re + parts[1]!.window.re - whole.re)).toBeLessThan(1e-9);
    expect(Math.abs(parts[0]!.window.im + parts[1]!.window.im - whole.im)).toBeLessThan(1e-9);
  });

  test('a span fades out beyond its end: 100 m past the end less than a tenth of its field is left', () => {
    const { window } = wireHit(wire, [300, -30, 1], [300, 30, 2], 2);
    expect(Math.hypot(window.re, window.im)).toBeLessThan(0.1);
  });

  test('light that changes evenly along a wire is weighed at its ends: the two parts add up to the window within 1e-12', () => {
    const { window, fromPart, toPart } = wireHit(wire, [20, -150, 1], [150, 60, 2], 2);
    expect(Math.hypot(fromPart.re + toPart.re - window.re, fromPart.im + toPart.im - window.im)).toBeLessThan(1e-12);
  });

  // nec2c, 60 m of wire with lossy ends, radius 12.5 mm, 150 MHz, 60 m to the dipole and 15 m to the receiver 250 degrees round
  test.each([
    [[-0.6, -0.2, 0.2, 0.6], 90, -20.69],
    [[-0.6, -0.2, 0.2, 0.6], 60, -18.84],
    [[-0.95, 0, 0.95], 90, -38.44],
    [[-0.95, 0, 0.95], 60, -27.83],
    [[-4.2, 0, 4.2], 90, -21.43],
    [[-4.2, 0, 4.2], 60, -23.77],
  ] as const)('wires side by side at %j m, %i degrees, send back %f dB within 1 dB (wire solver nec2c)', (asideM, deg, db) => {
    expect(Math.abs(bundleEchoDb(asideM, deg) - db)).toBeLessThan(1);
  });

  test('a plate never sends back more than a mirror of its reflection coefficient', () => {
    expect(plateEchoRatio(0.5, 1e6, 1, 2, 50, 50, 100)).toBeCloseTo(0.5, 12);
  });
});

describe('the wave guided by a line', () => {
  const whip = { leanDeg: 0, towardDeg: 0 };
  const losing = (guidedDbPer100M?: number): Scenario => {
    const plain = plainScenario({ ground: { sizeM: 1_500, buildings: [] } });
    const route: [number, number][] = [
      [40, 700],
      [1_460, 760],
    ];
    const line = { voltage: 'medium' as const, route, spanM: 110, supportHeightM: 12, wireHeightM: 10, conductors: 3 };
    return {
      ...plain,
      ground: { ...plain.ground, powerLines: [line] },
      radio: { ...plain.radio, ...(guidedDbPer100M === undefined ? {} : { guidedDbPer100M }) },
      tags: [{ ...plain.tags[0]!, at: [160, 640], whip }],
    };
  };
  const world = generateWorld(losing());
  const space = (scenario: Scenario) => makeAirspace({ scenario, world, tagIndex: 0, tagAt: { eM: 160, nM: 640 } });
  const plain = space(losing());
  const site = (scenario: Scenario) => ({ scenario, world, tagIndex: 0, tagAt: { eM: 160, nM: 640 }, field: plain.field });

  test('loses 3 dB per 100 m where the scenario does not say, and what it says where it does', () => {
    expect(litLines(site(losing()))[0]!.guidedDbPer100M).toBe(3);
    expect(litLines(site(losing(0.5)))[0]!.guidedDbPer100M).toBe(0.5);
  });

  test('with 0.2 dB per 100 m the poles 1 km on send more than 20 dB above what they send with 30 dB per 100 m', () => {
    const sent = (db: number) => {
      const there = space(losing(db));
      for (const radial of plain.field.known()) there.field.put(radial);
      const { waves } = there.arrivalsAt({ eM: 1_200, nM: 765 }, 1.7);
      return 10 * Math.log10(waves.filter((w) => w.kind === 'pole').reduce((sum, w) => sum + fieldSquared(w), 1e-30));
    };
    expect(sent(0.2) - sent(30)).toBeGreaterThan(20);
  });
});

const LINES = [
  { voltage: 'low', spanM: 40, supportHeightM: 7, wireHeightM: 6, conductors: 2 },
  { voltage: 'low', spanM: 60, supportHeightM: 9, wireHeightM: 8, conductors: 4 },
  { voltage: 'medium', spanM: 110, supportHeightM: 12, wireHeightM: 10, conductors: 3 },
  { voltage: 'high', spanM: 250, supportHeightM: 30, wireHeightM: 18, conductors: 3 },
  { voltage: 'high', spanM: 250, supportHeightM: 45, wireHeightM: 32, conductors: 6 },
] as const;

/** A drawn ground with one line across it and a tag: the lit line, and scenes at drawn places near it and anywhere. */
function drawnLine(kind: (typeof LINES)[number], seed: number, places: number) {
  const random = randomFor(`bound-${seed}`, 'test');
  const between = (least: number, most: number) => least + (most - least) * random();
  const plain = plainScenario();
  const tagAt = { eM: between(600, 1_800), nM: between(600, 1_800) };
  const whip = { leanDeg: (Math.acos(random()) * 180) / Math.PI, towardDeg: between(0, 359) };
  const route: [number, number][] = [
    [between(50, 400), between(200, 2_200)],
    [between(2_000, 2_350), between(200, 2_200)],
  ];
  const relief = { style: seed % 2 === 0 ? ('ridged' as const) : ('plateau' as const), strengthM: 180, roughness: 0.5, baseHeightM: 220 };
  const scenario = plainScenario({
    seed: `bound-${seed}`,
    ground: { sizeM: 2_400, relief, farms: 0, buildings: [], powerLines: [{ ...kind, route }] },
    tags: [{ ...plain.tags[0]!, at: [tagAt.eM, tagAt.nM], whip }],
  });
  const world = generateWorld(scenario);
  const { field } = makeAirspace({ scenario, world, tagIndex: 0, tagAt });
  const line = litLines({ scenario, world, tagIndex: 0, tagAt, field })[0]!;
  const scenes = Array.from({ length: places }, (_, i) => {
    const [e, n] = line.lights[Math.floor(random() * line.lights.length)]!.at;
    const at =
      i % 2 === 0 ? { eM: e + between(-150, 150), nM: n + between(-150, 150) } : { eM: between(20, 2_380), nM: between(20, 2_380) };
    const receiver: Vector = [at.eM, at.nM, valueAt(world.groundM, at.eM, at.nM) + 1.7];
    return lineScene({ world, receiver, frequencyMHz: 150, eps: permittivity(GROUND.wet, 150) });
  });
  return { line, scenes };
}

describe('what is left out beside a line', () => {
  test.each(LINES.flatMap((kind) => [0, 1].map((seed) => [kind.voltage, kind.conductors, seed, kind] as const)))(
    '%s line of %i wires, ground %i: at 100 places no wave of a span or a support is stronger than it was said to be at most',
    (_, __, seed, kind) => {
      const { line, scenes } = drawnLine(kind, seed, 100);
      let tried = 0;
      const over: number[] = [];
      for (const scene of scenes) {
        for (const { mostPower, make } of [...spanCandidates(line, scene, 0), ...supportCandidates(line, scene, 0)]) {
          tried++;
          const power = fieldSquared(make());
          if (power > mostPower * (1 + 1e-9)) over.push(10 * Math.log10(power / mostPower));
        }
      }
      expect(tried).toBeGreaterThan(1_500);
      expect(over).toEqual([]);
    },
  );
});
