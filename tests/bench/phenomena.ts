import { crestsAndHollows, fadesLeft, ground, median, places, shrinkage, walksIntoView } from '../../src/cli/fidelity/hiddenSites';
import { percent } from '../../src/cli/fidelity/loudest';
import { linesTold } from './besideWires';

/** Everything on `count` drawn grounds, as lines of print. */
function told(count: number): readonly string[] {
  const grounds = [...Array(count).keys()].map(ground);
  const all = grounds.flatMap((g, seed) => places(g, seed, 40));
  const errors = (hidden: boolean) => all.filter((p) => p.hidden === hidden).map((p) => p.errorDeg);
  const off = (hidden: boolean) =>
    `${errors(hidden).length} places, median error ${median(errors(hidden)).toFixed(1)} degrees, off by more than 15 degrees ${percent(errors(hidden).map((e) => e > 15))}`;
  const stands = grounds.map((g, seed) => crestsAndHollows(g, seed, 300));
  const [crests, hollows] = [stands.flatMap((s) => s.crests), stands.flatMap((s) => s.hollows)];
  const left = grounds.flatMap((g, seed) => fadesLeft(g, seed, Math.ceil(100 / count)));
  const walks = grounds.flatMap((g, seed) => walksIntoView(g, seed, Math.ceil(100 / count)));
  return [
    `in view of the tag: ${off(false)}`,
    `hidden from it: ${off(true)} (goal 30 to 70 %)`,
    `crests lose ${median(crests).toFixed(1)} dB in the median, hollows ${median(hollows).toFixed(1)} dB (${crests.length} and ${hollows.length} places; goal 10 dB apart)`,
    `woodland fades deeper than 8 dB that end within 2 m: ${percent(left)} of ${left.length} (goal 30 %)`,
    `walks that come into view: ${walks.length}, of their strongest tenth of readings in view ${Math.round((100 * walks.reduce((sum, w) => sum + w.strongestInView, 0)) / walks.length)} %, the whole tenth on ${percent(walks.map((w) => w.strongestInView === 1))}`,
    `largest change of the direct wave over 0.25 m shrinks over 0.125 m at least ${Math.min(...grounds.map(shrinkage)).toFixed(2)} times (goal 1.7)`,
  ];
}

if (process.argv[1]?.endsWith('phenomena.ts')) {
  for (const line of told(Number(process.argv[2] ?? 4))) console.log(line);
  for (const line of linesTold(Number(process.argv[3] ?? 12))) console.log(line);
}
