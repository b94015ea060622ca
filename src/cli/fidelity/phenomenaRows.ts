import { lineGround, standsOf, twoSidedTests } from './besideWires';
import { crestsAndHollows, fadesLeft, ground, median, places, shrinkage, walksIntoView } from './hiddenSites';
import { share } from './loudest';
import { once } from './once';
import type { CheckRow } from './row';

const GARROTT = 'Garrott 1986';
const TRADE = 'common practice, no source';

/** Seeds of the drawn grounds, of the whole sample and of the small one that is tried where nobody asks for all. */
const HILLS = { whole: [0, 1, 2], small: [0] } as const;
const PLATEAUS = { whole: [0, 1, 2, 3], small: [1] } as const;
const GENTLE = { whole: [0, 1, 2, 3], small: [2] } as const;

/**
 * What hills, woods and wires must do to those who listen, on drawn grounds with fixed seeds. The small sample takes seconds, the
 * whole one, of `--all`, a minute or two.
 */
export function phenomenaRows(whole: boolean): readonly CheckRow[] {
  const size = whole ? 'whole' : 'small';
  return [...hillRows(HILLS[size], whole), ...wireRows(PLATEAUS[size], GENTLE[size], whole)].map((row) =>
    whole ? row : { ...row, source: `${row.source}; a small drawn sample, the whole one with --all` },
  );
}

function hillRows(seeds: readonly number[], whole: boolean): readonly CheckRow[] {
  const grounds = once(() => seeds.map((seed) => ({ seed, at: ground(seed) })));
  const bearings = once(() => grounds().flatMap(({ seed, at }) => places(at, seed, 46)));
  const errorsDeg = (hidden: boolean) => bearings().flatMap((place) => (place.hidden === hidden ? [place.errorDeg] : []));
  const lossDb = (of: 'crests' | 'hollows') => median(grounds().flatMap(({ seed, at }) => crestsAndHollows(at, seed, 300)[of]));
  const walks = () => grounds().flatMap(({ seed, at }) => walksIntoView(at, seed, 12).map((walk) => walk.strongestInView));
  const fades = () => grounds().flatMap(({ seed, at }) => fadesLeft(at, seed, whole ? 34 : 20));
  return [
    {
      claim: 'bearings in view of the tag, median error: at most 4 degrees',
      unit: 'degrees',
      value: () => median(errorsDeg(false)),
      reference: 2,
      tolerance: 2,
      mark: 'P',
      source: `${GARROTT}: line of sight is accurate`,
    },
    {
      claim: 'hidden places whose bearing misleads by more than 15 degrees: 30 to 70 %',
      unit: '%',
      value: () => 100 * share(errorsDeg(true).map((deg) => deg > 15)),
      reference: 50,
      tolerance: 20,
      mark: 'P',
      source: `${GARROTT}: 52 % not accurate; 15 degrees is our reading`,
    },
    {
      claim: 'hollows lose more than crests in the median: 10 dB or more',
      unit: 'dB',
      value: () => lossDb('hollows') - lossDb('crests'),
      reference: 40,
      tolerance: 30,
      mark: 'T',
      source: TRADE,
    },
    {
      claim: 'walks that come into view: share of the strongest tenth of readings in view, nine of ten or more',
      unit: '%',
      value: () => 100 * (walks().reduce((sum, part) => sum + part, 0) / walks().length),
      reference: 100,
      tolerance: 10,
      mark: 'T',
      source: TRADE,
    },
    {
      claim: 'woodland fades deeper than 8 dB that end within 2 m: 30 % or more',
      unit: '%',
      value: () => 100 * share(fades()),
      reference: 65,
      tolerance: 35,
      mark: 'T',
      source: TRADE,
    },
    {
      claim: 'no steps: the largest change of the direct wave over 0.25 m shrinks over 0.125 m, 1.7 times or more',
      unit: 'times',
      value: () => Math.min(...grounds().map(({ at }) => shrinkage(at))),
      reference: 2,
      tolerance: 0.3,
      mark: 'D',
      source: 'law: a smooth function changes half as much over half the way',
    },
  ];
}

function wireRows(plateaus: readonly number[], gentle: readonly number[], whole: boolean): readonly CheckRow[] {
  const stands = once(() =>
    plateaus
      .flatMap((seed) => standsOf(lineGround(seed, 'plateau', 250), seed))
      .filter((stand) => stand.hidden && stand.lineOverRestDb > -3),
  );
  const gathered = () => 100 * share(stands().map((stand) => stand.gathers));
  const beside = 'within 40 m of a high line that is no fainter than all else by 3 dB, tag hidden';
  const tests = () => gentle.flatMap((seed) => twoSidedTests(lineGround(seed, 'ridged', 60), whole ? 60 : 120));
  return [
    {
      claim: `${beside}: loudest headings within 30 degrees of its strongest point, over 60 %`,
      unit: '%',
      value: gathered,
      reference: 80,
      tolerance: 20,
      mark: 'T',
      source: `${TRADE}; by chance 17 %`,
    },
    {
      claim: `${beside}: so many more than without its wires, 30 points or more`,
      unit: 'points',
      value: () => gathered() - 100 * share(stands().map((stand) => stand.gathersBare)),
      reference: 65,
      tolerance: 35,
      mark: 'T',
      source: TRADE,
    },
    {
      claim: 'two-sided test 25 m from the wires, ridges of 60 m: right in 90 % or more',
      unit: '%',
      value: () => 100 * share(tests().map(({ right }) => right)),
      reference: 100,
      tolerance: 10,
      mark: 'T',
      source: TRADE,
    },
  ];
}
