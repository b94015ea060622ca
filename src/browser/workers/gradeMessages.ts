import type { Live } from '../../core/run/live';
import type { Scenario } from '../../core/scenario/schema';
import type { Grade } from '../../core/technique/grade';
import type { World } from '../../core/world/world';
import type { RunColumns } from '../debrief/runColumns';

export type ToGrade = { readonly scenario: Scenario; readonly world: World; readonly live: Live };
export type Graded = { readonly grade: Omit<Grade, 'replayMatches'>; readonly columns: RunColumns };
