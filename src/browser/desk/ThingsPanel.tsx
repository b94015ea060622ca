import { withField } from '../../core/desk/field';
import { canRemove, type Place, placeField, removedPlace, withoutPatch } from '../../core/desk/places';
import { cornerAfter, hasRoomFor, pathFrom, SET_DOWN_KINDS } from '../../core/desk/setDown';
import type { Scenario } from '../../core/scenario/schema';
import { choose, chosen, chosenPath, draft, edit, faults, inHand, lookAt, places } from './deskState';
import { SET_DOWN_WORDS } from './deskWords';
import { PlaceFields } from './fields';
import { BuildingFields, LineFields, PatchFields, StartFields, TagFields } from './ThingFields';

/** What stands on the map by hand: set down more, choose one, change it. */
export function ThingsPanel() {
  const scenario = draft.value!;
  return (
    <div class="desk-things">
      <section aria-label="Set down">
        <h2>Set down on the map</h2>
        <div class="desk-set-down">
          {SET_DOWN_KINDS.map((kind) => (
            <button
              key={kind}
              type="button"
              aria-pressed={inHand.value === kind}
              disabled={!hasRoomFor(scenario, kind)}
              onClick={() => {
                inHand.value = inHand.value === kind ? null : kind;
              }}
            >
              {SET_DOWN_WORDS[kind]}
            </button>
          ))}
        </div>
        <p class="quiet" role="status">
          {inHand.value
            ? `Tap the map where the ${SET_DOWN_WORDS[inHand.value].toLowerCase()} is to stand, or press Enter on the map for its middle.`
            : ''}
        </p>
      </section>
      {chosen.value && <Chosen place={chosen.value} scenario={scenario} />}
      <section aria-label="On the map">
        <h2>On the map</h2>
        <ul class="desk-places">
          {places.value.map((place) => (
            <li key={place.path}>
              <button
                type="button"
                class="desk-place"
                aria-pressed={place.path === chosenPath.value}
                onClick={() => {
                  choose(place.path);
                  lookAt.value = { eM: place.at[0], nM: place.at[1] };
                }}
              >
                <span>{place.name}</span>
                <span class="quiet number">{faulty(place) ? 'fault' : `${place.at[0]} · ${place.at[1]}`}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

const faulty = ({ path }: Place): boolean => faults.value.some((fault) => fault.path === path || fault.path.startsWith(`${path}.`));

/** The thing that is chosen: its place, its own fields, and what can be done with it. */
function Chosen({ place, scenario }: { readonly place: Place; readonly scenario: Scenario }) {
  const { path, name, kind } = place;
  const corner = kind === 'line-corner' || kind === 'patch-corner' || kind === 'waypoint';
  const patch = kind === 'patch-corner' ? path.slice(0, path.indexOf('.outline')) : null;
  const tag = /^tags\.(\d+)/.exec(path)?.[1];
  return (
    <section class="desk-chosen" aria-label={name}>
      <h2>{name}</h2>
      <PlaceFields path={placeField(path)} name={name} />
      <div class="desk-deeds">
        {corner && (
          <button
            type="button"
            onClick={() => {
              let next = path;
              edit(`add a corner after ${name}`, (now) => {
                const done = cornerAfter(now, path);
                next = done.path;
                return done.scenario;
              });
              choose(next);
            }}
          >
            One more after it
          </button>
        )}
        <button
          type="button"
          disabled={!canRemove(scenario, place)}
          onClick={() => {
            edit(`remove ${name}`, (now) => removedPlace(now, place));
            chosenPath.value = null;
          }}
        >
          {patch ? 'Remove this corner' : 'Remove'}
        </button>
        {patch && (
          <button
            type="button"
            onClick={() => {
              edit('remove a patch', (now) => withoutPatch(now, patch));
              chosenPath.value = null;
            }}
          >
            Remove the patch
          </button>
        )}
      </div>
      {kind === 'start' && <StartFields />}
      {kind === 'building' && <BuildingFields path={path} />}
      {kind === 'line-corner' && <LineFields path={path.slice(0, path.indexOf('.route'))} />}
      {patch && <PatchFields path={patch} />}
      {tag !== undefined && (
        <TagFields
          path={`tags.${tag}`}
          onMovement={(movement) =>
            edit(`change how ${scenario.tags[Number(tag)]!.name} moves`, (now) =>
              withField(now, `tags.${tag}.movement`, movement === 'path' ? pathFrom(now, Number(tag)) : movement),
            )
          }
        />
      )}
    </section>
  );
}
