import { Segments } from '../controls/Segments';
import { act, holdNow, openRun } from '../currentRun';
import { northWord } from './measures';
import { bearingText } from './words';

/** Where the antenna points and how it is held. */
export function AntennaHold() {
  const hold = holdNow.value;
  if (!hold) return null;
  return (
    <div class="hold">
      <div class="hold-heading">
        <h2 class="label">Antenna</h2>
        <p>
          <output class="number hold-number">{openRun.value?.exercise.scenario.aids.compass ? bearingText(hold.headingDeg) : '–'}</output>
          <span class="unit"> {northWord()}</span>
        </p>
      </div>
      <Segments
        name="Axis of the antenna"
        choices={[
          { value: 0, text: 'Flat', said: 'Hold flat' },
          { value: 90, text: 'Upright', said: 'Hold upright' },
        ]}
        chosen={hold.rollDeg >= 45 ? 90 : 0}
        onChoose={(toDeg) => act({ type: 'roll', toDeg })}
      />
      <Segments
        name="Height of the antenna"
        choices={[
          { value: false, text: 'Chest', said: 'Hold at chest height' },
          { value: true, text: 'Raised', said: 'Hold at arm’s length overhead' },
        ]}
        chosen={hold.raised}
        onChoose={(raised) => act({ type: 'raise', raised })}
      />
    </div>
  );
}
