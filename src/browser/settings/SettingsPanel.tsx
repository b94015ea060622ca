import { MinusMark, PlusMark } from '../controls/marks';
import { Segments } from '../controls/Segments';
import type { PaletteId } from '../design/palette';
import { change, LONGEST_NAME, type Settings, settings, stepDeclination, stepVolume } from '../storage/settings';

/** Volume, palette, captions and measures: everything a person sets for this device. */
export function SettingsPanel() {
  const { palette, captions, volumeDb, muted, name, controlsShown } = settings.value;
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
      <Measures />
      <div class="settings-line">
        <span class="label">The controls, a line at a time</span>
        <button type="button" onClick={() => change({ controlsShown: !controlsShown })}>
          {controlsShown ? 'Show them again' : 'Don’t show them'}
        </button>
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

/** What bearings are read from, and lengths in. */
function Measures() {
  const { north, declinationDeg, lengths } = settings.value;
  return (
    <>
      <div class="settings-line">
        <span class="label">Bearings from north</span>
        <Segments<Settings['north']>
          name="Bearings from north"
          choices={[
            { value: 'true', text: 'True' },
            { value: 'magnetic', text: 'Magnetic' },
          ]}
          chosen={north}
          onChoose={(value) => change({ north: value })}
        />
      </div>
      {north === 'magnetic' && (
        <div class="settings-line">
          <span class="label">Declination, as on your map</span>
          <div class="settings-volume">
            <button type="button" aria-label="Declination farther west" onClick={() => stepDeclination(-1)}>
              <MinusMark />
            </button>
            <output class="number">
              {Math.abs(declinationDeg).toFixed(1)}° {declinationDeg === 0 ? '' : declinationDeg > 0 ? 'east' : 'west'}
            </output>
            <button type="button" aria-label="Declination farther east" onClick={() => stepDeclination(1)}>
              <PlusMark />
            </button>
          </div>
        </div>
      )}
      <div class="settings-line">
        <span class="label">Lengths</span>
        <Segments<Settings['lengths']>
          name="Lengths"
          choices={[
            { value: 'metres', text: 'Metres' },
            { value: 'yards', text: 'Yards' },
          ]}
          chosen={lengths}
          onChoose={(value) => change({ lengths: value })}
        />
      </div>
    </>
  );
}
