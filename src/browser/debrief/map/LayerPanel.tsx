import { useEffect, useRef } from 'preact/hooks';
import { CloseMark } from '../../controls/marks';
import { Segments } from '../../controls/Segments';
import { LAYER_GAINS_DB, LAYER_IDS } from '../../map/layerPicture';
import { LAYER_NAMES } from '../../map/layerWords';
import { layer, layerGainDb, layersOpen, onMap } from './layers';

/** What may lie over the land, one at a time, and what may be drawn on it. */
export function LayerPanel({ hasSteady }: { readonly hasSteady: boolean }) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const drawn = [
    ['waves', 'Waves behind every bearing'],
    ['fix', 'Fix and its area'],
    ['ruledOut', 'Ground ruled out'],
    ...(hasSteady ? [['steady', 'The steady walker'] as const] : []),
  ] as const;
  return (
    <aside
      class="layers"
      aria-label="Layers of the map"
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
      <h3>Over the land</h3>
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
      <h3>Drawn on it</h3>
      <div class="layers-list">
        {drawn.map(([id, text]) => (
          <button
            key={id}
            type="button"
            class="layers-line"
            aria-pressed={onMap.value[id]}
            onClick={() => {
              onMap.value = { ...onMap.value, [id]: !onMap.value[id] };
            }}
          >
            {text}
          </button>
        ))}
      </div>
    </aside>
  );
}
