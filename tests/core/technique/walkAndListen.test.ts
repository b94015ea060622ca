import { expect, test } from 'vitest';
import type { RunState } from '../../../src/core/run/state';
import { judgeView } from '../../../src/core/technique/clearView';
import type { Evidence } from '../../../src/core/technique/habit';
import type { Outlook } from '../../../src/core/technique/outlook';
import { judgeWalk, walkAndListen } from '../../../src/core/technique/walkAndListen';
import { wrapBearingDeg } from '../../../src/core/units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../../../src/core/units/frames';
import { type Hands, handmadeOutlook, handmadeRun, handmadeWorld, MIDDLE, minutes, out } from './handmadeRun';

/** A hunt with something of everything: a good line, a wrong turn, close readings, stands, wires, a contradiction. */
const variedHunt = (hands: Hands) => {
  hands.walkTo(out(180, 1_200));
  for (const [marked, along, lengthM] of [
    [10, 5, 120],
    [8, 12, 90],
    [355, 80, 160],
    [330, 340, 22],
    [335, 338, 130],
    [200, 190, 100],
    [340, 350, 200],
    [350, 10, 140],
  ] as const) {
    hands.sweep(13);
    hands.stand(4);
    hands.mark(marked);
    hands.stand(20);
    hands.walk(along, lengthM);
  }
};
const WIRES = [[out(200, 900), out(140, 700)]] as const;
const views = (at: MapPoint) => 50 + 40 * Math.sin(distanceM(at, out(70, 500)) / 60);

test('half the mean of the shown parts and half the lowest make the score', () => {
  const { score, components } = judgeWalk(handmadeRun(variedHunt), handmadeOutlook(views));
  const shown = Object.values(components).map((part) => part!);
  expect(Object.keys(components)).toEqual(['moves', 'spreads', 'follows', 'keepsLine']);
  expect(new Set(shown.map(Math.round)).size).toBeGreaterThan(2);
  expect(score).toBeCloseTo((shown.reduce((a, b) => a + b) / 4 + Math.min(...shown)) / 2, 9);
});

test('parts that were not shown count neither as 0 nor as 100', () => {
  const onlyMoves = judgeWalk(
    handmadeRun((hands) => {
      hands.walk(0, 1.4 * 450);
      hands.stand(550);
    }),
    handmadeOutlook(),
  );
  expect(onlyMoves.components).toMatchObject({ spreads: null, follows: null, keepsLine: null });
  expect(onlyMoves.score).toBeCloseTo(50, 0);
});

test('a run of a minute without a reading is not shown and says why', () => {
  const result = judgeWalk(
    handmadeRun(({ stand }) => stand(60)),
    handmadeOutlook(),
  );
  expect(result.score).toBeNull();
  expect(result.whyNotShown).not.toBe('');
});

test('at most two good and two bad moments are told, each with a next action', () => {
  const { moments } = judgeWalk(handmadeRun(variedHunt), handmadeOutlook(views));
  expect(moments.filter(({ good }) => good).length).toBeLessThanOrEqual(2);
  expect(moments.filter(({ good }) => !good)).toHaveLength(2);
  for (const { what, next, fromS, toS } of moments) {
    expect(what).toMatch(/^(At|From) \d+:\d\d/);
    expect(next).toMatch(/^[A-Z].*\.$/);
    expect(toS).toBeGreaterThanOrEqual(fromS);
  }
});

const about = (at: MapPoint, byDeg: number): MapPoint => stepAlong(MIDDLE, bearingDeg(MIDDLE, at) + byDeg, distanceM(MIDDLE, at));

/** The log, the wires and the views turned about the middle. */
function turnedBy(byDeg: number): { readonly evidence: Evidence; readonly outlook: Outlook } {
  const straight = handmadeRun(variedHunt, { world: handmadeWorld({ wires: WIRES }) });
  const world = handmadeWorld({ wires: WIRES.map(([a, b]) => [about(a, byDeg), about(b, byDeg)] as const) });
  const state = (s: RunState): RunState => ({
    ...s,
    at: about(s.at, byDeg),
    hold: { ...s.hold, headingDeg: wrapBearingDeg(s.hold.headingDeg + byDeg) },
    notebook: s.notebook.map((m) => ({ ...m, at: about(m.at, byDeg), bearingDeg: wrapBearingDeg(m.bearingDeg + byDeg) })),
  });
  const evidence = {
    exercise: { ...straight.exercise, world },
    run: { ...straight.run, state: state(straight.run.state), states: straight.run.states.map(state) },
  };
  return { evidence, outlook: handmadeOutlook((at) => views(about(at, -byDeg))) };
}

test('everything turned by 37 degrees gets the same scores to a point', () => {
  const [straight, turned] = [turnedBy(0), turnedBy(37)];
  for (const judge of [judgeWalk, judgeView]) {
    const [a, b] = [judge(straight.evidence, straight.outlook), judge(turned.evidence, turned.outlook)];
    expect(a.score).not.toBeNull();
    expect(Math.abs(a.score! - b.score!)).toBeLessThan(1);
    for (const [name, part] of Object.entries(a.components)) expect(Math.abs((part ?? -1) - (b.components[name] ?? -1))).toBeLessThan(1);
  }
});

test('half an hour with thirty readings is judged on real views in half a second of processor time', () => {
  const rolling = handmadeWorld({ heightM: (eM, nM) => 100 + 40 * Math.sin(eM / 310) * Math.cos(nM / 270) });
  const run = handmadeRun(
    (hands) => {
      hands.walkTo(out(180, 1_000));
      for (let i = 0; i < 30; i++) {
        hands.mark(20 - 1.3 * i + (i % 7));
        hands.stand(8);
        hands.walk(10 - i, 64);
      }
    },
    { world: rolling },
  );
  expect(run.run.states.length).toBeGreaterThan(20 * minutes(25));
  const began = process.cpuUsage();
  expect(walkAndListen.judge(run).score).not.toBeNull();
  expect(process.cpuUsage(began).user / 1000).toBeLessThan(500);
});
