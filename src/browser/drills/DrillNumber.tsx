import type { Drill } from '../../core/drills/drill';
import { numberText } from '../../core/drills/session';

/** A drill's number with its unit; the degree sign stands close to it. */
export function DrillNumber({ drill, number }: { readonly drill: Drill; readonly number: number }) {
  const close = drill.unit === '°';
  return (
    <>
      <span class="number">{numberText(drill, number)}</span>
      {!close && ' '}
      <span class={close ? 'degree' : 'unit'}>{drill.unit}</span>
    </>
  );
}
