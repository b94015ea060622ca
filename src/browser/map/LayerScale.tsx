import { SURVEY_SCALES } from '../../core/debrief/survey';
import { currentPalette } from '../design/palette';
import type { LayerKind } from '../workers/surveyMessages';
import type { LayerPicture } from './layerPicture';
import { LAYER_LEVELS, LAYER_NAMES, layerSentence, levelText } from './layerWords';
import { bandColour } from './paintLayer';

/** The bands of a layer with their colours, and what it says of the whole ground; while it is worked out, how far. */
export function LayerScale({ what, picture }: { readonly what: LayerKind; readonly picture: LayerPicture | null }) {
  const palette = currentPalette();
  const share = picture?.share ?? 0;
  if (picture?.fault) return <p role="alert">This layer could not be worked out: {picture.fault}. Choose another, then this one again.</p>;
  return (
    <>
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
    </>
  );
}
