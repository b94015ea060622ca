import { useMemo } from 'preact/hooks';
import { hearMomentAgain } from '../../core/listening/momentHeard';
import type { HabitId, Moment } from '../../core/technique/habit';
import { live, openRun } from '../currentRun';

/** Leads from a moment of the run to the demonstration that lets it be heard again, set as it was. */
export function HearAgain({ habit, moment }: { readonly habit: HabitId; readonly moment: Moment }) {
  const again = useMemo(() => {
    const [open, run] = [openRun.peek(), live.peek()];
    return open && run ? hearMomentAgain(open.exercise, run, habit, moment) : null;
  }, [habit, moment]);
  if (!again) return null;
  return (
    <a class="hear-again" href={again.address} target="_blank" rel="noopener">
      Hear this again: {again.title}
    </a>
  );
}
