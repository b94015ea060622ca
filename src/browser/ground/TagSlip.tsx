import { computed } from '@preact/signals';
import { CLEAREST_NOTE_HZ, pitchHz } from '../../core/receiver/tuning';
import { namedTag, taskOf } from '../../core/run/task';
import type { Tag } from '../../core/scenario/schema';
import { CloseMark } from '../controls/marks';
import { act, controlsNow, openRun } from '../currentRun';
import { briefShown, notebookShown, tagsShown } from './panels';
import { checkWanted, TagCheckList } from './TagCheckList';

const tags = computed(() => openRun.value?.exercise.scenario.tags ?? []);

/** The tag whose printed frequency the dial is nearest to. */
const nearest = computed<Tag | null>(() => {
  const tunedMHz = controlsNow.value?.tunedMHz ?? 0;
  const offHz = ({ frequencyMHz }: Tag) => Math.abs(pitchHz(frequencyMHz, tunedMHz) - CLEAREST_NOTE_HZ);
  return [...tags.value].sort((a, b) => offHz(a) - offHz(b))[0] ?? null;
});

/**
 * Near a tag: the dial stands 1.5 to 2.5 kHz under the printed frequency. The note is in the passband, but not clear: that is left to
 * the hand, and a tag drifts.
 */
const nearMHz = ({ frequencyMHz }: Tag): number => (Math.floor(frequencyMHz * 1_000 + 1e-6) - 1.5) / 1_000;

export function toggleTags(): void {
  tagsShown.value = !tagsShown.peek();
  if (tagsShown.peek()) [briefShown.value, notebookShown.value] = [false, false];
}

export function TagButton() {
  return (
    <button type="button" class="tag-button" aria-expanded={tagsShown.value} title="N" onClick={toggleTags}>
      {checkWanted.value ? 'Tag check' : tags.value.length === 1 ? 'Tag' : `Tags ${tags.value.length}`}
    </button>
  );
}

/** The tags as they are written down before leaving: name, frequency, beeps a minute. The dial does the rest. */
export function TagList() {
  const scenario = openRun.value?.exercise.scenario;
  const named = scenario && scenario.tags.length > 1 ? namedTag(taskOf(scenario)) : null;
  return (
    <ul class="tag-list">
      {tags.value.map((tag, i) => (
        <li key={tag.name} class="tag-line" aria-current={tag === nearest.value ? 'true' : undefined}>
          <span class="tag-name">
            {tag.name} {i === named && <span class="tag-asked">asked for</span>}
          </span>
          <span class="number tag-mhz">
            {tag.frequencyMHz.toFixed(4)}
            <span class="unit"> MHz</span>
          </span>
          <span class="quiet tag-rate">{Math.round(tag.pulsesPerMinute)} a min</span>
          <button type="button" aria-label={`Tune near ${tag.name}`} onClick={() => act({ type: 'tune', tunedMHz: nearMHz(tag) })}>
            Tune near
          </button>
        </li>
      ))}
    </ul>
  );
}

export function TagSlip() {
  if (!tagsShown.value) return null;
  return (
    <aside class="slip" aria-label="Tags">
      <button
        type="button"
        class="plain slip-close"
        aria-label="Put the tags away"
        onClick={() => {
          tagsShown.value = false;
        }}
      >
        <CloseMark />
      </button>
      <h2>{tags.value.length === 1 ? 'Tag' : 'Tags'}</h2>
      <TagList />
      <TagCheckList />
    </aside>
  );
}
