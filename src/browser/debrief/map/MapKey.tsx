import { useComputed } from '@preact/signals';
import type { ExcessClass } from '../../../core/debrief/excessTrack';
import type { Poses } from '../../../core/debrief/poses';
import { stateAt } from '../../../core/debrief/poses';
import { SURVEY_SCALES } from '../../../core/debrief/survey';
import type { Scenario } from '../../../core/scenario/schema';
import { currentPalette } from '../../design/palette';
import { settings } from '../../storage/settings';
import { atS } from '../replay';
import { layer, layerGainDb, layerPicture } from './layers';
import { LAYER_LEVELS, LAYER_NAMES, layerSentence, levelText, valueText } from './layerWords';
import { bandColour } from './paintLayer';
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
  const palette = currentPalette();
  const here = useComputed(() => {
    const picture = layerPicture.value;
    if (!picture || layer.value === 'none') return '';
    const { at } = stateAt(scenario, poses, atS.value);
    const cell = (m: number) => Math.min(picture.side - 1, Math.max(0, Math.floor((m / scenario.ground.sizeM) * picture.side)));
    return valueText(layer.value, picture.values[cell(at.nM) * picture.side + cell(at.eM)]);
  });
  const what = layer.value;
  if (what === 'none') return null;
  const picture = layerPicture.value;
  const share = picture?.share ?? 0;
  return (
    <div class="layer-key">
      <p class="layer-name">
        <b>{LAYER_NAMES[what]}</b>
        {what === 'loudness' && <span class="number"> {layerGainDb.value} dB</span>}
        {here.value && <span class="layer-here">here {here.value}</span>}
      </p>
      {what !== 'sight' && (
        <div class="layer-scale" aria-hidden="true">
          {LAYER_LEVELS[what].map((level, band) => (
            <span key={level} class="layer-band">
              <span class="layer-swatch" style={{ background: bandColour(what, band, palette) }} />
              <span class="number">{levelText(what, level)}</span>
            </span>
          ))}
          <span class="unit">
            {what === 'openness' || what === 'apparent-bearing-error' ? '' : SURVEY_SCALES[what].unit.split(' ')[0]} and more
          </span>
        </div>
      )}
      {share < 1 ? (
        <div
          class="layer-progress"
          role="progressbar"
          aria-label={LAYER_NAMES[what]}
          aria-valuemin={0}
          aria-valuemax={100}
          aria-valuenow={Math.round(100 * share)}
        >
          <span style={{ width: `${100 * share}%` }} />
        </div>
      ) : (
        <p class="quiet" role="status">
          {layerSentence(what, picture!)}
        </p>
      )}
    </div>
  );
}
