import { Segments } from '../controls/Segments';
import { act, controlsNow } from '../currentRun';

const STEPS_DB = [0, 10, 20, 30] as const;

export function AttenuatorSteps() {
  return (
    <section class="attenuator">
      <h2 class="label">
        Attenuator <span class="unit">dB</span>
      </h2>
      <Segments
        name="Attenuator, decibels"
        choices={STEPS_DB.map((value) => ({ value, text: String(value), said: `${value} decibels` }))}
        chosen={controlsNow.value?.attenuatorDb ?? 0}
        onChoose={(attenuatorDb) => act({ type: 'setAttenuator', attenuatorDb })}
      />
    </section>
  );
}
