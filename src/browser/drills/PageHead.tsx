import type { ComponentChildren } from 'preact';
import { MinusMark, MutedMark, PlusMark, SpeakerMark } from '../controls/marks';
import { SoundLossLine } from '../sound/SoundLossLine';
import { change, settings, stepVolume } from '../storage/settings';

/** Name of the page, what it holds, the volume and the way out. */
export function PageHead({
  title,
  children,
  out,
  onLeave,
}: {
  readonly title: string;
  readonly children?: ComponentChildren;
  readonly out: string;
  readonly onLeave: () => void;
}) {
  const { volumeDb, muted } = settings.value;
  return (
    <header class="drill-head">
      <h1>{title}</h1>
      <div class="drill-head-middle">
        {children}
        <SoundLossLine />
      </div>
      <div class="drill-volume">
        <button type="button" class="plain" aria-label="Softer" onClick={() => stepVolume(-1)}>
          <MinusMark />
        </button>
        <button
          type="button"
          class="plain"
          aria-label={muted ? 'Sound is off' : `Volume ${volumeDb} dB`}
          aria-pressed={muted}
          onClick={() => change({ muted: !muted })}
        >
          {muted ? <MutedMark /> : <SpeakerMark />}
        </button>
        <button type="button" class="plain" aria-label="Louder" onClick={() => stepVolume(1)}>
          <PlusMark />
        </button>
      </div>
      <button type="button" class="drill-out" onClick={onLeave}>
        {out}
      </button>
    </header>
  );
}
