import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { antennaFigures } from '../../core/antenna/antennaFigures';
import { antennaById } from '../../core/antenna/catalogue';
import { canChangeTo } from '../../core/run/vehicle';
import type { AntennaId } from '../../core/scenario/schema';
import { act, comingState, openRun } from '../currentRun';
import { AntennaDrawing } from './AntennaDrawing';
import './antennaCards.css';

/** The antennas of the kit as cards, the one in hand marked. Another one takes half a minute, so it is chosen while the run rests. */
export function AntennaChoice() {
  const chosen = useSignal<AntennaId>(comingState()?.hold.antenna ?? 'yagi3');
  const scenario = openRun.value?.exercise.scenario;
  if (!scenario) return null;
  const { kit, tags } = scenario;
  const single = kit.antennas.length === 1;
  const held = comingState();
  const stays = kit.antennas.filter((id) => !antennaById(id).onFoot).map((id) => antennaById(id).name);
  return (
    <section>
      <h3>{single ? 'Your antenna' : 'Antenna'}</h3>
      <div class="antenna-cards">
        {kit.antennas.map((id) => (
          <Card
            key={id}
            inHand={single ? null : id === chosen.value}
            onTake={() => {
              if (held && !canChangeTo(scenario, held, id)) return;
              chosen.value = id;
              act({ type: 'changeAntenna', antenna: id });
            }}
          >
            <CardFace id={id} frequencyMHz={tags[0]!.frequencyMHz} designMHz={kit.designMHz} inHand={!single && id === chosen.value} />
          </Card>
        ))}
      </div>
      {!single && <p class="quiet">Changing it takes half a minute of standing.{scenario.limits.vehicle && atVehicleWords(stays)}</p>}
    </section>
  );
}

/** Which of them stay at the vehicle, where there is one. */
const atVehicleWords = (names: readonly string[]): string =>
  names.length === 0 ? '' : ` ${names.join(', ')}: taken up and put away within 10 m of the vehicle, and never carried from it.`;

type CardProps = { readonly inHand: boolean | null; readonly onTake: () => void; readonly children: ComponentChildren };

/** A card is a button where there is something to choose. */
function Card({ inHand, onTake, children }: CardProps) {
  if (inHand === null) return <div class="antenna-card">{children}</div>;
  return (
    <button type="button" class="antenna-card" aria-pressed={inHand} onClick={onTake}>
      {children}
    </button>
  );
}

type FaceProps = { readonly id: AntennaId; readonly frequencyMHz: number; readonly designMHz: number; readonly inHand: boolean };

function CardFace({ id, frequencyMHz, designMHz, inHand }: FaceProps) {
  const antenna = antennaById(id);
  const { boomM, gainDbi, widthDeg, frontToBackDb } = antennaFigures(antenna, frequencyMHz, designMHz);
  return (
    <>
      <AntennaDrawing antenna={antenna} designMHz={designMHz} />
      <span class="antenna-words">
        <b class="antenna-name">
          {antenna.name} {inHand && <span class="antenna-in-hand">in hand</span>}
        </b>
        <span class="antenna-figures">
          {boomM > 0 && <Figure value={boomM.toFixed(2)} unit="m boom" />}
          <Figure value={gainDbi.toFixed(1)} unit="dBi gain" />
          {widthDeg === null ? <span class="unit">hears all round</span> : <Figure value={widthDeg.toFixed(0)} unit="° wide" />}
          {widthDeg !== null && <FrontToBack db={frontToBackDb} />}
        </span>
        <span class="antenna-when">{antenna.whenToTake}</span>
      </span>
    </>
  );
}

function FrontToBack({ db }: { readonly db: number }) {
  if (Math.abs(db) < 0.5) return <span class="unit">back as front</span>;
  return <Figure value={db.toFixed(0)} unit="dB front to back" />;
}

const Figure = ({ value, unit }: { readonly value: string; readonly unit: string }) => (
  <span class="antenna-figure">
    <b class="number">{value}</b>
    <span class="unit">{unit.startsWith('°') ? unit : ` ${unit}`}</span>
  </span>
);
