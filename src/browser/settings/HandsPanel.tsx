import { Segments } from '../controls/Segments';
import { changeHands, hands, SENSITIVITIES, TURN_SPEEDS_DEG_PER_S } from '../storage/hands';

/** How fast keys and sticks work on this device. */
export function HandsPanel() {
  const { turnDegPerS, sensitivity } = hands.value;
  return (
    <div class="settings">
      <div class="settings-line">
        <span class="label">Antenna turns, degrees a second</span>
        <Segments<number>
          name="Antenna turns, degrees a second"
          choices={TURN_SPEEDS_DEG_PER_S.map((value) => ({ value, text: String(value) }))}
          chosen={turnDegPerS}
          onChoose={(value) => changeHands({ turnDegPerS: value })}
        />
      </div>
      <div class="settings-line">
        <span class="label">Sticks and triggers</span>
        <Segments<number>
          name="Sticks and triggers"
          choices={SENSITIVITIES.map((value) => ({ value, text: value < 1 ? 'Gentle' : value > 1 ? 'Quick' : 'Usual' }))}
          chosen={sensitivity}
          onChoose={(value) => changeHands({ sensitivity: value })}
        />
      </div>
    </div>
  );
}
