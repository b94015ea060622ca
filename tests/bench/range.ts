import { mkdirSync, writeFileSync } from 'node:fs';
import { leastGainDb } from '../../src/core/ear/leastGain';
import { USUAL_LISTENER } from '../../src/core/ear/loudness';
import { openExercise } from '../../src/core/run/exercise';
import { bestAtPlace, bestHold, tagHere } from '../../src/core/run/sense';
import type { AntennaId } from '../../src/core/scenario/schema';
import { COVER } from '../../src/core/world/world';
import { plainScenario } from '../core/world/fixtureScenario';
import { shapedWorld } from '../core/world/shapedWorld';

/** How far a tag is heard: written as a page of the guide by `npm run range`. A computation, not a measurement. */

const SIZE_M = 10_000;
const CELL_M = 20;
const TAG = { eM: 300, nM: 5_000 };
const POWERS_DBM = [-10, 0, 10] as const;
const ANTENNAS: readonly AntennaId[] = ['whip', 'yagi3', 'yagi5'];

const GROUNDS = {
  open: shapedWorld(() => 100, SIZE_M, CELL_M),
  wood: shapedWorld(
    () => 100,
    SIZE_M,
    CELL_M,
    () => COVER.wood,
  ),
  // A ridge of 80 m, smooth, its crest 600 m from the tag.
  ridge: shapedWorld((eM) => 100 + 80 / (1 + ((eM - 900) / 200) ** 4), SIZE_M, CELL_M),
} as const;

/** Farthest place at which most of a stretch of ten steps of 25 m is heard at some setting, metres. */
function rangeM(ground: keyof typeof GROUNDS, antenna: AntennaId, eirpDbm: number): number {
  const tag = { ...plainScenario().tags[0]!, at: [TAG.eM, TAG.nM] as [number, number], eirpDbm, whip: { leanDeg: 0, towardDeg: 0 } };
  const scenario = plainScenario({
    ground: {
      sizeM: SIZE_M,
      cellM: CELL_M,
      powerLines: [],
      buildings: [],
      relief: { style: 'smooth', strengthM: 0, roughness: 0, baseHeightM: 100 },
    },
    tags: [tag],
    radio: { noise: 'rural', groundClass: 'medium-dry' },
  });
  const exercise = openExercise(scenario, GROUNDS[ground]);
  let farthestM = 0;
  for (let fromM = 100; fromM + 250 < SIZE_M - TAG.eM - 100; fromM += 250) {
    let heard = 0;
    for (let i = 0; i < 10; i++) {
      const here = tagHere(exercise, 0, { eM: TAG.eM + fromM + 25 * i, nM: TAG.nM }, 1.7, 0);
      if (leastGainDb(bestAtPlace(exercise, here, bestHold(exercise, here, antenna), antenna), USUAL_LISTENER) !== null) heard++;
    }
    if (heard >= 5) farthestM = fromM + 250;
  }
  return farthestM;
}

const shown = (m: number): string => (m >= SIZE_M - TAG.eM - 600 ? 'over 9 km' : `${(m / 1000).toFixed(1)} km`);

const rows = ANTENNAS.flatMap((antenna) =>
  POWERS_DBM.map((eirpDbm) => {
    const cells = (['open', 'wood', 'ridge'] as const).map((ground) => shown(rangeM(ground, antenna, eirpDbm)));
    return `| ${antenna} | ${eirpDbm} dBm | ${cells.join(' | ')} |`;
  }),
);
const page = `# How far a tag is heard

Computed by the program itself (\`npm run range\`), not measured: the distance up to which a pulse is heard at some setting of the
receiver more often than not, antenna on its best heading and axis at 1.7 m, tag upright at 0.5 m, 150 MHz, 20 ms pulses, rural noise,
medium dry ground. *Open* is flat ground in view; *wood* is closed canopy all the way; *ridge* has a smooth ridge of 80 m across the
way, 600 m from the tag. Real ranges are shorter when the animal lies on its whip, the battery is old, or the place is noisy.
Strength matters more than the antenna, and the ground more than both: walk to a clearer view before you wish for a longer antenna.

| antenna | e.i.r.p. | open | wood | ridge |
|---|---|---|---|---|
${rows.join('\n')}
`;
mkdirSync('assets/guide', { recursive: true });
writeFileSync('assets/guide/range.md', page);
process.stdout.write(page);
