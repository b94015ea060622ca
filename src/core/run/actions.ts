import type { AntennaId } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import type { Deed } from './intervention';

/** Everything a learner can do, and an instructor to his run. Person, walker, replay and test use the same door. */
export type Action =
  | Deed
  /** Point the antenna (mouse, touch, compass). */
  | { readonly type: 'turn'; readonly toDeg: number }
  /** Turn the antenna steadily (keys, stick); 0 stops. */
  | { readonly type: 'spin'; readonly degPerS: number }
  | { readonly type: 'roll'; readonly toDeg: number }
  | { readonly type: 'raise'; readonly raised: boolean }
  | { readonly type: 'setGain'; readonly gainDb: number }
  | { readonly type: 'setAttenuator'; readonly attenuatorDb: number }
  | { readonly type: 'tune'; readonly tunedMHz: number }
  | { readonly type: 'changeAntenna'; readonly antenna: AntennaId }
  /** Walk on a course at a pace; pace 0 stands still. */
  | { readonly type: 'walk'; readonly courseDeg: number; readonly paceMPerS: number }
  /** Get into the vehicle, beside it; or out of it. Aboard, walking is driving along roads and tracks. */
  | { readonly type: 'board' }
  | { readonly type: 'leave' }
  /** Climb what may be climbed here, or come down again. */
  | { readonly type: 'climb' }
  | { readonly type: 'comeDown' }
  /** Walk to a place and stop there. */
  | { readonly type: 'walkTo'; readonly at: MapPoint; readonly paceMPerS: number }
  /** Say where one stands, where the map does not show it. */
  | { readonly type: 'believe'; readonly at: MapPoint }
  /** Write the antenna's heading here into the notebook. */
  | { readonly type: 'mark' }
  | { readonly type: 'strikeOut'; readonly mark: number }
  | { readonly type: 'unstrike'; readonly mark: number }
  | { readonly type: 'guess'; readonly at: MapPoint | null }
  /** Hatch ground where the tag can't be: round a place, or all that is in view from here. How much of it holds is worked out. */
  | { readonly type: 'ruleOut'; readonly around: MapPoint | null }
  | { readonly type: 'takeBack'; readonly ruling: number }
  | { readonly type: 'ruleOutAgain'; readonly ruling: number }
  /** A press on a beep: the tag's rate is counted. */
  | { readonly type: 'beat' }
  /** Where one would start the search afresh, chosen from the fix; judged in the debrief, moves nobody. */
  | { readonly type: 'chooseStart'; readonly at: MapPoint | null }
  /** "The tag is here." */
  | { readonly type: 'declare' }
  /** "The tag is where the fix from my bearings says." */
  | { readonly type: 'declareFix' }
  | { readonly type: 'giveUp' };

/** An action and the tick at which it was done. */
export type Entry = { readonly tick: number; readonly action: Action };
