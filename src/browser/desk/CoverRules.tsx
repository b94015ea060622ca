import { withField } from '../../core/desk/field';
import type { CoverRule } from '../../core/scenario/schema';
import { draft, edit } from './deskState';
import { COVER_WORDS } from './deskWords';
import { ChoiceField, FieldFaults, NumberField } from './fields';

/** As many as the format holds. */
const MOST_RULES = 8;
/** What is told by its first rule: woods stand where nobody mows. */
const FIRST: CoverRule = { cover: 'wood', steeperPercent: 20, flatterPercent: 60 };

/** Cover by height and slope, over what the sliders drew. */
export function CoverRules() {
  const rules = draft.value!.ground.coverRules ?? [];
  const laid = (next: readonly CoverRule[], deed: string) =>
    edit(deed, (scenario) => withField(scenario, 'ground.coverRules', next.length > 0 ? next : undefined));
  return (
    <section class="desk-own desk-field-wide" aria-label="Cover by height and slope">
      {rules.map((_, i) => (
        <fieldset key={i} class="desk-form desk-rule">
          <legend>Rule {i + 1}</legend>
          <ChoiceField path={`ground.coverRules.${i}.cover`} label="Covered by" words={COVER_WORDS} />
          <button
            type="button"
            onClick={() =>
              laid(
                rules.filter((_rule, j) => j !== i),
                `remove rule ${i + 1}`,
              )
            }
          >
            Remove rule {i + 1}
          </button>
          <NumberField path={`ground.coverRules.${i}.aboveM`} label="From" unit="m above sea" optional />
          <NumberField path={`ground.coverRules.${i}.belowM`} label="Up to" unit="m above sea" optional />
          <NumberField path={`ground.coverRules.${i}.steeperPercent`} label="Slope from" unit="%" optional />
          <NumberField path={`ground.coverRules.${i}.flatterPercent`} label="Slope up to" unit="%" optional />
          <FieldFaults path={`ground.coverRules.${i}`} alone />
        </fieldset>
      ))}
      <div class="desk-deeds">
        <button type="button" disabled={rules.length >= MOST_RULES} onClick={() => laid([...rules, FIRST], 'add a rule')}>
          {rules.length === 0 ? 'Cover by height and slope …' : 'One more rule'}
        </button>
      </div>
      {rules.length > 0 && (
        <p class="quiet">Each rule lies over the ones before, and patches set on the map over all of them. A slope of 100 % is 45°.</p>
      )}
    </section>
  );
}
