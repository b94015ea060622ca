import { axis } from './axis';
import { backSignal } from './backSignal';
import { bounce } from './bounce';
import { clearView } from './clearView';
import { closeIn } from './closeIn';
import { crossingBearings } from './crossingBearings';
import type { Demonstration } from './demonstration';
import { howFar } from './howFar';
import { onTheNote } from './onTheNote';
import { quietGain } from './quietGain';
import { stepAside } from './stepAside';
import { wires } from './wires';

/** Every demonstration, in the order in which they are taught. */
export const DEMONSTRATIONS: readonly Demonstration[] = [
  backSignal,
  quietGain,
  axis,
  bounce,
  wires,
  stepAside,
  clearView,
  closeIn,
  onTheNote,
  howFar,
  crossingBearings,
];
