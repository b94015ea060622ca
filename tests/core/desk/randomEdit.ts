import { fieldOf, withField } from '../../../src/core/desk/field';
import { movedPlace, placesOf, removedPlace } from '../../../src/core/desk/places';
import { cornerAfter, pathFrom, SET_DOWN_KINDS, setDown } from '../../../src/core/desk/setDown';
import { LESSONS, RELIEF_STYLES, type Scenario } from '../../../src/core/scenario/schema';

export type Edited = { readonly value: Scenario; readonly deed: string; readonly joins: string | null };

const NUMBERS = [
  'ground.relief.strengthM',
  'ground.relief.roughness',
  'ground.cover.wood',
  'ground.tracks',
  'tags.0.eirpDbm',
  'tags.0.whip.leanDeg',
  'kit.startGainDb',
  'start.facingDeg',
  'limits.timeS',
  'level',
] as const;

/** Something that somebody at the desk might do; also what leaves the exercise faulty for a while. */
export function randomEdit(scenario: Scenario, random: () => number): Edited {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(list.length * random())]!;
  const spot = (): [number, number] => [random() * 1.2 * scenario.ground.sizeM - 100, random() * scenario.ground.sizeM];
  const places = placesOf(scenario);
  const step = (deed: string, value: Scenario, joins: string | null = null): Edited => ({ deed, value, joins });
  switch (Math.floor(9 * random())) {
    case 0:
    case 1: {
      const field = pick(NUMBERS);
      return step(`set ${field}`, withField(scenario, field, Math.round(2_000 * random()) / 10), random() < 0.3 ? field : null);
    }
    case 2:
      return step('move', movedPlace(scenario, pick(places).path, spot()));
    case 3:
      return step('set down', setDown(scenario, pick(SET_DOWN_KINDS), spot()).scenario);
    case 4:
      return step('remove', removedPlace(scenario, pick(places)));
    case 5: {
      const corners = places.filter(({ kind }) => kind === 'line-corner' || kind === 'patch-corner' || kind === 'waypoint');
      return step('corner', corners.length > 0 ? cornerAfter(scenario, pick(corners).path).scenario : scenario);
    }
    case 6:
      return step('path', withField(scenario, 'tags.0.movement', pathFrom(scenario, 0)));
    case 7:
      return step('words', withField(scenario, pick(['title', 'brief', 'author']), `words ${Math.floor(1e6 * random())}`));
    default: {
      const par = fieldOf(scenario, 'parS') === undefined ? 60 + Math.floor(500 * random()) : undefined;
      const [field, value] = pick([
        ['lesson', pick(LESSONS)],
        ['ground.relief.style', pick(RELIEF_STYLES)],
        ['aids.fix', random() < 0.5],
        ['parS', par],
      ] as const);
      return step('choose', withField(scenario, field, value));
    }
  }
}
