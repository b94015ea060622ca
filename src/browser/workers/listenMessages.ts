import type { HeardHere, HearSetting } from '../../core/desk/hearHere';
import type { Scenario } from '../../core/scenario/schema';
import type { MapPoint } from '../../core/units/frames';
import type { World } from '../../core/world/world';

export type ToListen =
  | { readonly kind: 'open'; readonly scenario: Scenario; readonly world: World }
  | { readonly kind: 'hear'; readonly at: MapPoint; readonly setting: HearSetting };

export type FromListen = { readonly heard: HeardHere };
