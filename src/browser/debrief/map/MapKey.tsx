import { useComputed } from '@preact/signals';
import type { ExcessClass } from '../../../core/debrief/excessTrack';
import type { Poses } from '../../../core/debrief/poses';
import { stateAt } from '../../../core/debrief/poses';
import type { Scenario } from '../../../core/scenario/schema';
import { currentPalette } from '../../design/palette';
import { LayerScale } from '../../map/LayerScale';
import { LAYER_NAMES, valueText } from '../../map/layerWords';
import { settings } from '../../storage/settings';
import { atS } from '../replay';
import { layer, layerGainDb, layerPicture } from './layers';
import { excessStroke } from './paintTrack';

const WORDS: readonly (readonly [ExcessClass, string])[] = [
  ['quiet', 'gain up to 10 dB over least'],
  ['loud', 'up to 30 dB'],
  ['flat-out', 'more, or flat out'],
  ['silent', 'too low to hear'],
];

/** How the track is to be read: each stroke beside its words. Only what the track has is in it. */
export function TrackKey({ kinds }: { readonly kinds: ReadonlySet<ExcessClass> }) {
  void settings.value.palette;
  const palette = currentPalette();
  return (
    <ul class="track-key">
      {WORDS.filter(([kind]) => kinds.has(kind)).map(([kind, words]) => {
        const { colour, width, dash, ticks } = excessStroke(kind, palette);
        return (
          <li key={kind}>
            <svg viewBox="0 0 34 14" width="34" height="14" aria-hidden="true">
              <path d="M3 7h28" stroke={colour} stroke-width={width} stroke-linecap="round" stroke-dasharray={dash?.join(' ') ?? 'none'} />
              {ticks && <path d="M8 1v12M17 1v12M26 1v12" stroke={colour} stroke-width="1.400" />}
            </svg>
            {words}
          </li>
        );
      })}
    </ul>
  );
}

/** The scale of the layer on the map, what it says of the whole ground and of the scrubber's place; while it is worked out, how far. */
export function LayerKey({ scenario, poses }: { readonly scenario: Scenario; readonly poses: Poses }) {
  void settings.value.palette;
  const here = useComputed(() => {
    const picture = layerPicture.value;
    if (!picture || layer.value === 'none') return '';
    const { at } = stateAt(scenario, poses, atS.value);
    const cell = (m: number) => Math.min(picture.side - 1, Math.max(0, Math.floor((m / scenario.ground.sizeM) * picture.side)));
    return valueText(layer.value, picture.values[cell(at.nM) * picture.side + cell(at.eM)]);
  });
  const what = layer.value;
  if (what === 'none') return null;
  return (
    <div class="layer-key">
      <p class="layer-name">
        <b>{LAYER_NAMES[what]}</b>
        {what === 'loudness' && <span class="number"> {layerGainDb.value} dB</span>}
        {here.value && <span class="layer-here">here {here.value}</span>}
      </p>
      <LayerScale what={what} picture={layerPicture.value} />
    </div>
  );
}
