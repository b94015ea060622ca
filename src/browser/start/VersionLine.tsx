import { PROGRAM_VERSION } from '../../core/run/record';
import { keptVersion, newerWaits, takeNewer } from '../offline/keepOffline';

/** Which version this is, whether it opens without a network, and the way to a newer one. */
export function VersionLine() {
  return (
    <footer class="version-line">
      <p class="quiet">
        Version <span class="number">{PROGRAM_VERSION}</span>
        {keptVersion.value !== '' && (
          <>
            , build <span class="number version-build">{keptVersion.value}</span>. It is kept on this device and opens without a network
          </>
        )}
        . <a href="./licences.html">Third-party licences</a>
      </p>
      <div role="status">
        {newerWaits.value && (
          <button type="button" onClick={takeNewer}>
            Open the newer version
            <span class="start-go-what">your runs and the logbook stay</span>
          </button>
        )}
      </div>
    </footer>
  );
}
