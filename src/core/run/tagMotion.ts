import { randomFor } from '../random/draw';
import type { Scenario, Tag } from '../scenario/schema';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';

const point = ([eM, nM]: readonly [number, number]): MapPoint => ({ eM, nM });

/** Where a tag is at a time. A path is walked to its end and stays there; a wanderer goes from place to place and rests. */
export function tagAt(scenario: Scenario, tagIndex: number, timeS: number): MapPoint {
  const tag = scenario.tags[tagIndex];
  if (!tag) throw new RangeError(`no tag ${tagIndex}: the exercise has ${scenario.tags.length}`);
  switch (tag.movement.kind) {
    case 'stays':
      return point(tag.at);
    case 'path':
      return alongStops([point(tag.at), ...tag.movement.points.map(point)], tag.movement.speedMPerS, tag.movement.pauseS, timeS);
    case 'wanders':
      return wandering(scenario, tag, tagIndex, tag.movement, timeS);
  }
}

/** Place on a line of stops, with a pause at each, after `timeS` seconds. */
function alongStops(stops: readonly MapPoint[], speedMPerS: number, pauseS: number, timeS: number): MapPoint {
  let leftS = timeS;
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i]!, stops[i + 1]!];
    if (leftS <= pauseS) return from;
    leftS -= pauseS;
    const legS = distanceM(from, to) / speedMPerS;
    if (leftS < legS) return stepAlong(from, bearingDeg(from, to), leftS * speedMPerS);
    leftS -= legS;
  }
  return stops.at(-1)!;
}

type Wander = Extract<Tag['movement'], { kind: 'wanders' }>;

function wandering(scenario: Scenario, tag: Tag, tagIndex: number, movement: Wander, timeS: number): MapPoint {
  const home = point(tag.at);
  const sizeM = scenario.ground.sizeM;
  let from = home;
  let leftS = timeS;
  for (let leg = 0; ; leg++) {
    const random = randomFor(scenario.seed, 'wander', tagIndex * 100_000 + leg);
    const restS = movement.restS * (0.5 + random());
    const goal = stepAlong(home, 360 * random(), movement.withinM * Math.sqrt(random()));
    const to = { eM: Math.min(sizeM - 20, Math.max(20, goal.eM)), nM: Math.min(sizeM - 20, Math.max(20, goal.nM)) };
    if (leftS <= restS) return from;
    leftS -= restS;
    const legS = distanceM(from, to) / movement.speedMPerS;
    if (leftS < legS) return stepAlong(from, bearingDeg(from, to), leftS * movement.speedMPerS);
    leftS -= legS;
    from = to;
  }
}
