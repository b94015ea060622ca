import { agreement, hardness, MEASURES, type Measured, pairsOfLadders, rankCorrelation } from './order';

const share = (value: number): string => `${Math.round(100 * value)} %`;
const minutes = (s: number): string => `${(s / 60).toFixed(0)} min`;
const signed = (value: number | null): string => (value === null ? '–' : value.toFixed(2).replace('-', '−'));

/** The page of the guide. `lessons` gives the ladders their order. */
export function libraryPage(all: readonly Measured[], lessons: readonly string[]): string {
  const sorted = [...all].sort((a, b) => lessons.indexOf(a.lesson) - lessons.indexOf(b.lesson) || a.level - b.level);
  const hard = hardness(sorted);
  const levels = sorted.map(({ level }) => level);
  const pairs = pairsOfLadders(sorted);
  const lines = (['hardness', ...Object.keys(MEASURES)] as ('hardness' | keyof typeof MEASURES)[]).map((name) => {
    const values = name === 'hardness' ? hard : sorted.map(MEASURES[name]);
    const { agree, same, against } = agreement(pairs, values);
    return `| ${name} | ${signed(rankCorrelation(levels, values))} | ${agree} | ${same} | ${against.length} |`;
  });
  const against = agreement(pairs, hard).against.map(
    ([lower, higher]) =>
      `*${sorted[lower]!.title}* (${sorted[lower]!.level}) came out harder than *${sorted[higher]!.title}* (${sorted[higher]!.level})`,
  );
  const rows = sorted.map(
    (one, i) =>
      `| ${one.lesson} | ${one.level} | ${one.title} | ${share(1 - one.missedShare)} | ${minutes(one.timeS)} | ${one.parS === undefined ? '–' : minutes(one.parS)} | ${one.errorDeg.toFixed(0)}° | ${share(one.misleadingShare)} | ${hard[i]!.toFixed(1)} |`,
  );
  return `# The library, measured

How hard the exercises of the program are, by rehearsal: the steady walker did each ${sorted[0]!.walks} times, each time with another ear. Written by
\`npm run library -- --state FILE --report\`. The steady walker makes no mistakes of a learner, so this orders exercises and says nothing of how long
somebody else takes.

*Time* is the middle one, a walk without a find counted as long as the exercise lasts. *Error* is the middle error of a bearing;
one that is off by more than 15° *misleads*. *Hardness* is the mean of the four ranks of an exercise among all ${sorted.length}, by share not found, time, error and share that misleads.

Levels go by time first, since a long exercise asks for more decisions; where an exercise of a lower level misleads far more often than one above it, it
has been set to the same level. *From three walls* is a fix from stations and *Gone with the scent* and *Last heard at dusk* are long: they mislead
little, and that is not what makes them hard.

## Do the levels agree with it?

Rank correlation of level with each (Spearman; 1 is the same order, 0 none), over all exercises. Then the ${pairs.length} pairs of
different levels within one ladder: in how many the higher level measures more, the same, or less.

| measured by | correlation | more | same | less |
|---|---|---|---|---|
${lines.join('\n')}

${against.length === 0 ? 'Within its ladder no exercise comes out harder than one of a higher level.' : `Against their levels by hardness: ${against.join('; ')}.`}

## All exercises

| ladder | level | exercise | found | time | par | error | mislead | hardness |
|---|---|---|---|---|---|---|---|---|
${rows.join('\n')}
`;
}
