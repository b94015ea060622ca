import { randomFor } from '../random/draw';
import { scenarioFrom } from '../scenario/load';
import type { Scenario, Tag } from '../scenario/schema';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { generateWorld } from '../world/generate';
import { quickestWalk } from '../world/reachable';
import { walkable } from '../world/walking';
import type { World } from '../world/world';
import { byLevel, GROUND_WISHES, levelDistanceM, lineAcross, yardAround } from './drawnGround';
import { drawnWords } from './drawnWords';

type Lesson = Scenario['lesson'];

/** Grounds tried before a draw is given up. */
const MOST_DRAWS = 30;
/** From the map's edge, metres: openness and ways want ground all round. */
const EDGE_M = 120;
/** The start and the tag are moved by up to this to where one can stand. */
const SHIFT_M = 160;
/** A way round that takes longer than this against the straight line on open ground is another exercise. */
const MOST_ROUND = 3.5;

/**
 * An exercise made by chance: the same arguments give the same exercise. Start and tags can be walked to, the distance follows the
 * level, the names are invented. @throws RangeError for a level outside 1 to 5
 */
export function drawExercise(seed: number, lesson: Lesson, level: number): Scenario {
  if (!Number.isInteger(level) || level < 1 || level > 5) throw new RangeError(`level 1 to 5, got ${level}`);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const plan = planned(seed, lesson, level, draw);
    const placed = onFootable(plan);
    if (placed) return scenarioFrom(`drawn ${lesson} ${level}, seed ${seed}`, placed);
  }
  throw new Error(`no ground for ${lesson}, level ${level}, seed ${seed} in ${MOST_DRAWS} draws`);
}

/** A whole exercise whose start and tag may still stand in water. */
function planned(seed: number, lesson: Lesson, level: number, draw: number): Scenario {
  const random = randomFor(`${lesson}/${level}/${seed}`, 'draw', draw);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(list.length * random())]!;
  const wish = GROUND_WISHES[lesson];
  const style = pick(wish.styles);
  const wood = byLevel(wish.wood, level);
  const farM = levelDistanceM(lesson, level, random());
  const sizeM = Math.min(10_000, Math.max(1_000, Math.ceil((1.5 * farM + 500) / 100) * 100));
  const { start, tag } = ends(sizeM, farM, random);
  const words = drawnWords(lesson, style, pick);
  const tags = tagsOf(lesson, level, tag, words.names, random);
  return {
    format: 'faintward-scenario',
    version: 1,
    title: words.title,
    brief: words.brief,
    author: 'Drawn by chance',
    lesson,
    level,
    seed: `drawn-${lesson}-${level}-${seed}-${draw}`,
    ground: {
      sizeM,
      cellM: 10,
      relief: {
        style,
        strengthM: Math.round(byLevel(wish.strengthM, level) * (0.8 + 0.4 * random())),
        roughness: 0.35,
        baseHeightM: 100 + Math.round(200 * random()),
      },
      cover: { wood: Math.round(100 * wood) / 100, scrub: 0.06, wet: 0.04, rock: 0.02 },
      water: { lakes: random() < 0.3 ? 1 : 0, streams: 2 },
      tracks: 2,
      farms: lesson === 'close-in' ? 1 : 0,
      hamlets: 0,
      fieldWalls: style !== 'coast',
      powerLines: lesson === 'wires' ? lineAcross(start, tag, sizeM, 40 * random() - 20) : [],
      buildings: lesson === 'close-in' ? yardAround(tag, Math.min(6, 1 + level), random) : [],
    },
    radio: { groundClass: 'wet', noise: 'rural', lineNoiseDb: lesson === 'wires' ? 4 : 0, mainsHz: 50 },
    tags,
    kit: {
      antennas: ['yagi3'],
      startAntenna: 'yagi3',
      designMHz: 150,
      startGainDb: lesson === 'quiet-gain' || lesson === 'back-signal' ? 80 : 50,
      startAttenuatorDb: 0,
      startOffsetHz: 0,
      noiseFigureDb: 4,
    },
    start: { at: [Math.round(start.eM), Math.round(start.nM)], facingDeg: Math.floor(360 * random()) },
    aids: { ownPosition: lesson !== 'night', sMeter: true, compass: true, fix: true, soundRing: level === 1 },
    limits: { timeS: 3_600, paceMPerS: 1.6, vehicle: false, findWithinM: 12 },
    weights: { quietGain: 1, setThenSweep: 1, walkAndListen: 1, clearView: 1 },
    cautions: lesson === 'wires' ? ['wires', 'land', 'hearing'] : ['alone', 'land', 'hearing'],
  };
}

/** Two places a distance apart, in a random direction round the middle of the map. */
function ends(sizeM: number, farM: number, random: () => number): { start: MapPoint; tag: MapPoint } {
  const middle = { eM: sizeM / 2, nM: sizeM / 2 };
  const alongDeg = 360 * random();
  return { start: stepAlong(middle, alongDeg + 180, farM / 2), tag: stepAlong(middle, alongDeg, farM / 2) };
}

function tagsOf(lesson: Lesson, level: number, at: MapPoint, names: readonly string[], random: () => number): Tag[] {
  const count = lesson === 'several' ? Math.min(4, 1 + level) : 1;
  const base = 150 + Math.round(100 * random()) / 100;
  return Array.from({ length: count }, (_, i): Tag => {
    const place = i === 0 ? at : stepAlong(at, 360 * random(), 200 + 200 * random());
    const leanDeg = lesson === 'axis' ? 75 + Math.round(15 * random()) : Math.round(35 * random());
    return {
      name: names[i]!,
      at: [Math.round(place.eM), Math.round(place.nM)],
      frequencyMHz: Math.round((base + 0.03 * i) * 1_000) / 1_000,
      eirpDbm: lesson === 'search' ? 4 : 10,
      pulseMs: 20,
      pulsesPerMinute: 55 + Math.round(10 * random()),
      heightM: 0.5,
      whip: { leanDeg, towardDeg: Math.floor(360 * random()) },
      movement: lesson === 'moving' ? { kind: 'wanders', withinM: 40 + 30 * level, speedMPerS: 0.3, restS: 240 } : { kind: 'stays' },
      driftHzPerHour: 0,
      decayDbPerHour: 0,
    };
  });
}

/** The same with start and tags where one can stand, and time enough; `null` where no good way leads to the first tag. */
function onFootable(plan: Scenario): Scenario | null {
  const world = generateWorld(plan);
  const start = standing(world, plan.start.at);
  const tags = plan.tags.map((tag) => standing(world, tag.at));
  const first = tags[0];
  if (!start || !first || tags.some((at) => !at)) return null;
  const { paceMPerS } = plan.limits;
  const walk = quickestWalk(world, start, first, paceMPerS);
  if (!walk || walk.seconds > (MOST_ROUND * distanceM(start, first)) / paceMPerS) return null;
  const place = ({ eM, nM }: MapPoint): [number, number] => [eM, nM];
  return {
    ...plan,
    start: { ...plan.start, at: place(start), facingDeg: (Math.round(bearingDeg(start, first)) + plan.start.facingDeg) % 360 },
    tags: plan.tags.map((tag, i) => ({ ...tag, at: place(tags[i]!) })),
    limits: { ...plan.limits, timeS: Math.min(14_400, Math.ceil((3.5 * walk.seconds + 900) / 60) * 60) },
  };
}

/** The nearest place to stand, whole metres, with standing room round it; `null` within reach of none. */
function standing(world: World, [eM, nM]: readonly [number, number]): MapPoint | null {
  for (let m = 0; m <= SHIFT_M; m += 10) {
    for (let deg = 0; deg < 360; deg += m === 0 ? 360 : 30) {
      const off = stepAlong({ eM, nM }, deg, m);
      const at = { eM: Math.round(off.eM), nM: Math.round(off.nM) };
      const inside = Math.min(at.eM, at.nM, world.sizeM - at.eM, world.sizeM - at.nM) >= EDGE_M;
      const room = [0, 90, 180, 270].every((side) => walkable(world, stepAlong(at, side, 8)));
      if (inside && walkable(world, at) && room) return at;
    }
  }
  return null;
}
