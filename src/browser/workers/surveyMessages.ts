import type { SurveyKind, SurveySetting } from '../../core/debrief/survey';
import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';

/** `sight` is 1 where the tag is in line of sight over the ground, 0 elsewhere. */
export type LayerKind = SurveyKind | 'sight';

export type ToSurvey =
  | { readonly kind: 'open'; readonly scenario: Scenario; readonly world: World }
  /** A new question ends the one before. */
  | { readonly kind: 'survey'; readonly ask: number; readonly what: LayerKind; readonly side: number; readonly setting: SurveySetting };

/** The map by one quantity so far: row-major from the south-west; NaN where it is not defined or not known yet. */
export type FromSurvey = {
  readonly ask: number;
  readonly values: Float32Array;
  readonly share: number;
  /** Why no more will come; asking again begins anew. */
  readonly fault?: string;
};
