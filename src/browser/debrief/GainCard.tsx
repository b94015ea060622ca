import type { GainDistance } from '../../core/debrief/gainDistance';
import type { Scenario } from '../../core/scenario/schema';
import { DistanceTable, fitWords } from './DistancePart';

/** The gain–distance table as a card for the pocket: seen on paper only. */
export function GainCard({ gain, scenario, tag }: { readonly gain: GainDistance; readonly scenario: Scenario; readonly tag: number }) {
  const { frequencyMHz, eirpDbm } = scenario.tags[tag]!;
  return (
    <section class="card" aria-hidden="true">
      <h1>Gain and distance</h1>
      <p>
        {scenario.title}: tag of {eirpDbm} dBm at {frequencyMHz} MHz. Gain less attenuation at which the beep was just heard, antenna at its
        best heading.
      </p>
      <DistanceTable rows={gain.rows} fit={gain.fit} />
      <p>{gain.fit ? fitWords(gain.fit) : ''}</p>
      <p class="card-rule">
        Rule of thumb with the tag in view: 12 dB less for each halving of the distance. Hills, woods and a whip that lies make a tag seem
        farther than it is; hardly anything makes it seem nearer. Numbers of one simulated run: another tag, antenna or receiver has others.
      </p>
    </section>
  );
}
