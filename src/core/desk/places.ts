import type { CoverName, Scenario } from '../scenario/schema';
import { fieldOf, withField } from './field';

export type EastNorth = readonly [eM: number, nM: number];
export type PlaceKind = 'start' | 'tag' | 'waypoint' | 'building' | 'line-corner' | 'patch-corner';

/** One thing that was set on the map by hand. `path` is its field, `at` the field with its place. */
export type Place = { readonly path: string; readonly kind: PlaceKind; readonly name: string; readonly at: EastNorth };

/** Everything that stands on the map by hand, in the order of the file. */
export function placesOf({ start, tags, ground }: Scenario): readonly Place[] {
  return [
    { path: 'start', kind: 'start', name: 'Start', at: start.at },
    ...tags.flatMap(({ name, at, movement }, i): Place[] => [
      { path: `tags.${i}`, kind: 'tag', name: name || `Tag ${i + 1}`, at },
      ...(movement.kind === 'path' ? movement.points : []).map(
        (point, j): Place => ({
          path: `tags.${i}.movement.points.${j}`,
          kind: 'waypoint',
          name: `${name || `Tag ${i + 1}`}, point ${j + 1} of its path`,
          at: point,
        }),
      ),
    ]),
    ...ground.buildings.map(
      ({ at, widthM }, i): Place => ({
        path: `ground.buildings.${i}`,
        kind: 'building',
        name: `${widthM <= WALL_WIDTH_M ? 'Wall' : 'Building'} ${i + 1}`,
        at,
      }),
    ),
    ...ground.powerLines.flatMap(({ route }, i) =>
      route.map(
        (at, j): Place => ({
          path: `ground.powerLines.${i}.route.${j}`,
          kind: 'line-corner',
          name: `Power line ${i + 1}, corner ${j + 1}`,
          at,
        }),
      ),
    ),
    ...(ground.patches ?? []).flatMap(({ outline, cover }, i) =>
      outline.map(
        (at, j): Place => ({
          path: `ground.patches.${i}.outline.${j}`,
          kind: 'patch-corner',
          name: `${PATCH_NAMES[cover]} ${i + 1}, corner ${j + 1}`,
          at,
        }),
      ),
    ),
  ];
}

const PATCH_NAMES: Readonly<Record<CoverName, string>> = {
  open: 'Open patch',
  wood: 'Wood',
  scrub: 'Scrub',
  wet: 'Wet patch',
  water: 'Water',
  rock: 'Rock',
};

/** A building no wider is told as a wall: the least the format allows. */
export const WALL_WIDTH_M = 2;

const holdsPlaceItself = (path: string): boolean => /\.(points|route|outline)\.\d+$/.test(path);
export const placeField = (path: string): string => (holdsPlaceItself(path) ? path : `${path}.at`);

/** Whole metres on the map. */
export const onMap = ({ ground }: Scenario, [eM, nM]: EastNorth): [number, number] => {
  const within = (m: number) => Math.min(ground.sizeM, Math.max(0, Math.round(m)));
  return [within(eM), within(nM)];
};

/** A thing set down elsewhere, in whole metres on the map. */
export function movedPlace(scenario: Scenario, path: string, to: EastNorth): Scenario {
  const [eM, nM] = onMap(scenario, to);
  const [eBeforeM, nBeforeM] = fieldOf(scenario, placeField(path)) as EastNorth;
  return eM === eBeforeM && nM === nBeforeM ? scenario : withField(scenario, placeField(path), [eM, nM]);
}

/** Whether a thing may be taken off the map: an exercise keeps its start and one tag. */
export const canRemove = ({ tags }: Scenario, { kind }: Place): boolean => kind !== 'start' && (kind !== 'tag' || tags.length > 1);

/** Without a patch; the last one takes its list along, so that the exercise is what it was before the first. */
export const withoutPatch = (scenario: Scenario, path: string): Scenario =>
  scenario.ground.patches?.length === 1 ? withField(scenario, 'ground.patches', undefined) : withField(scenario, path, undefined);

/** Without a thing. A line with less than two corners and a patch with less than three go altogether; a tag with less than two points of its path stays where it is. */
export function removedPlace(scenario: Scenario, place: Place): Scenario {
  if (!canRemove(scenario, place)) return scenario;
  const list = place.path.slice(0, place.path.lastIndexOf('.'));
  const few = (fieldOf(scenario, list) as readonly unknown[]).length <= 2;
  const owner = list.slice(0, list.lastIndexOf('.'));
  if (place.kind === 'patch-corner' && (fieldOf(scenario, list) as readonly unknown[]).length <= 3) return withoutPatch(scenario, owner);
  if (place.kind === 'line-corner' && few) return withField(scenario, owner, undefined);
  if (place.kind === 'waypoint' && few) return withField(scenario, owner, { kind: 'stays' });
  return place.kind === 'tag' ? withoutTag(scenario, place.path) : withField(scenario, place.path, undefined);
}

/** Without a tag: the task goes on asking for the same one as before, for any where that one is gone. */
function withoutTag(scenario: Scenario, path: string): Scenario {
  const gone = Number(path.slice('tags.'.length));
  const without = withField(scenario, path, undefined);
  const asked = scenario.task?.tag;
  if (asked === undefined || asked < gone) return without;
  return asked === gone ? withField(without, 'task', undefined) : withField(without, 'task.tag', asked - 1);
}
