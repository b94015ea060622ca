import { useEffect, useRef } from 'preact/hooks';
import { canRemove, movedPlace, onMap, removedPlace } from '../../core/desk/places';
import { LookButtons } from '../map/LookButtons';
import { type DeskPicture, openDeskPicture } from './deskPicture';
import { chosen, chosenPath, draft, edit, inHand, landMaking, lookAt, places } from './deskState';
import { ListenHere } from './ListenHere';
import { TruthKey, TruthLayers } from './TruthLayers';
import { layersOpen, listenAt, listening, tendTruth } from './truth';

const PAN_PX = 60;
const STEP_M = 10;
const LONG_STEP_M = 100;
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

/** The land with everything that was set down on it. */
export function DeskMap() {
  const frame = useRef<HTMLDivElement>(null);
  const ground = useRef<HTMLCanvasElement>(null);
  const above = useRef<HTMLCanvasElement>(null);
  const picture = useRef<DeskPicture | null>(null);
  useEffect(() => tendTruth(), []);
  useEffect(() => {
    picture.current = openDeskPicture({ frame: frame.current!, ground: ground.current!, above: above.current! });
    return picture.current.close;
  }, []);
  return (
    <div class="desk-map" data-making={landMaking.value}>
      <div
        class="run-map"
        ref={frame}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: things are moved by keys here
        tabIndex={0}
        aria-label={saidMap()}
        onKeyDown={(event) => onKey(event, picture.current)}
      >
        <canvas ref={ground} />
        <canvas ref={above} />
      </div>
      <LookButtons zoom={(factor) => picture.current?.zoom(factor)} whole={() => picture.current?.whole()} wholeSaid="The whole map">
        <button
          type="button"
          class="map-button map-layers"
          aria-expanded={layersOpen.value}
          onClick={() => {
            layersOpen.value = !layersOpen.value;
          }}
        >
          Truth
        </button>
      </LookButtons>
      {layersOpen.value && (
        <TruthLayers
          onListen={() => {
            listening.value = !listening.value;
            if (listening.value) {
              listenAt.value ??= picture.current!.middle();
              layersOpen.value = false;
              frame.current!.focus();
            }
          }}
        />
      )}
      {listening.value && <ListenHere />}
      <TruthKey />
    </div>
  );
}

/** Arrows carry what is chosen, else the map; Shift goes farther. Enter sets down, Delete takes away. */
function onKey(event: KeyboardEvent, picture: DeskPicture | null): void {
  if (event.ctrlKey || event.metaKey || event.altKey || !picture) return;
  const thing = chosen.peek();
  const way = WAYS[event.key];
  if (way && listening.peek()) {
    const m = event.shiftKey ? LONG_STEP_M : STEP_M;
    const { eM, nM } = listenAt.peek() ?? picture.middle();
    const to = onMap(draft.peek()!, [eM + way[0] * m, nM + way[1] * m]);
    listenAt.value = { eM: to[0], nM: to[1] };
    lookAt.value = listenAt.value;
  } else if (way && thing) {
    const m = event.shiftKey ? LONG_STEP_M : STEP_M;
    edit(
      `move ${thing.name}`,
      (now) => movedPlace(now, thing.path, [thing.at[0] + way[0] * m, thing.at[1] + way[1] * m]),
      `keys ${thing.path}`,
    );
  } else if (way) picture.pan(-way[0] * PAN_PX, way[1] * PAN_PX);
  else if (event.key === 'Enter' && inHand.peek()) picture.setDownHere();
  else if ((event.key === 'Delete' || event.key === 'Backspace') && thing) {
    edit(`remove ${thing.name}`, (now) => (canRemove(now, thing) ? removedPlace(now, thing) : now));
    chosenPath.value = null;
  } else if (event.key === 'Escape') {
    inHand.value = null;
    chosenPath.value = null;
    listening.value = false;
  } else if (event.key === '+' || event.key === '=') picture.zoom(1.5);
  else if (event.key === '-') picture.zoom(1 / 1.5);
  else return;
  event.preventDefault();
}

function saidMap(): string {
  const thing = chosen.value;
  const what = thing ? ` ${thing.name} is chosen, ${thing.at[0]} m east, ${thing.at[1]} m north: arrows move it, Delete removes it.` : '';
  return `Map of the exercise with ${places.value.length} things on it.${what}`;
}
