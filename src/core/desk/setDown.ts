import type { LinePlan, Scenario, Tag } from '../scenario/schema';
import { fieldOf, withField } from './field';
import { type EastNorth, onMap, WALL_WIDTH_M } from './places';

/** What can be set down on the map by hand. */
export const SET_DOWN_KINDS = ['tag', 'building', 'wall', 'power-line', 'patch'] as const;
export type SetDownKind = (typeof SET_DOWN_KINDS)[number];

/** As many as the format holds. */
export const MOST = { tags: 8, buildings: 40, powerLines: 4, corners: 12, waypoints: 40, patches: 40, patchCorners: 24 } as const;

type Building = Scenario['ground']['buildings'][number];
const BUILDING: Omit<Building, 'at'> = { lengthM: 20, widthM: 10, alongDeg: 0, heightM: 6, walls: 'stone' };
const WALL: Omit<Building, 'at'> = { lengthM: 40, widthM: WALL_WIDTH_M, alongDeg: 0, heightM: 3, walls: 'stone' };
/** A village line on wooden poles, the most usual one. */
const LINE: Omit<LinePlan, 'route'> = { voltage: 'medium', spanM: 110, supportHeightM: 12, wireHeightM: 10, conductors: 3 };
/** A new patch: a hexagon of 80 m to each corner, metres east and north of its middle. */
const PATCH_M: readonly EastNorth[] = [
  [80, 0],
  [40, 69],
  [-40, 69],
  [-80, 0],
  [-40, -69],
  [40, -69],
];
/** A new line reaches so far to either side, metres. */
const LINE_ARM_M = 200;

export function hasRoomFor({ tags, ground }: Scenario, kind: SetDownKind): boolean {
  if (kind === 'tag') return tags.length < MOST.tags;
  if (kind === 'power-line') return ground.powerLines.length < MOST.powerLines;
  if (kind === 'patch') return (ground.patches?.length ?? 0) < MOST.patches;
  return ground.buildings.length < MOST.buildings;
}

/** One more of a kind at a place, and the field it is in. Where the format has no room for another, the exercise as it was. */
export function setDown(scenario: Scenario, kind: SetDownKind, to: EastNorth): { readonly scenario: Scenario; readonly path: string } {
  if (!hasRoomFor(scenario, kind)) return { scenario, path: '' };
  const at = onMap(scenario, to);
  const { tags, ground } = scenario;
  if (kind === 'tag') {
    const path = `tags.${tags.length}`;
    return { scenario: withField(scenario, path, nextTag(tags, at)), path };
  }
  if (kind === 'power-line') {
    const path = `ground.powerLines.${ground.powerLines.length}`;
    const route = [-LINE_ARM_M, LINE_ARM_M].map((m) => onMap(scenario, [to[0] + m, to[1]]));
    return { scenario: withField(scenario, path, { ...LINE, route }), path: `${path}.route.0` };
  }
  if (kind === 'patch') {
    const before = ground.patches ?? [];
    const outline = PATCH_M.map(([eM, nM]) => onMap(scenario, [to[0] + eM, to[1] + nM]));
    const cover = before.at(-1)?.cover ?? 'wood';
    return {
      scenario: withField(scenario, 'ground.patches', [...before, { cover, outline }]),
      path: `ground.patches.${before.length}.outline.0`,
    };
  }
  const path = `ground.buildings.${ground.buildings.length}`;
  return { scenario: withField(scenario, path, { ...(kind === 'wall' ? WALL : BUILDING), at }), path };
}

/** Like the last one, on the next free channel 30 kHz up, under a name of its own. */
function nextTag(tags: readonly Tag[], at: [number, number]): Tag {
  const names = new Set(tags.map(({ name }) => name));
  let number = tags.length + 1;
  while (names.has(`Tag ${number}`)) number++;
  const highest = Math.max(...tags.map(({ frequencyMHz }) => frequencyMHz));
  const frequencyMHz = Math.min(500, Math.round((highest + 0.03) * 1_000) / 1_000);
  return { ...tags.at(-1)!, name: `Tag ${number}`, at, frequencyMHz, movement: { kind: 'stays' } };
}

/** One more corner of a line or patch, or point of a path, half way on from the one in `path`; beyond the last one as far again. */
export function cornerAfter(scenario: Scenario, path: string): { readonly scenario: Scenario; readonly path: string } {
  const cut = path.lastIndexOf('.');
  const [list, index] = [path.slice(0, cut), Number(path.slice(cut + 1))];
  const places = fieldOf(scenario, list) as readonly EastNorth[];
  const most = list.endsWith('.route') ? MOST.corners : list.endsWith('.outline') ? MOST.patchCorners : MOST.waypoints;
  if (places.length >= most) return { scenario, path };
  const here = places[index]!;
  const next = places[index + 1] ?? (list.endsWith('.outline') ? places[0] : undefined);
  const before = places[index - 1] ?? here;
  const to: EastNorth = next
    ? [(here[0] + next[0]) / 2, (here[1] + next[1]) / 2]
    : [here[0] + (here[0] - before[0]) / 2, here[1] + (here[1] - before[1]) / 2];
  const longer = [...places.slice(0, index + 1), onMap(scenario, to), ...places.slice(index + 1)];
  return { scenario: withField(scenario, list, longer), path: `${list}.${index + 1}` };
}

/** A path of two points, 100 m apart, from where the tag lies. */
export const pathFrom = (scenario: Scenario, tag: number): Tag['movement'] => {
  const [eM, nM] = scenario.tags[tag]!.at;
  const far = eM + 100 <= scenario.ground.sizeM ? eM + 100 : eM - 100;
  return { kind: 'path', points: [[eM, nM], onMap(scenario, [far, nM])], speedMPerS: 0.5, pauseS: 60 };
};
