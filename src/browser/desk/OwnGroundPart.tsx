import { onDrawnGround } from '../../core/elevation/ownGround';
import { laterRoom, PartMissing } from '../laterRoom';
import { draft, edit } from './deskState';
import { bringing } from './elevation/elevationState';
import { WordsField } from './fields';

const OwnGround = laterRoom(async () => (await import('./elevation/OwnGround')).OwnGround, PartMissing);

/** Land under this may be sea, metres above sea level. */
const SEA_UNDER_M = 1;

/** The ground's own heights, where it has any, and the way to bring them in. */
export function OwnGroundPart() {
  const { own, relief } = draft.value!.ground;
  return (
    <section class="desk-own desk-field-wide" aria-label="Own ground">
      {own && (
        <>
          <p>The heights are those of a file.</p>
          <WordsField path="ground.own.source" label="Where they come from, and on what terms they may be handed on" />
          {own.lowM < SEA_UNDER_M && (
            <label class="desk-tick">
              <input
                type="checkbox"
                checked={relief.style === 'coast'}
                onChange={({ currentTarget: { checked } }) =>
                  edit('change where the sea is', (scenario) => ({
                    ...scenario,
                    ground: { ...scenario.ground, relief: { ...scenario.ground.relief, style: checked ? 'coast' : 'smooth' } },
                  }))
                }
              />
              What lies at 0 m or below is sea
            </label>
          )}
        </>
      )}
      <div class="desk-deeds">
        <button
          type="button"
          aria-expanded={bringing.value}
          onClick={() => {
            bringing.value = !bringing.value;
          }}
        >
          {own ? 'Another piece or file …' : 'Own ground from a file …'}
        </button>
        {own && (
          <button type="button" onClick={() => edit('go back to invented ground', onDrawnGround)}>
            Back to invented ground
          </button>
        )}
      </div>
      {bringing.value && <OwnGround />}
    </section>
  );
}
