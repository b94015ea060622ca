import { crossTheLines } from './crossTheLines';
import type { Drill } from './drill';
import { faintEdge } from './faintEdge';
import { frontOrBack } from './frontOrBack';
import { howFar } from './howFar';
import { louderOrSofter } from './louderOrSofter';
import { onTheNote } from './onTheNote';
import { trueOrBounce } from './trueOrBounce';
import { twoEdgeBearing } from './twoEdgeBearing';
import { whichAxis } from './whichAxis';
import { whichSide } from './whichSide';

/** Every drill, in the order in which they are begun. */
export const DRILLS: readonly Drill[] = [
  frontOrBack,
  faintEdge,
  twoEdgeBearing,
  louderOrSofter,
  whichAxis,
  whichSide,
  howFar,
  onTheNote,
  crossTheLines,
  trueOrBounce,
];

export const drillById = (id: string): Drill | null => DRILLS.find((drill) => drill.id === id) ?? null;
