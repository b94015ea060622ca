import { soughtTag } from '../run/task';
import type { Scenario } from '../scenario/schema';
import type { AtStart } from './atStart';
import { medianOf } from './median';
import { misleads } from './misleads';
import type { RehearsedWalk } from './rehearsedWalk';

type Lesson = Scenario['lesson'];

/** A lesson that the exercise teaches, and what says so. */
export type LessonShown = { readonly lesson: Lesson; readonly because: string };

/** From how much on a lesson is there to be met: our assumptions, in the order of the lessons. */
const EXCESS_DB = 30;
const ALIKE_DB = 3;
const LYING_DEG = 60;
const MET_SHARE = 0.1;
const HIDDEN_SHARE = 0.5;
const CROSSING_BEARINGS = 3;
const NEAR_M = 300;
const FAR_M = 1_000;

/** What can be learnt in the exercise by what met the rehearsals and by how it is set, in the order of the format's list. */
export function lessonsTaught(scenario: Scenario, start: AtStart, walks: readonly RehearsedWalk[]): readonly LessonShown[] {
  const bearings = walks.flatMap((walk) => walk.bearings);
  const share = (of: (one: (typeof bearings)[number]) => boolean) => bearings.filter(of).length / Math.max(1, bearings.length);
  const percent = (part: number) => `${Math.round(100 * part)} %`;
  const tag = scenario.tags[soughtTag(scenario)]!;
  const misled = share(misleads);
  const by = (kind: 'hillside' | 'wall' | 'wire') => share(({ strong }) => strong.includes(kind));
  const hidden = share(({ inSight }) => !inSight);
  const perWalk = medianOf(walks.map((walk) => walk.bearings.length)) ?? 0;
  const metres = `${Math.round(start.distanceM)} m`;
  const shown: readonly (readonly [Lesson, boolean, string])[] = [
    ['quiet-gain', (start.excessDb ?? 0) >= EXCESS_DB, `the gain at the start is ${Math.round(start.excessDb ?? 0)} dB over least gain`],
    [
      'back-signal',
      start.leastGainDb !== null && start.frontOverBackDb < ALIKE_DB,
      `at the start the back is as loud as the front to ${start.frontOverBackDb.toFixed(1)} dB`,
    ],
    ['axis', tag.whip.leanDeg >= LYING_DEG, `the whip leans by ${tag.whip.leanDeg}°`],
    [
      'bounce',
      by('hillside') >= MET_SHARE,
      `at ${percent(by('hillside'))} of the bearings a hillside was as strong as anything, or nearly`,
    ],
    ['wires', by('wire') >= MET_SHARE, `at ${percent(by('wire'))} of the bearings a power line was as strong as anything, or nearly`],
    [
      'clear-view',
      hidden >= HIDDEN_SHARE && hidden < 1,
      `${percent(hidden)} of the bearings were taken out of view of the tag, the rest in view`,
    ],
    [
      'crossing',
      perWalk >= CROSSING_BEARINGS && misled < 2 * MET_SHARE,
      `${perWalk} bearings in the middle walk, and only ${percent(misled)} of all mislead`,
    ],
    ['moving', tag.movement.kind !== 'stays', `the tag ${tag.movement.kind === 'path' ? 'walks a path' : 'wanders'}`],
    ['several', scenario.tags.length > 1, `there are ${scenario.tags.length} tags`],
    ['night', !scenario.aids.ownPosition, 'the map does not show the own place'],
    [
      'close-in',
      start.distanceM <= NEAR_M || by('wall') >= MET_SHARE,
      `the tag lies ${metres} off, walls were strong at ${percent(by('wall'))} of the bearings`,
    ],
    [
      'search',
      start.distanceM >= FAR_M || start.leastGainDb === null,
      start.leastGainDb === null ? 'at the start nothing is heard' : `the tag lies ${metres} off`,
    ],
  ];
  return shown.filter(([, is]) => is).map(([lesson, , because]) => ({ lesson, because }));
}
