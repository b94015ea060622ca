import type { Fault } from './faults';
import { likenessOf } from './foreignText';
import { unpackedHeights } from './ownHeights';
import type { Scenario } from './schema';

/** Antennas with elements of half a wave that a hand can't hold below 100 MHz. */
const LONG_ELEMENTS: readonly string[] = ['yagi3', 'yagi2', 'phased2', 'yagi5'];

/** Antennas that stay at a vehicle. The catalogue says so too, and is not known here; a test holds them together. */
export const NOT_FOR_WALKING: readonly string[] = ['yagi5'];

/** Faults that show only when fields are seen together. */
export function inconsistencies(file: string, scenario: Scenario): readonly Fault[] {
  const faults: Fault[] = [];
  const say: Say = (path, found, mend) => faults.push({ file, path, found, mend });
  const { sizeM, cover, powerLines, buildings, patches = [], coverRules = [] } = scenario.ground;
  const inside = (path: string, places: readonly (readonly [number, number])[]) => {
    places.forEach(([eM, nM], i) => {
      const where = places.length > 1 ? `${path}.${i}` : path;
      if (eM > sizeM || nM > sizeM)
        say(where, `[${eM}, ${nM}] lies outside the map of ${sizeM} m`, `give east and north between 0 and ${sizeM}`);
    });
  };
  inside('start.at', [scenario.start.at]);
  scenario.tags.forEach((tag, i) => {
    inside(`tags.${i}.at`, [tag.at]);
    if (tag.movement.kind === 'path') inside(`tags.${i}.movement.points`, tag.movement.points);
    if (tag.pulseMs / 1000 > 30 / tag.pulsesPerMinute) {
      say(`tags.${i}.pulseMs`, `pulses of ${tag.pulseMs} ms fill more than half the time`, 'shorten the pulse or lower the rate');
    }
  });
  scenario.tags.forEach(({ name }, i) => {
    const like = scenario.tags.findIndex((other, j) => j < i && likenessOf(other.name) === likenessOf(name));
    if (like >= 0)
      say(`tags.${i}.name`, `a name that looks like that of tag ${like}`, 'give each tag a name that nobody takes for another');
  });
  powerLines.forEach((line, i) => {
    inside(`ground.powerLines.${i}.route`, line.route);
    if (line.wireHeightM > line.supportHeightM) {
      say(
        `ground.powerLines.${i}.wireHeightM`,
        `wires at ${line.wireHeightM} m hang above supports of ${line.supportHeightM} m`,
        'lower the wires',
      );
    }
  });
  patches.forEach(({ outline }, i) => {
    inside(`ground.patches.${i}.outline`, outline);
  });
  buildings.forEach((building, i) => {
    inside(`ground.buildings.${i}.at`, [building.at]);
  });
  coverRules.forEach(({ aboveM = -500, belowM = 9_000, steeperPercent = 0, flatterPercent = 400 }, i) => {
    if (aboveM > belowM || steeperPercent > flatterPercent)
      say(`ground.coverRules.${i}`, 'bounds that no ground lies between', 'lower the lower bound or raise the upper one');
  });
  const covered = cover.wood + cover.scrub + cover.wet + cover.rock;
  if (covered > 1) say('ground.cover', `shares add up to ${covered.toFixed(2)}`, 'lower them to 1 or less together');
  const { own, cellM } = scenario.ground;
  const heights = own ? unpackedHeights(own, Math.round(sizeM / cellM)) : null;
  if (typeof heights === 'string') say('ground.own.packed', heights, 'bring the elevation file in again at the Course desk');
  kitFaults(scenario, say);
  taskFaults(scenario, say);
  walkFaults(scenario, say);
  scenario.stages?.forEach(({ after }, i) => {
    if (after.kind === 'reached') inside(`stages.${i}.after.at`, [after.at]);
  });
  stageFaults(scenario, say);
  return faults;
}

type Say = (path: string, found: string, mend: string) => void;

function stageFaults({ stages = [], limits }: Scenario, say: Say): void {
  stages.forEach(({ after, vehicleGoes }, i) => {
    const gone = stages.slice(0, i).some((before) => before.vehicleGoes);
    if ((after.kind !== 'on-foot' && !vehicleGoes) || (limits.vehicle && !gone)) return;
    const found = limits.vehicle
      ? 'it needs the vehicle, which has driven off with a text before'
      : 'it needs a vehicle, and there is none';
    say(
      after.kind === 'on-foot' ? `stages.${i}.after.kind` : `stages.${i}.vehicleGoes`,
      found,
      'give a vehicle, or wait for something else',
    );
  });
}

function taskFaults({ task, tags, start, aids }: Scenario, say: Say): void {
  if (task?.tag !== undefined && task.tag >= tags.length) {
    const there = tags.length === 1 ? 'there is one tag, number 0' : `there are ${tags.length} tags, numbers 0 to ${tags.length - 1}`;
    say('task.tag', `tag ${task.tag} is asked for, and ${there}`, 'name one of them by its number in the list, the first is 0');
    return;
  }
  if (task?.kind !== 'fix') return;
  if (task.tag === undefined && tags.length > 1)
    say(
      'task.tag',
      `a fix of one tag, and none of the ${tags.length} is named`,
      'name one of them by its number in the list, the first is 0',
    );
  if (!aids.fix) say('aids.fix', 'the task is a fix, and none is granted', 'grant the fix on request, or ask for a find');
  const { at, movement } = tags[task.tag ?? 0]!;
  if (task.keepAwayM === undefined) return;
  const startM = Math.hypot(start.at[0] - at[0], start.at[1] - at[1]);
  if (startM <= task.keepAwayM)
    say(
      'task.keepAwayM',
      `the start is ${Math.round(startM)} m from the tag, nearer than ${task.keepAwayM} m`,
      'move the start, or ask for less',
    );
  if (movement.kind !== 'stays') say('task.keepAwayM', 'a tag that moves may come near by itself', 'leave it out, or let the tag stay');
}

/** A find that lies farther off than may be walked, by the straight way. */
function walkFaults({ task, tags, start, limits: { walkM, findWithinM } }: Scenario, say: Say): void {
  if (walkM === undefined || task?.kind === 'fix') return;
  const asked = task?.tag === undefined ? tags : tags.slice(task.tag, task.tag + 1);
  const leastM = Math.min(
    ...asked.map(({ at, movement }) =>
      movement.kind === 'stays' ? Math.hypot(start.at[0] - at[0], start.at[1] - at[1]) - findWithinM : 0,
    ),
  );
  if (leastM > walkM && asked.length > 0)
    say(
      'limits.walkM',
      `the tag lies ${Math.ceil(leastM)} m of walking off, and ${walkM} m may be walked`,
      'allow more, or bring the tag nearer',
    );
}

function kitFaults({ kit, limits }: Scenario, say: Say): void {
  if (limits.vehicle && kit.antennas.every((id) => NOT_FOR_WALKING.includes(id)))
    say('kit.antennas', 'a vehicle, and no antenna that can be carried away from it', 'add one for walking, for example "yagi3"');
  if (!kit.antennas.includes(kit.startAntenna)) {
    say('kit.startAntenna', `"${kit.startAntenna}" is not in kit.antennas`, 'add it there or start with one of them');
  }
  if (new Set(kit.antennas).size < kit.antennas.length) say('kit.antennas', 'an antenna is listed twice', 'list each once');
  kit.antennas.forEach((antenna, i) => {
    if (kit.designMHz < 100 && LONG_ELEMENTS.includes(antenna)) {
      say(`kit.antennas.${i}`, `"${antenna}" at ${kit.designMHz} MHz has elements over 1.5 m`, 'take the loop or the whip below 100 MHz');
    }
  });
}
