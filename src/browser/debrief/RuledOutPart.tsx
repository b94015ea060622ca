import { type RuledOutJudged, ruledOutSentence } from '../../core/debrief/ruledOut';
import type { Scenario } from '../../core/scenario/schema';
import { clock } from './charts/chartFrame';
import { onMap } from './map/layers';
import { seek } from './replay';

type Wanted = { readonly judged: RuledOutJudged; readonly scenario: Scenario; readonly onShow: () => void };

/** Was the tag in the hatched ground, and how much could have been hatched? */
export function RuledOutPart({ judged, scenario, onShow }: Wanted) {
  const { wrongly } = judged;
  return (
    <>
      <p>
        {ruledOutSentence(
          judged,
          scenario.tags.map(({ name }) => name),
        )}
      </p>
      <div class="part-deeds">
        <button
          type="button"
          aria-pressed={onMap.value.ruledOut}
          onClick={() => {
            onMap.value = { ...onMap.value, ruledOut: !onMap.value.ruledOut };
            if (onMap.value.ruledOut) onShow();
          }}
        >
          {onMap.value.ruledOut ? 'Take it off the map' : 'Show it on the map'}
        </button>
        {wrongly && (
          <button type="button" onClick={() => seek(wrongly.atS)}>
            Go to <span class="number">{clock(wrongly.atS)}</span>
          </button>
        )}
      </div>
      <p class="quiet">On the map: hatched by you in ink; what else the silences of your walk would have ruled out, dashed.</p>
    </>
  );
}
