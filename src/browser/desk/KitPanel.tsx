import { setField } from './deskState';
import { AID_NAMES, ANTENNA_WORDS } from './deskWords';
import { ChoiceField, FieldFaults, NumberField, SlideField, TickField, TickList } from './fields';

const ATTENUATOR_WORDS = { 0: '0 dB', 10: '10 dB', 20: '20 dB', 30: '30 dB' } as const;
const COMPANION_WORDS = { none: 'Only when it is sent', beside: 'At once, beside the learner', afterwards: 'After the own run' } as const;

/** What the learner carries, how it is set at the start, and what helps. */
export function KitPanel() {
  return (
    <div class="desk-form">
      <SlideField path="kit.startGainDb" label="Gain at the start" unit="dB" most={90} step={1} />
      <ChoiceField
        path="kit.startAttenuatorDb"
        label="Attenuator at the start"
        words={ATTENUATOR_WORDS}
        onChoose={(db) => setField('kit.startAttenuatorDb', Number(db), 'change the attenuator')}
      />
      <NumberField path="kit.startOffsetHz" label="Dial off the clearest note" unit="Hz" step={50} />
      <TickList path="kit.antennas" label="Antennas carried" words={ANTENNA_WORDS} />
      <ChoiceField path="kit.startAntenna" label="In the hand at the start" words={ANTENNA_WORDS} />
      <NumberField path="kit.designMHz" label="Antennas cut for" unit="MHz" step={0.1} />
      <NumberField path="kit.noiseFigureDb" label="Noise of the receiver" unit="dB" step={0.5} />
      <fieldset class="desk-field desk-field-wide desk-ticks">
        <legend>Aids</legend>
        {Object.entries(AID_NAMES).map(([aid, name]) => (
          <TickField key={aid} path={`aids.${aid}`} label={name} />
        ))}
        <FieldFaults path="aids" />
        <TickField path="limits.vehicle" label="Vehicle on tracks" />
        <TickField path="tagCheck" label="Tag check before leaving" orNone />
      </fieldset>
      <ChoiceField
        path="companion"
        label="The steady walker’s run is shown"
        words={COMPANION_WORDS}
        onChoose={(when) => setField('companion', when === 'none' ? undefined : when, 'change the companion')}
      />
    </div>
  );
}
