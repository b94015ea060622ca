import { fieldOf } from '../../core/desk/field';
import type { Tag } from '../../core/scenario/schema';
import { draft } from './deskState';
import { COVER_WORDS, MOVEMENT_WORDS, VOLTAGE_WORDS } from './deskWords';
import { ChoiceField, FieldFaults, NumberField, SlideField, TickField, WordsField } from './fields';

export const StartFields = () => (
  <div class="desk-form">
    <SlideField path="start.facingDeg" label="Facing" unit="°" most={359} step={1} />
  </div>
);

const WALL_WORDS = { stone: 'Stone', metal: 'Metal' } as const;

export const BuildingFields = ({ path }: { readonly path: string }) => (
  <div class="desk-form">
    <NumberField path={`${path}.lengthM`} label="Length" unit="m" />
    <NumberField path={`${path}.widthM`} label="Width" unit="m" />
    <NumberField path={`${path}.heightM`} label="Height" unit="m" />
    <ChoiceField path={`${path}.walls`} label="Walls of" words={WALL_WORDS} />
    <TickField path={`${path}.climb`} label="Its roof may be climbed" orNone />
    <SlideField path={`${path}.alongDeg`} label="Long side along" unit="°" most={359} step={1} />
  </div>
);

export const LineFields = ({ path }: { readonly path: string }) => (
  <div class="desk-form">
    <ChoiceField path={`${path}.voltage`} label="Voltage" words={VOLTAGE_WORDS} />
    <NumberField path={`${path}.conductors`} label="Wires" unit="" />
    <NumberField path={`${path}.spanM`} label="From support to support" unit="m" />
    <NumberField path={`${path}.supportHeightM`} label="Supports" unit="m high" />
    <NumberField path={`${path}.wireHeightM`} label="Wires hang at" unit="m" />
    <FieldFaults path={`${path}.route`} alone />
  </div>
);

export const PatchFields = ({ path }: { readonly path: string }) => (
  <div class="desk-form">
    <ChoiceField path={`${path}.cover`} label="Covered by" words={COVER_WORDS} />
    <FieldFaults path={`${path}.outline`} alone />
  </div>
);

type Movement = Tag['movement'];
const WANDERS: Exclude<Movement, { readonly kind: 'path' }> = { kind: 'wanders', withinM: 80, speedMPerS: 0.3, restS: 240 };

export function TagFields({
  path,
  onMovement,
}: {
  readonly path: string;
  readonly onMovement: (movement: Exclude<Movement, { readonly kind: 'path' }> | 'path') => void;
}) {
  const { kind } = fieldOf(draft.value!, `${path}.movement`) as Movement;
  return (
    <div class="desk-form">
      <WordsField path={`${path}.name`} label="Name" />
      <NumberField path={`${path}.frequencyMHz`} label="Frequency" unit="MHz" step={0.01} />
      <NumberField path={`${path}.eirpDbm`} label="Strength" unit="dBm" />
      <NumberField path={`${path}.heightM`} label="Above ground" unit="m" step={0.1} />
      <NumberField path={`${path}.pulsesPerMinute`} label="Beeps" unit="a minute" />
      <NumberField path={`${path}.pulseMs`} label="One beep" unit="ms" />
      <SlideField path={`${path}.whip.leanDeg`} label="Whip leans from upright" unit="°" most={90} step={5} />
      <SlideField path={`${path}.whip.towardDeg`} label="Whip points toward" unit="°" most={359} step={1} />
      <ChoiceField
        path={`${path}.movement.kind`}
        label="Movement"
        words={MOVEMENT_WORDS}
        onChoose={(chosen) => onMovement(chosen === 'stays' ? { kind: 'stays' } : chosen === 'path' ? 'path' : WANDERS)}
      />
      {kind === 'wanders' && <NumberField path={`${path}.movement.withinM`} label="Within" unit="m" />}
      {kind !== 'stays' && <NumberField path={`${path}.movement.speedMPerS`} label="Speed" unit="m/s" step={0.1} />}
      {kind === 'wanders' && <NumberField path={`${path}.movement.restS`} label="Rests" unit="s" />}
      {kind === 'path' && <NumberField path={`${path}.movement.pauseS`} label="Pause at each point" unit="s" />}
      <NumberField path={`${path}.driftHzPerHour`} label="Drift" unit="Hz an hour" />
      <NumberField path={`${path}.decayDbPerHour`} label="Weakens by" unit="dB an hour" />
    </div>
  );
}
