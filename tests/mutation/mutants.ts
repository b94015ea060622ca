import { readFileSync } from 'node:fs';

/** One deliberate break: in a file of `src/core/technique`, `find` (which stands there once) becomes `put`. */
export type Mutant = { readonly habit: string; readonly file: string; readonly what: string; readonly find: string; readonly put: string };

const QUIET = 'quietGain';
const SWEEP = 'setThenSweep';
const WALK = 'walkAndListen';
const VIEW = 'clearView';
const PRACTICE = 'keepPractising';
const ALL = 'grade';

/** Which habit a file with numbers serves. */
const HABIT_OF: Readonly<Record<string, string>> = {
  sweeps: SWEEP,
  readings: WALK,
  quietGain: QUIET,
  timeToCut: QUIET,
  setThenSweep: SWEEP,
  fullLook: SWEEP,
  movesPart: WALK,
  spreadsPart: WALK,
  followsPart: WALK,
  legs: WALK,
  keepsLinePart: WALK,
  gainDistance: VIEW,
  placesPart: VIEW,
  clearView: VIEW,
  answersPart: VIEW,
  setbacks: VIEW,
  keepPractising: PRACTICE,
  grade: ALL,
};

/** A quarter more and a fifth less, at least by one where the number counts things. */
const SHIFTS: readonly (readonly [string, (value: number, counts: boolean) => number])[] = [
  ['larger', (value, counts) => (counts ? Math.max(value + 1, Math.round(1.25 * value)) : 1.25 * value)],
  ['smaller', (value, counts) => (counts ? Math.min(value - 1, Math.round(0.8 * value)) : 0.8 * value)],
];

/** Every number that the guide lists, once larger and once smaller. */
function numberMutants(): readonly Mutant[] {
  const rows = [...readFileSync('assets/guide/grade.md', 'utf8').matchAll(/^\| (\w+) \| ([A-Z_]+) \| ([\d.]+) \|/gm)];
  return rows.flatMap(([, file, name, told]) =>
    SHIFTS.map(([way, shifted]): Mutant => {
      const value = Number(told);
      const source = readFileSync(`src/core/technique/${file}.ts`, 'utf8');
      const find = new RegExp(`const ${name} = [\\d._]+;`).exec(source)?.[0] ?? `const ${name} =`;
      const put = `const ${name} = ${shifted(value, Number.isInteger(value))};`;
      return { habit: HABIT_OF[file!] ?? file!, file: file!, what: `${name} ${way}`, find, put };
    }),
  );
}

const broken = (habit: string, file: string, what: string, find: string, put: string): Mutant => ({ habit, file, what, find, put });

/** Signs turned, comparisons turned, parts dropped. */
const STRUCTURE: readonly Mutant[] = [
  broken(QUIET, 'quietGain', 'saturation counts as quiet', 'flatOut ? 0 :', 'flatOut ? 1 :'),
  broken(QUIET, 'quietGain', 'lasting silence earns full marks', 'return excessDb < 0 ? 0 :', 'return excessDb < 0 ? 1 :'),
  broken(QUIET, 'quietGain', 'sign of the excess turned', 'linearScore(excessDb, ENOUGH_DB', 'linearScore(-excessDb, ENOUGH_DB'),
  broken(QUIET, 'quietGain', 'time to cut dropped', '{ score: cut.score, weight: CUT_WEIGHT }', '{ score: null, weight: CUT_WEIGHT }'),
  broken(QUIET, 'quietGain', 'every pulse counts as listened to', '|| !isListening(atS)', ''),
  broken(
    QUIET,
    'quietGain',
    'the lowest setting has no excuse',
    'if (controls.gainDb - controls.attenuatorDb <= LOWEST_NET_DB) return 1;',
    '',
  ),
  broken(
    QUIET,
    'timeToCut',
    'the attenuator is no answer',
    'states[tick]!.controls.gainDb - states[tick]!.controls.attenuatorDb',
    'states[tick]!.controls.gainDb',
  ),
  broken(
    QUIET,
    'timeToCut',
    'more gain answers saturation',
    'net(state.tick) <= net(first.state.tick) - ANSWER_DB',
    'net(state.tick) >= net(first.state.tick) + ANSWER_DB',
  ),
  broken(SWEEP, 'sweeps', 'a change of gain cuts nothing', 'Math.abs(b.gainDb - a.gainDb) >= CUT_GAIN_DB - 1e-9 ||', ''),
  broken(SWEEP, 'sweeps', 'the attenuator cuts nothing', 'a.attenuatorDb !== b.attenuatorDb ||', ''),
  broken(SWEEP, 'sweeps', 'a cut counts with the antenna at rest', 'if (turning[i]) cuts.push(i)', 'cuts.push(i)'),
  broken(SWEEP, 'sweeps', 'a change in a rest does not end the sweep', '&& changedBetween(states, last[1], from)', '&& false'),
  broken(
    SWEEP,
    'sweeps',
    'the shortest piece counts in place of the longest',
    'pieceDeg > longest.arcDeg',
    'pieceDeg < longest.arcDeg || longest.arcDeg === 0',
  ),
  broken(SWEEP, 'setThenSweep', 'what is left counts as spoilt', 'Math.max(0, arcDeg - uncut[i]!.arcDeg)', 'uncut[i]!.arcDeg'),
  broken(
    SWEEP,
    'setThenSweep',
    'the look all round dropped',
    '{ score: looks.score, weight: LOOK_WEIGHT }',
    '{ score: null, weight: LOOK_WEIGHT }',
  ),
  broken(SWEEP, 'setThenSweep', 'a cut look counts as a look', 'fullLooks(evidence, uncut)', 'fullLooks(evidence, sweeps)'),
  broken(SWEEP, 'fullLook', 'narrow looks count, full ones do not', 'look.coveredDeg >= FULL_DEG', 'look.coveredDeg < FULL_DEG'),
  broken(WALK, 'walkAndListen', 'the mean alone, without the lowest part', '(mean + Math.min(...shown)) / 2', 'mean'),
  broken(WALK, 'walkAndListen', 'the lowest part alone', '(mean + Math.min(...shown)) / 2', 'Math.min(...shown)'),
  broken(
    WALK,
    'movesPart',
    'walking counts as standing',
    "return walking[i] ? 'walks' : 'stands';",
    "return walking[i] ? 'stands' : 'walks';",
  ),
  broken(
    WALK,
    'movesPart',
    'looks round count as standing',
    "if (doing[i] === 'stands') doing[i] = 'looks'",
    "if (doing[i] === 'stands') doing[i] = 'stands'",
  ),
  broken(WALK, 'spreadsPart', 'pairs across wires are asked', 'counted.filter(({ at }) => !acrossWires(world, at, later.at))', 'counted'),
  broken(
    WALK,
    'spreadsPart',
    'near pairs are praised',
    'linearScore(apartM / neededM, 1, NO_MARKS_SHARE)',
    'linearScore(apartM / neededM, NO_MARKS_SHARE, 1)',
  ),
  broken(WALK, 'followsPart', 'off course counts as on it', 'offDeg <= ON_COURSE_DEG', 'offDeg > ON_COURSE_DEG'),
  broken(WALK, 'followsPart', 'asked where the ground is shut', '|| groundPermits(world, at, wantedDeg, courseDeg)', '|| true'),
  broken(
    WALK,
    'followsPart',
    'a crossing that was passed is always the tag',
    'saidM === null || distanceM(start.at, at) <= saidM ?',
    'false ?',
  ),
  broken(WALK, 'followsPart', 'a crossing that was passed never is', 'saidM === null || distanceM(start.at, at) <= saidM ?', 'true ?'),
  broken(WALK, 'followsPart', 'asked in the last 100 m', '|| distance.isClose(tick)', ''),
  broken(WALK, 'followsPart', 'asked on detours with a purpose', 'purpose === null', 'true'),
  broken(WALK, 'followsPart', 'asked where bearings are taken from stations', 'if (walk.fromStations) return PART_NOT_SHOWN;', ''),
  broken(WALK, 'keepsLinePart', 'walking on against readings costs nothing', '...legs.flatMap((leg) => walkedOnAgainst(walk, leg))', ''),
  broken(WALK, 'keepsLinePart', 'course changes cost nothing', '[...changes(walk), ', '['),
  broken(
    WALK,
    'keepsLinePart',
    'support is against a change',
    'after.support.agreeing >= LEAST_AGREEING',
    'after.support.agreeing < LEAST_AGREEING',
  ),
  broken(
    VIEW,
    'placesPart',
    'low places earn the marks',
    'linearScore(percentile, FULL_PERCENTILE, NO_MARKS_PERCENTILE)',
    'linearScore(percentile, NO_MARKS_PERCENTILE, FULL_PERCENTILE)',
  ),
  broken(VIEW, 'placesPart', 'flat ground is judged', 'places.filter(({ at }) => outlook.contrastAround(at) >= LEAST_CONTRAST)', 'places'),
  broken(VIEW, 'placesPart', 'asked in the last 100 m', '|| distance.isClose(reading.tick)', ''),
  broken(
    VIEW,
    'clearView',
    'answers dropped',
    '{ score: answers.score, weight: ANSWERS_WEIGHT }',
    '{ score: null, weight: ANSWERS_WEIGHT }',
  ),
  broken(VIEW, 'answersPart', 'height is no answer', 'if (isHigher(ground, from, at)) return true;', ''),
  broken(VIEW, 'answersPart', 'answers asked where none could be given', '|| !outlookCouldBeGained(ground, from)', ''),
  broken(
    VIEW,
    'answersPart',
    'staying low is the answer',
    'answers.filter(({ gained }) => gained).length',
    'answers.filter(({ gained }) => !gained).length',
  ),
  broken(VIEW, 'setbacks', 'contradictions are no setback', '...contradictions(readings), ', ''),
  broken(VIEW, 'setbacks', 'a lost signal is no setback', ', ...losses(evidence)', ''),
  broken(VIEW, 'setbacks', 'silence from too little gain is a loss', 'pulse.truth.leastGainDb !== null ||', ''),
  broken(
    PRACTICE,
    'keepPractising',
    'fewer days earn more',
    'linearScore(daysPractised, FULL_DAYS, 0)',
    'linearScore(-daysPractised, 0, -FULL_DAYS)',
  ),
  broken(
    PRACTICE,
    'keepPractising',
    'long gaps earn more',
    'linearScore(longestGapDays, FULL_GAP_DAYS, NO_MARKS_GAP_DAYS)',
    'linearScore(longestGapDays, NO_MARKS_GAP_DAYS, FULL_GAP_DAYS)',
  ),
  broken(PRACTICE, 'keepPractising', 'due drills dropped', 'dueShare === null ? null : 100 * dueShare', 'null'),
  broken(
    PRACTICE,
    'keepPractising',
    'variety dropped',
    'daysPractised === 0 ? null : linearScore(largestSkillShare, FULL_SKILL_SHARE, 1)',
    'null',
  ),
  broken(
    PRACTICE,
    'keepPractising',
    'one skill alone earns more',
    'linearScore(largestSkillShare, FULL_SKILL_SHARE, 1)',
    'linearScore(largestSkillShare, 1, FULL_SKILL_SHARE)',
  ),
  broken(
    PRACTICE,
    'keepPractising',
    'no statement counts as one',
    "if (!practice) return notShown('The run carries no statement from the logbook.');",
    'if (!practice) return judgePractice({ daysPractised: 0, longestGapDays: 28, dueShare: 0, largestSkillShare: 1 });',
  ),
  broken(ALL, 'grade', 'weights are ignored', 'weight: weights[id] }', 'weight: 1 }'),
  broken(ALL, 'grade', 'a run with too few habits is ranked', 'shown >= LEAST_SHOWN ? weightedMean(parts) : null', 'weightedMean(parts)'),
  broken(ALL, 'habit', 'a habit not shown counts as 0', 'part.score !== null && part.weight > 0', 'part.weight > 0'),
];

export const MUTANTS: readonly Mutant[] = [...numberMutants(), ...STRUCTURE];

/** How often the code to be broken stands in its file: once, or the mutant no longer applies. */
export const timesFound = ({ file, find }: Mutant): number => readFileSync(`src/core/technique/${file}.ts`, 'utf8').split(find).length - 1;
