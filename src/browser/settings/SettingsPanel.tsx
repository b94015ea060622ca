import { MinusMark, PlusMark } from '../controls/marks';
import { Segments } from '../controls/Segments';
import type { PaletteId } from '../design/palette';
import { change, LONGEST_NAME, settings, stepVolume } from '../storage/settings';

/** Volume, palette and captions: everything a person sets for this device. */
export function SettingsPanel() {
  const { palette, captions, volumeDb, muted, name } = settings.value;
  return (
    <div class="settings">
      <div class="settings-line">
        <span class="label">Volume</span>
        <div class="settings-volume">
          <button type="button" aria-label="Softer" onClick={() => stepVolume(-1)}>
            <MinusMark />
          </button>
          <output class="number">{muted ? 'off' : `${volumeDb < 0 ? '−' : ''}${Math.abs(volumeDb)} dB`}</output>
          <button type="button" aria-label="Louder" onClick={() => stepVolume(1)}>
            <PlusMark />
          </button>
        </div>
      </div>
      <div class="settings-line">
        <span class="label">Light</span>
        <Segments<PaletteId>
          name="Palette"
          choices={[
            { value: 'day', text: 'Day' },
            { value: 'night', text: 'Night' },
            { value: 'sun', text: 'Bright sun' },
          ]}
          chosen={palette}
          onChoose={(value) => change({ palette: value })}
        />
      </div>
      <div class="settings-line">
        <span class="label">Captions and level bar</span>
        <Segments
          name="Captions and level bar"
          choices={[
            { value: false, text: 'Off' },
            { value: true, text: 'On' },
          ]}
          chosen={captions}
          onChoose={(value) => change({ captions: value })}
        />
      </div>
      <label class="settings-line">
        <span class="label">Name in run files, if you like</span>
        <input
          class="settings-name"
          type="text"
          maxLength={LONGEST_NAME}
          autoComplete="nickname"
          value={name}
          onInput={(event) => change({ name: event.currentTarget.value })}
        />
      </label>
    </div>
  );
}
