import { lineGround, type SideTest, type Stand, standsOf, twoSidedTests } from '../../src/cli/fidelity/besideWires';
import { percent } from '../../src/cli/fidelity/loudest';

/** Lower and upper bounds of the groups that are told apart, dB. */
const LIT_DB = [-99, 10, 20, 30, 40, 99] as const;
const OVER_REST_DB = [-99, -10, -3, 3, 99] as const;
const OVER_DIRECT_DB = [-99, -10, 0, 10, 99] as const;

/** Lines of print: a list in groups by one of its numbers. */
function inGroups<T>(
  list: readonly T[],
  edges: readonly number[],
  of: (one: T) => number,
  told: (group: readonly T[]) => string,
): string[] {
  return edges.slice(1).map((high, i) => {
    const low = edges[i]!;
    const range = low < -90 ? `under ${high}` : high > 90 ? `over ${low}` : `${low} to ${high}`;
    return `    ${range} dB: ${told(list.filter((one) => of(one) >= low && of(one) < high))}`;
  });
}

const gathered = (stands: readonly Stand[]): string =>
  `${stands.length} stands, within 30 degrees of the line's strongest point ${percent(stands.map((s) => s.gathers))}, without the wires ${percent(stands.map((s) => s.gathersBare))}`;

const sided = (tests: readonly SideTest[]): string => `${tests.length} tests, right ${percent(tests.map((t) => t.right))}`;

/** All about power lines on `count` drawn grounds of each kind, as lines of print. */
export function linesTold(count: number): readonly string[] {
  const hidden = (['ridged', 'plateau'] as const).flatMap((style) =>
    [...Array(count).keys()]
      .flatMap((seed) => standsOf(lineGround(seed, style, style === 'ridged' ? 180 : 250), seed))
      .filter((s) => s.hidden),
  );
  const tests = (strengthM: number) => [...Array(count).keys()].flatMap((seed) => twoSidedTests(lineGround(seed, 'ridged', strengthM), 90));
  const [gentle, steep] = [tests(60), tests(180)];
  return [
    `20 to 40 m from a high line, tag hidden: ${gathered(hidden)}`,
    '  by the light on the wires over that at the walker',
    ...inGroups(hidden, LIT_DB, (s) => s.litOverDb, gathered),
    "  by the line's waves over all others",
    ...inGroups(hidden, OVER_REST_DB, (s) => s.lineOverRestDb, gathered),
    `two-sided test 25 m from the wires, ridges of 60 m: ${sided(gentle)}`,
    `two-sided test 25 m from the wires, ridges of 180 m: ${sided(steep)}`,
    `  in view ${sided(steep.filter((t) => !t.hidden))}; hidden ${sided(steep.filter((t) => t.hidden))}`,
    "  both, by the line's waves over the direct one",
    ...inGroups([...gentle, ...steep], OVER_DIRECT_DB, (t) => t.lineOverDirectDb, sided),
  ];
}

if (process.argv[1]?.endsWith('besideWires.ts')) for (const line of linesTold(Number(process.argv[2] ?? 12))) console.log(line);
