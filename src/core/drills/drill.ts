import type { Listener } from '../ear/loudness';
import type { Air } from '../listening/air';
import type { Picture, PictureMark, Spot } from '../listening/picture';
import type { Take } from '../listening/question';
import type { Dial, Settings } from '../listening/settings';
import type { Ladder } from './ladder';

export type DrillUnit = 'dB' | '°' | 'm' | '%' | 'Hz';

/** What the learner gives as an answer, and how it is asked for. */
export type AnswerWay =
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  /** Everything as it is set now; `deed` names the button. */
  | { readonly kind: 'setting'; readonly deed: string }
  /** An amount on a scale on which every doubling has the same room. */
  | { readonly kind: 'amount'; readonly name: string; readonly from: number; readonly to: number; readonly unit: string }
  /** A bearing marked at each of the stations, then a pin on the plan. */
  | { readonly kind: 'pin'; readonly stations: readonly Spot[] };

export type Answer =
  | { readonly kind: 'choice'; readonly choice: number }
  | { readonly kind: 'setting'; readonly settings: Settings }
  | { readonly kind: 'amount'; readonly amount: number }
  | { readonly kind: 'pin'; readonly at: Spot };

/** A bearing that was marked on the way to an answer. */
export type MarkedLine = { readonly from: Spot; readonly bearingDeg: number };

/** How everything stood, and when, seconds since the trial began. */
export type Move = { readonly atS: number; readonly settings: Settings };

/** What came of an answer: `error` is in the drill's unit where the drill measures one, else 0 or 1. */
export type Judged = { readonly right: boolean; readonly error: number; readonly because: string };

/** A named heading on the dial. */
export type NamedHeading = { readonly name: string; readonly deg: number };

/** One drawn situation: what is heard at any setting, how it is answered, and what was so. */
export type Trial = {
  /** How hard this one is, in the drill's unit. */
  readonly level: number;
  readonly ask: string;
  /** What somebody beside you would say; shown while hints last. */
  readonly hint: string;
  readonly start: Settings;
  /** The controls in reach; where there are none the takes are played instead. */
  readonly dials: readonly Dial[];
  readonly takes?: readonly Take[];
  readonly marks?: (settings: Settings) => readonly NamedHeading[];
  /** The ground as a walker knows it: never the tag or its waves. */
  readonly plan?: (settings: Settings, lines: readonly MarkedLine[]) => Picture;
  /** What may be set after what: a knob that must not be touched any more stays. */
  readonly allowed?: (before: Settings, wanted: Settings) => Settings;
  readonly air: (settings: Settings) => Air;
  readonly answer: AnswerWay;
  readonly judge: (answer: Answer, moves: readonly Move[]) => Judged;
  readonly truth: Truth;
};

/** What is looked at and heard again afterwards: the best setting, a sentence, the scene from above. */
export type Truth = { readonly settings: Settings; readonly said: string; readonly picture: Picture };

/** One skill, practised a minute at a time. */
export type Drill = {
  readonly id: string;
  readonly title: string;
  /** What is practised, half a sentence. */
  readonly skill: string;
  readonly unit: DrillUnit;
  /** What the number is, after "dB" and the like. */
  readonly measures: string;
  readonly ladder: Ladder;
  /**
   * `choose`: answers are right or wrong and the number is the level answered right four times in five. `set`: the level is the
   * tolerance asked for and the number is the error that half of the answers stay within.
   */
  readonly kind: 'choose' | 'set';
  /** Chance of being right without listening. */
  readonly guess: number;
  readonly trials: number;
  /** The first time: how it is done, step by step. */
  readonly example: readonly string[];
  readonly draw: (seed: string, level: number, listener: Listener) => Trial;
  /** The number in a sentence, and what to do next. */
  readonly says: (number: number) => string;
  readonly caution?: string;
};

/** A plan round a point, large enough for what lies `reachM` around it. */
export const planAround = (reachM: number, said: string, marks: readonly PictureMark[]): Picture => ({
  view: 'plan',
  from: [-reachM, -reachM],
  to: [reachM, reachM],
  said,
  marks,
});
