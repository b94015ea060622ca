import { CoverRules } from './CoverRules';
import { draft, edit, landFault, landMaking } from './deskState';
import { GROUND_CLASS_WORDS, NOISE_WORDS, RELIEF_WORDS } from './deskWords';
import { ChoiceField, FieldFaults, NumberField, SlideField, TickField, WordsField } from './fields';
import { OwnGroundPart } from './OwnGroundPart';

/** The land by its sliders; the map follows. */
export function GroundPanel() {
  const drawn = !draft.value!.ground.own;
  return (
    <div class="desk-form">
      <p class="quiet desk-field-wide" role="status">
        {landFault.value || (landMaking.value ? 'The ground is being made …' : 'The map shows this ground.')}
      </p>
      <OwnGroundPart />
      {drawn && <ReliefFields />}
      <SlideField path="ground.cover.wood" label="Wood" unit="%" most={90} step={1} per={0.01} />
      <SlideField path="ground.cover.scrub" label="Scrub" unit="%" most={60} step={1} per={0.01} />
      <SlideField path="ground.cover.wet" label="Wet ground" unit="%" most={60} step={1} per={0.01} />
      <SlideField path="ground.cover.rock" label="Rock" unit="%" most={40} step={1} per={0.01} />
      <FieldFaults path="ground.cover" alone />
      <CoverRules />
      <SlideField path="ground.water.lakes" label="Lakes" most={6} step={1} />
      <SlideField path="ground.water.streams" label="Streams" most={12} step={1} />
      <SlideField path="ground.tracks" label="Ways" most={8} step={1} />
      <SlideField path="ground.farms" label="Farms" most={8} step={1} />
      <SlideField path="ground.hamlets" label="Hamlets" most={3} step={1} />
      <TickField path="ground.fieldWalls" label="Field walls" />
      {drawn ? <SizeFields /> : <FieldFaults path="ground.own.packed" />}
      <WordsField path="seed" label={drawn ? 'Seed: other words, other land' : 'Seed: other words, other woods and ways'} />
      <button
        type="button"
        class="desk-field-wide"
        onClick={() =>
          edit('take other land', (scenario) => ({ ...scenario, seed: `desk-${crypto.getRandomValues(new Uint32Array(1))[0]}` }))
        }
      >
        {drawn ? 'Other land of the same kind' : 'Other woods and ways of the same kind'}
      </button>
      <ChoiceField path="radio.groundClass" label="Soil" words={GROUND_CLASS_WORDS} />
      <ChoiceField path="radio.noise" label="Noise from outside" words={NOISE_WORDS} />
      <NumberField path="radio.lineNoiseDb" label="Noise of power lines" unit="dB" />
    </div>
  );
}

function ReliefFields() {
  return (
    <>
      <ChoiceField path="ground.relief.style" label="Relief" words={RELIEF_WORDS} />
      <SlideField path="ground.relief.strengthM" label="Height of the relief" unit="m" most={600} step={10} />
      <SlideField path="ground.relief.roughness" label="Roughness" unit="%" most={100} step={5} per={0.01} />
      <SlideField path="ground.relief.baseHeightM" label="Above sea level" unit="m" most={1_500} step={10} />
    </>
  );
}

function SizeFields() {
  return (
    <>
      <SlideField path="ground.sizeM" label="Side of the map" unit="m" least={1_000} most={10_000} step={100} />
      <NumberField path="ground.cellM" label="Cell of the ground" unit="m" />
    </>
  );
}
