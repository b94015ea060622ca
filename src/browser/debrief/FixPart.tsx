import type { Debriefing } from '../../core/debrief/debriefing';
import type { FixAgainstTruth } from '../../core/debrief/fixAgainstTruth';
import type { StartJudged } from '../../core/debrief/startChoice';
import type { Ellipse } from '../../core/fix/ellipse';
import { clock } from './charts/chartFrame';
import { onMap } from './map/layers';
import { atS, seek } from './replay';
import { TableFrame } from './TableFrame';

const metres = (m: number): string => (m < 950 ? `${Math.max(1, Math.round(m))} m` : `${(m / 1_000).toFixed(2)} km`);

/** A length with its unit small behind it. */
function Metres({ m }: { readonly m: number }) {
  const [value, unit] = metres(m).split(' ');
  return (
    <>
      <span class="number">{value}</span> <span class="unit">{unit}</span>
    </>
  );
}

/** The fix as the notebook gave it at the scrubber's time, against the truth; after each bearing a row; and where to start. */
export function FixPart({ debriefing, onShow }: { readonly debriefing: Debriefing; readonly onShow: () => void }) {
  const { fixes, start } = debriefing;
  const now = fixes.filter((one) => one.atS <= atS.value + 0.05).at(-1) ?? fixes[0];
  return (
    <>
      {now ? <FixNow now={now} /> : <p class="quiet">No bearing stands in the notebook, so there is no fix.</p>}
      <div class="part-deeds">
        <button
          type="button"
          aria-pressed={onMap.value.fix}
          onClick={() => {
            onMap.value = { ...onMap.value, fix: !onMap.value.fix };
            if (onMap.value.fix) onShow();
          }}
        >
          {onMap.value.fix ? 'Take the fix off the map' : 'Show the fix on the map'}
        </button>
      </div>
      {fixes.length > 1 && <FixTable fixes={fixes} now={now} />}
      {start && <StartWords start={start} />}
    </>
  );
}

function FixNow({ now: { fix, bearings, offM, within } }: { readonly now: FixAgainstTruth }) {
  const crossing = fix.crossingAngleDeg;
  return (
    <div class="fix-now" role="status">
      {fix.ok ? (
        <p class="fix-sentence">
          From {bearings.length} bearings the fix lay{' '}
          <b>
            <Metres m={offM!} />
          </b>{' '}
          from the tag
          {within === null ? '.' : within ? ', and the tag was inside its area.' : '; the tag was outside its area.'}
        </p>
      ) : (
        <p class="fix-sentence">
          No fix from {bearings.length === 1 ? 'one bearing' : `${bearings.length} bearings`}. {fix.reason}
        </p>
      )}
      <dl class="figures">
        <div>
          <dt class="label">Crossing angle</dt>
          <dd class="number">{crossing === null ? '–' : `${Math.round(crossing)}°`}</dd>
        </div>
        {fix.learnerEllipse && <AreaNumbers name="Area at 5° a bearing, half axes" area={fix.learnerEllipse} />}
        {fix.ellipse95 && <AreaNumbers name="Area by their own scatter" area={fix.ellipse95} />}
      </dl>
      {fix.ok && fix.warnings.length > 0 && (
        <ul class="fix-warnings">
          {fix.warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      )}
      <p class="quiet">
        Each area holds the tag in 95 of 100 cases, if errors are what it takes them for: 5° a bearing, or what these bearings show of
        themselves.
      </p>
    </div>
  );
}

function AreaNumbers({ name, area }: { readonly name: string; readonly area: Ellipse }) {
  return (
    <div>
      <dt class="label">{name}</dt>
      <dd>
        <Metres m={area.semiMajorM} /> × <Metres m={area.semiMinorM} />
      </dd>
    </div>
  );
}

function FixTable({ fixes, now }: { readonly fixes: readonly FixAgainstTruth[]; readonly now: FixAgainstTruth | undefined }) {
  return (
    <details class="numbers-table">
      <summary>The fix after each bearing</summary>
      <TableFrame name="The fix after each bearing">
        <table class="fix-table">
          <thead>
            <tr>
              <th scope="col">After bearing</th>
              <th scope="col">Time</th>
              <th scope="col">Crossing</th>
              <th scope="col">Off by</th>
              <th scope="col">Long half axis</th>
              <th scope="col">Tag in the area</th>
            </tr>
          </thead>
          <tbody>
            {fixes.map((one) => (
              <tr key={one.bearings.at(-1)} class="number" data-shown={one === now}>
                <th scope="row">
                  <button
                    type="button"
                    class="bearing-choose"
                    aria-label={`Fix after bearing ${one.bearings.at(-1)}: take the scrubber there`}
                    onClick={() => seek(one.atS)}
                  >
                    {one.bearings.at(-1)}
                  </button>
                </th>
                <td>{clock(one.atS)}</td>
                <td>{one.fix.crossingAngleDeg === null ? '–' : `${Math.round(one.fix.crossingAngleDeg)}°`}</td>
                <td>{one.offM === null ? 'no fix' : metres(one.offM)}</td>
                <td>{one.fix.learnerEllipse ? metres(one.fix.learnerEllipse.semiMajorM) : '–'}</td>
                <td>{one.within === null ? '–' : one.within ? 'yes' : 'no'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

const minutes = (s: number): string => `${Math.max(1, Math.round(s / 60))}\u00a0min`;

function StartWords({ start: { chosen, quickest, quickerShare } }: { readonly start: StartJudged }) {
  return (
    <div class="start-words">
      <h3>Where to start</h3>
      {!chosen && (
        <p>
          You chose no place to start from. The quickest was <b class="number">{minutes(quickest.seconds)}</b> on foot from the tag, on the
          nearest road or track; it is on the map with the fix.
        </p>
      )}
      {chosen && chosen.seconds === null && <p>From the place that you chose no way leads to the tag on foot.</p>}
      {chosen && chosen.seconds !== null && (
        <p>
          From the place that you chose it was <b class="number">{minutes(chosen.seconds)}</b> on foot to the tag; from the quickest start{' '}
          <b class="number">{minutes(quickest.seconds)}</b>.{' '}
          {quickerShare! < 0.05
            ? 'Hardly any place on a road was quicker.'
            : `${Math.round(100 * quickerShare!)} % of the places on roads and tracks were quicker.`}
        </p>
      )}
    </div>
  );
}
