import type { Dial } from '../../core/listening/settings';
import { GAIN } from '../../core/listening/settings';
import { Key } from '../controls/Key';
import { Segments } from '../controls/Segments';
import { Slide } from '../controls/Slide';
import { set, settings, shown } from './roomState';

/** The one control that matters most, as large as it can be. */
export function GainControl() {
  const { gainDb } = settings.value;
  return (
    <div class="room-gain">
      <span class="room-gain-name" aria-hidden="true">
        Gain
      </span>
      <Slide
        name="Gain"
        value={gainDb}
        most={GAIN.to}
        step={1}
        markEvery={30}
        said={`${gainDb} decibels`}
        keys="ends"
        onSet={(value) => set({ gainDb: value })}
      />
      <output class="room-gain-value number" aria-hidden="true">
        {gainDb}
        <span class="unit"> dB</span>
      </output>
      <span class="room-gain-keys" aria-hidden="true">
        <Key name="↑" />
        <Key name="↓" />
      </span>
    </div>
  );
}

/** What else the demonstration lets one change: a row of choices, or a slider. */
export function OtherDials() {
  return (
    <>
      {shown.value.dials.map((dial) => (
        <OtherDial key={`${shown.value.id}/${dial.key}`} dial={dial} />
      ))}
    </>
  );
}

function OtherDial({ dial }: { readonly dial: Dial }) {
  const value = settings.value[dial.key];
  const to = (next: number) => set({ [dial.key]: next });
  return (
    <div class={dial.choices ? 'room-dial' : 'room-dial room-dial-slide'}>
      <span class="room-dial-name" aria-hidden="true">
        {dial.name}
        {!dial.choices && (
          <>
            {' '}
            <span class="number">{value}</span>
            <span class="unit"> {dial.unit}</span>
          </>
        )}
      </span>
      {dial.choices ? (
        <Segments
          name={dial.name}
          choices={dial.choices.map((text, i) => ({ value: dial.from + i * dial.step, text }))}
          chosen={value}
          onChoose={to}
        />
      ) : (
        <Slide
          name={dial.name}
          value={value}
          least={dial.from}
          most={dial.to}
          step={dial.step}
          markEvery={dial.to - dial.from}
          said={`${value} ${dial.unit}`}
          keys="arrows"
          onSet={to}
        />
      )}
    </div>
  );
}
