import { useSignal } from '@preact/signals';
import { antennaById } from '../../core/antenna/catalogue';
import type { AntennaId } from '../../core/scenario/schema';
import { act, comingState, openRun } from '../currentRun';

/** Another antenna from the kit: it takes half a minute, so it is chosen while the run rests. */
export function AntennaChoice() {
  const chosen = useSignal<AntennaId>(comingState()?.hold.antenna ?? 'yagi3');
  const kit = openRun.value?.exercise.scenario.kit;
  if (!kit || kit.antennas.length < 2) return null;
  return (
    <section>
      <h3>Antenna</h3>
      <div class="antenna-choice">
        {kit.antennas.map((id) => (
          <button
            key={id}
            type="button"
            class={id === chosen.value ? 'primary' : ''}
            aria-pressed={id === chosen.value}
            title={antennaById(id).whenToTake}
            onClick={() => {
              chosen.value = id;
              act({ type: 'changeAntenna', antenna: id });
            }}
          >
            {antennaById(id).name}
          </button>
        ))}
      </div>
      <p class="quiet">Changing it takes half a minute of standing.</p>
    </section>
  );
}
