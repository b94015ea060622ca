import { useEffect, useRef } from 'preact/hooks';
import { CloseMark } from '../controls/marks';
import { Segments } from '../controls/Segments';
import { LayerScale } from '../map/LayerScale';
import { LAYER_GAINS_DB, LAYER_IDS } from '../map/layerPicture';
import { LAYER_NAMES } from '../map/layerWords';
import { settings } from '../storage/settings';
import { draft } from './deskState';
import { layer, layerGainDb, layerPicture, layersOpen, listening, truthTag } from './truth';

/** What of the truth may lie over the land, one at a time, and the place where one listens. */
export function TruthLayers({ onListen }: { readonly onListen: () => void }) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <aside
      class="layers"
      aria-label="Layers of truth"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        layersOpen.value = false;
      }}
    >
      <button
        ref={first}
        type="button"
        class="plain layers-close"
        aria-label="Put the layers away"
        onClick={() => {
          layersOpen.value = false;
        }}
      >
        <CloseMark />
      </button>
      <h2 class="desk-truth-name">The truth of {draft.value?.tags[truthTag.value]?.name}</h2>
      <div class="layers-list">
        {LAYER_IDS.map((id) => (
          <button
            key={id}
            type="button"
            aria-pressed={layer.value === id}
            class="layers-line"
            onClick={() => {
              layer.value = id;
            }}
          >
            {id === 'none' ? 'Nothing' : LAYER_NAMES[id]}
          </button>
        ))}
      </div>
      {layer.value === 'loudness' && (
        <Segments
          name="Gain, dB"
          choices={LAYER_GAINS_DB.map((db) => ({ value: db, text: String(db), said: `Gain ${db} dB` }))}
          chosen={layerGainDb.value}
          onChoose={(db) => {
            layerGainDb.value = db;
          }}
        />
      )}
      <div class="layers-list">
        <button type="button" class="layers-line" aria-pressed={listening.value} onClick={onListen}>
          Listen at a place: ring and waves
        </button>
      </div>
    </aside>
  );
}

/** The scale of the layer, under the map. */
export function TruthKey() {
  void settings.value.palette;
  const what = layer.value;
  if (what === 'none') return null;
  return (
    <div class="layer-key">
      <p>
        <b>{LAYER_NAMES[what]}</b>
        {what === 'loudness' && <span class="number"> {layerGainDb.value} dB</span>}
      </p>
      <LayerScale what={what} picture={layerPicture.value} />
    </div>
  );
}
