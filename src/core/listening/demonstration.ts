import type { Air, Heard } from './air';
import type { Chart } from './chart';
import type { Picture } from './picture';
import type { Question } from './question';
import type { Dial, Settings } from './settings';

/** What a demonstration sounds like at its present settings, all of it computed. */
export type Listened = {
  readonly air: Air;
  readonly settings: Settings;
  /** The antenna as it points now. */
  readonly now: Heard;
  /** As heard at every RING_STEP_DEG of heading, from 0. */
  readonly ring: readonly Heard[];
};

/** A piece of a sentence; strong pieces are what the room should take home. */
export type Piece = string | { readonly strong: string };

/** One of the two ways to hear it: what it is called and what it sets. */
export type Way = { readonly name: string; readonly sets: Partial<Settings> };

/** One phenomenon as a live instrument: numbers and words, no drawing. */
export type Demonstration = {
  /** Part of the address. */
  readonly id: string;
  readonly title: string;
  /** The scene in half a sentence. */
  readonly scene: string;
  readonly listenFor: string;
  readonly start: Settings;
  /** Controls beside heading and gain: one or two. */
  readonly dials: readonly Dial[];
  readonly air: (settings: Settings) => Air;
  /** What is so at these settings, in a sentence. */
  readonly says: (listened: Listened) => readonly Piece[];
  readonly ways: readonly [Way, Way];
  readonly picture: (listened: Listened) => Picture;
  readonly chart: (listened: Listened) => Chart;
  /** What the chart will ask for, in pieces that keep a slow machine no longer than a beep: a room works them out before it draws. */
  readonly ahead?: (settings: Settings) => readonly (() => unknown)[];
  /** For the instructor alone. */
  readonly talkingPoints: readonly string[];
  /** Gains of the four rings on the handout, dB. */
  readonly handoutGainsDb: readonly [number, number, number, number];
  /** Three questions by ear; settings are drawn, answers are worked out from what would be heard. */
  readonly questions: (random: () => number) => readonly Question[];
  /** What to mind outdoors in places like this one. */
  readonly caution?: string;
};
