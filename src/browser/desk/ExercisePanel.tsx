import { CAUTION_NAMES } from './deskWords';
import { ChoiceField, FieldFaults, NumberField, SlideField, TickList, WordsField } from './fields';
import { StagesFields } from './StagesFields';
import { TaskFields } from './TaskFields';

/** What the exercise is called, what it is to teach, how long it may take. */
export function ExercisePanel({ lessons }: { readonly lessons: Readonly<Record<string, string>> }) {
  return (
    <div class="desk-form">
      <FieldFaults path="" />
      <WordsField path="title" label="Title" />
      <WordsField path="brief" label="Brief" long />
      <WordsField path="author" label="Made by" />
      <ChoiceField path="lesson" label="Lesson" words={lessons} />
      <SlideField path="level" label="Level" least={1} most={5} step={1} />
      <TaskFields />
      <StagesFields />
      <SlideField path="limits.timeS" label="Time at most" unit="min" least={5} most={240} step={5} per={60} />
      <NumberField path="limits.walkM" label="Walk at most" unit="m" step={100} optional />
      <NumberField path="limits.findWithinM" label="A find counts within" unit="m" />
      <NumberField path="limits.paceMPerS" label="Pace at most" unit="m/s" step={0.1} />
      <NumberField path="parS" label="Par, steady walker" unit="s" optional />
      <TickList path="cautions" label="Cautions" words={CAUTION_NAMES} />
    </div>
  );
}
