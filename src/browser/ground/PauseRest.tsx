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
      <section>
        <h3>Someone beside you</h3>
        <p>
          An instructor’s window on this machine shows where the tag is, and can stop the run, weaken the tag or drop a hint. The run says
          afterwards that it was open.
        </p>
        <p>
          <button type="button" onClick={() => window.open('#/instructor', 'faintward-instructor', 'popup,width=1280,height=820')}>
            Instructor’s window
          </button>
        </p>
      </section>
      <section class="sheet-keys">
        <h3>Hands</h3>
        <HandsPanel />
        <KeyList />
      </section>
    </>
  );
}
