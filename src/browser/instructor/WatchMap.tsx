import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { LookButtons } from '../map/LookButtons';
import { type Land, openLand } from '../workers/openLand';
import type { WatchedRun } from './watched';
import { openWatchPicture, type WatchPicture } from './watchPicture';

/** Where the walker is, where the antenna looks, and where the tag is. */
export function WatchMap({ run: { run, scenario } }: { readonly run: WatchedRun }) {
  const frame = useRef<HTMLDivElement>(null);
  const ground = useRef<HTMLCanvasElement>(null);
  const above = useRef<HTMLCanvasElement>(null);
  const picture = useRef<WatchPicture | null>(null);
  const made = useSignal<{ readonly run: string; readonly land: Land } | null>(null);
  const land = made.value?.run === run ? made.value.land : null;
  useEffect(() => {
    let wanted = true;
    void openLand(scenario, () => {}).then(
      (found) => {
        if (wanted) made.value = { run, land: found };
      },
      // Walker and tag on bare paper still tell how far apart they are.
      () => {},
    );
    return () => {
      wanted = false;
    };
  }, [run]);
  useEffect(() => {
    const opened = openWatchPicture({ frame: frame.current!, ground: ground.current!, above: above.current! }, scenario, land);
    picture.current = opened;
    return opened.close;
  }, [run, land]);
  return (
    <section class="watch-map" aria-label="Map with the truth">
      <div class="run-map" ref={frame} role="img" aria-label="The walker, the way so far, the bearings and the tags">
        <canvas key={`${run}${land ? '' : ' without land'}`} ref={ground} />
        <canvas ref={above} />
      </div>
      <LookButtons zoom={(factor) => picture.current?.zoom(factor)} whole={() => picture.current?.whole()} wholeSaid="Walker and tags" />
    </section>
  );
}
