import { HandsPanel } from '../settings/HandsPanel';
import { SettingsPanel } from '../settings/SettingsPanel';
import { AntennaChoice } from './AntennaChoice';
import { KeyList } from './KeyList';

/** The lower part of the sheet of a run at rest: antennas, settings, keys. */
export function PauseRest() {
  return (
    <>
      <AntennaChoice />
      <section>
        <h3>Settings</h3>
        <SettingsPanel />
      </section>
      <section class="sheet-keys">
        <h3>Hands</h3>
        <HandsPanel />
        <KeyList />
      </section>
    </>
  );
}
