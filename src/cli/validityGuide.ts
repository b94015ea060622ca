import { PROGRAM_VERSION } from '../core/run/record';
import type { Study } from './validityReport';

/** The page of the guide: what was asked, what came out, what it does not show. */
export const reportText = ({ exercises }: Study, tables: string): string => `# Does the grade measure technique?

Walkers do exercises and are graded as a learner is. *Steady* is the built-in expert; each other walker is steady with one decision
replaced, so that it is known beforehand which habit ought to suffer. A walker is given what a learner hears, the map and its own pose;
the tag's place, the waves and the truth are not in what it is given.

Made by \`npm run -s faintward -- validity --exercises ${exercises} --report\`, program ${PROGRAM_VERSION}, with ${exercises} exercises in the fault matrix.${
  exercises < 50
    ? ` **This is a reduced study**: the full one has 50 exercises in the matrix, 200 finds and 60 exercises for reliability (\`--exercises 50\`), and its intervals are about ${Math.sqrt(50 / exercises).toFixed(1)} times as narrow.`
    : ''
}
Exercises are drawn by chance over all lessons, levels 1 to 5. Intervals are 95 %.

${tables}

## What this does not show

- The walkers were written together with the habits, by the same people. A fault that nobody thought of is not in the study.
- Agreement with human judges has not been measured. A score in the simulator is not a score in the field.
- Turned runs are regraded on ground laid anew at a finer grid; the openness of a place is taken over, not computed again, because a turned square has other edges.
- Antennas other than the three-element Yagi and other frequencies than 150 MHz are not drawn here.
- A fault that makes a walker miss the way also takes reading places from it: what it moves in other habits is in part what it did there, in part the ground.
- On the short ways of level 1 clear view is often not shown: there are not three places to judge. That counts as not moved in the matrix, and leaves technique to three habits.
- Steady was made on other drawn exercises than those asked here, but on the shared scenarios themselves.
- Different browsers are compared in the browser tests, not here.
`;
