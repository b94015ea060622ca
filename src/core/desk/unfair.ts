import { antennaById } from '../antenna/catalogue';
import { isDone } from '../run/state';
import { soughtTag } from '../run/task';
import type { Caution, Scenario } from '../scenario/schema';
import type { AtStart } from './atStart';
import type { RehearsedWalk } from './rehearsedWalk';

/** Something that no learner could do anything about, at the field where it can be mended. */
export type Unfair = { readonly path: string; readonly found: string; readonly mend: string };

/** A learner takes longer than the steady walker: so many times its slowest walk should be there. */
const ROOM_TIMES = 1.25;
/** A tag so near to the start, in lengths of a find, is found by chance. */
const TOO_NEAR_FINDS = 4;
/** So much of the easy levels' start may mislead. */
const EASY_LEVEL = 2;
const START_OFF_DEG = 45;

/** What is unfair about an exercise, by its settings and its rehearsals. */
export function unfairness(scenario: Scenario, start: AtStart, walks: readonly RehearsedWalk[]): readonly Unfair[] {
  const { limits, tags, lesson, level } = scenario;
  const sought = soughtTag(scenario);
  const { name } = tags[sought]!;
  const found = walks.filter(({ ending }) => isDone(ending));
  const late = walks.filter(({ ending }) => ending === 'out-of-time').length;
  const walkedOut = walks.filter(({ ending }) => ending === 'walked-out').length;
  const slowestS = Math.max(0, ...found.map(({ timeS }) => timeS));
  const bearings = walks.flatMap((walk) => walk.bearings);
  const unfair: (Unfair | false)[] = [
    start.walkS === null && {
      path: `tags.${sought}.at`,
      found: `no way on foot leads from the start to ${name}`,
      mend: 'move the tag or the start',
    },
    start.leastGainDb === null &&
      lesson !== 'search' && {
        path: 'start.at',
        found: `at the start ${name} is heard at no gain and on no heading`,
        mend: 'bring the start nearer or into view, give the tag more strength, or make it a search',
      },
    start.distanceM < TOO_NEAR_FINDS * limits.findWithinM && {
      path: 'start.at',
      found: `${name} lies ${Math.round(start.distanceM)} m from the start, where it is found by chance`,
      mend: 'move one of them, or let a find count within less',
    },
    level <= EASY_LEVEL &&
      start.leastGainDb !== null &&
      start.loudestOffDeg > START_OFF_DEG && {
        path: 'level',
        found: `the loudest heading at the start is ${Math.round(start.loudestOffDeg)}° off, at an easy level`,
        mend: 'move the start, or raise the level',
      },
    late > 0 && {
      path: 'limits.timeS',
      found: `the steady walker ran out of time in ${late} of ${walks.length} walks`,
      mend: 'give more time, or bring the tag nearer',
    },
    ...longWithoutVehicle(scenario),
    walkedOut > 0 && {
      path: 'limits.walkM',
      found: `in ${walkedOut} of ${walks.length} walks the steady walker had walked all that may be walked`,
      mend: 'allow more, or bring the tag nearer',
    },
    late === 0 &&
      found.length > 0 &&
      limits.timeS < ROOM_TIMES * slowestS && {
        path: 'limits.timeS',
        found: `the slowest walk took ${Math.round(slowestS / 60)} of ${Math.round(limits.timeS / 60)} min, and a learner is slower`,
        mend: `give ${Math.ceil((ROOM_TIMES * slowestS) / 300) * 5} min or more`,
      },
    bearings.length > 0 &&
      found.length < walks.length / 2 &&
      bearings.every(({ inSight }) => !inSight) && {
        path: `tags.${sought}.at`,
        found: `from no place of any walk was ${name} in view`,
        mend: 'move it to where a walk comes into view of it',
      },
    ...missingCautions(scenario),
  ];
  return unfair.filter((one) => one !== false);
}

/** An antenna that is not for walking, and nothing to leave it at: it stays in the hand all the way. */
const longWithoutVehicle = ({ limits, kit }: Scenario): readonly Unfair[] =>
  limits.vehicle
    ? []
    : kit.antennas.flatMap((id, i) => {
        const { onFoot, name } = antennaById(id);
        const found = `${name} is not for walking, and no vehicle is there to leave it at: it is carried all the way`;
        return onFoot ? [] : [{ path: `kit.antennas.${i}`, found, mend: 'tick the vehicle, or take this antenna out' }];
      });

/** Cautions that the ground asks for and the exercise doesn't give. */
function missingCautions({ ground, cautions }: Scenario): readonly Unfair[] {
  const asks: readonly (readonly [Caution, boolean, string])[] = [
    ['wires', ground.powerLines.length > 0, 'power lines are on the map and the caution about wires is not given'],
    ['heights', ground.buildings.some(({ climb }) => climb), 'a roof may be climbed and the caution about heights is not given'],
    ['water', ground.water.lakes > 0, 'there is a lake and the caution about water is not given'],
  ];
  return asks
    .filter(([caution, is]) => is && !cautions.includes(caution))
    .map(([, , found]) => ({ path: 'cautions', found, mend: 'tick it' }));
}
