import { Slide } from '../controls/Slide';
import { act, controlsNow } from '../currentRun';

export function GainSlide() {
  const gainDb = controlsNow.value?.gainDb ?? 0;
  return (
    <section class="gain">
      <div class="gain-head">
        <h2 class="label">Gain</h2>
        <p>
          <output class="number gain-number">{Math.round(gainDb)}</output>
          <span class="unit"> dB</span>
        </p>
      </div>
      <Slide
        name="Gain"
        value={Math.round(gainDb)}
        most={90}
        step={1}
        markEvery={15}
        said={`${Math.round(gainDb)} decibels`}
        onSet={(value) => act({ type: 'setGain', gainDb: value })}
      />
    </section>
  );
}
