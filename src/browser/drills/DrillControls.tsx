import { type Dial, GAIN } from '../../core/listening/settings';
import { Segments } from '../controls/Segments';
import { Slide } from '../controls/Slide';
import { setAmount } from './drillKeys';
import { amount, reachable, set, settings, stage, trial, truthShown } from './drillState';

/** The controls in reach, each with its value; afterwards the gain at least. */
export function DrillControls() {
  const given = trial.value;
  if (!given) return null;
  const dials = given.dials.filter(({ key }) => key !== 'headingDeg' && !(key === 'choice' && given.answer.kind === 'pin'));
  const free = truthShown.value && !reachable('gainDb') ? [GAIN, ...dials] : dials;
  return (
    <div class="drill-controls">
      {free.map((dial) => (
        <OneControl key={dial.key} dial={dial} />
      ))}
      {given.answer.kind === 'amount' && stage.value === 'trial' && <AmountControl />}
    </div>
  );
}

function OneControl({ dial }: { readonly dial: Dial }) {
  const value = settings.value[dial.key];
  const held = dial.key === 'gainDb' && stage.value === 'trial' && Boolean(trial.value?.allowed) && settings.value.walkM !== 0;
  return (
    <div class="drill-control">
      <span class="drill-control-name" aria-hidden="true">
        {dial.name}
        {!dial.choices && (
          <>
            <span class="number drill-control-value">{String(Math.round(value)).replace('-', '−')}</span>
            <span class="unit">{dial.unit}</span>
          </>
        )}
        {held && <span class="quiet drill-held">held while you are across</span>}
      </span>
      {dial.choices ? (
        <Segments
          name={dial.name}
          choices={dial.choices.map((text, i) => ({ value: dial.from + i * dial.step, text }))}
          chosen={value}
          onChoose={(wanted) => set({ [dial.key]: wanted })}
        />
      ) : (
        <Slide
          name={dial.name}
          value={Math.round(value)}
          least={dial.from}
          most={dial.to}
          step={dial.step}
          markEvery={markEvery(dial)}
          said={`${Math.round(value)} ${dial.unit}`}
          onSet={(wanted) => set({ [dial.key]: wanted })}
        />
      )}
    </div>
  );
}

/** In the middle too, where that is a whole number. */
function markEvery({ key, from, to }: Dial): number {
  if (key === 'gainDb') return 30;
  return (to - from) % 2 === 0 ? (to - from) / 2 : to - from;
}

const ROUND_AMOUNTS = [100, 200, 500, 1_000, 2_000, 5_000] as const;

/** Every doubling has the same room: distances are guessed by ratios. */
function AmountControl() {
  const way = trial.value?.answer;
  if (way?.kind !== 'amount') return null;
  const steps = 100;
  const shareOf = (at: number) => Math.round((steps * Math.log(at / way.from)) / Math.log(way.to / way.from));
  return (
    <div class="drill-control drill-amount">
      <span class="drill-control-name" aria-hidden="true">
        {way.name}
        <span class="number drill-control-value">{amount.value}</span>
        <span class="unit">{way.unit}</span>
      </span>
      <Slide
        name={way.name}
        value={shareOf(amount.value)}
        most={steps}
        step={1}
        marks={ROUND_AMOUNTS.filter((at) => at >= way.from && at <= way.to).map((at) => [shareOf(at), String(at)])}
        said={`${amount.value} ${way.unit}`}
        onSet={(wanted) => setAmount(way.from * (way.to / way.from) ** (wanted / steps))}
      />
    </div>
  );
}
