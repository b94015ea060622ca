import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Debriefing } from '../../core/debrief/debriefing';
import type { RunResult } from '../../core/run/record';

import { openRun } from '../currentRun';
import { type CardedRun, debriefed, debriefOpenRun, finishedRun, rateRun } from '../finishedRun';
import { UnkeptNote } from '../KeepNote';
import type { SoundOutput } from '../sound/output';
import { SelfRating } from './SelfRating';
import { Verdict } from './Verdict';

export type Doors = {
  readonly runFileText: (result: RunResult) => string;
  /** Opens the loudspeaker, from within a gesture. */
  readonly openSound: () => void;
  readonly sound: ReadonlySignal<SoundOutput | null>;
  /** The grade is known: the run goes into the logbook. @returns the name of its entry; `null` for somebody else's run */
  readonly onGraded: (grade: Debriefing['grade']) => string | null;
  /** Draws a score card as a code. */
  readonly ScoreCode: ComponentType<CardedRun>;
  readonly onAgain: () => void;
  readonly onOther: () => void;
};

/** First one's own rating, then the grade and what the waves really did. */
export function Debrief(doors: Doors) {
  const fault = useSignal<string | null>(null);
  useEffect(() => {
    debriefOpenRun().catch((failed: Error) => {
      fault.value = failed.message;
    });
  }, []);
  if (finishedRun.value!.ratings === null)
    return (
      <>
        <UnkeptNote onSave={null} />
        <SelfRating onDone={rateRun} />
      </>
    );
  if (!debriefed.value) {
    return (
      <main class="opening">
        <p role="status">{fault.value ?? 'Going through the run …'}</p>
      </main>
    );
  }
  return <Verdict {...doors} open={openRun.value!} about={finishedRun.value!} debriefing={debriefed.value} />;
}
