import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Debriefing } from '../../../core/debrief/debriefing';
import type { OpenRun } from '../../currentRun';
import { LookButtons } from '../../map/LookButtons';
import { LayerPanel } from './LayerPanel';
import { layersOpen } from './layers';
import { LayerKey, TrackKey } from './MapKey';
import { type MapPicture, openMapPicture } from './mapPicture';

/** The land with the walk on it, and whatever of the truth is asked for. */
export function DebriefMap({
  open,
  debriefing,
  steady,
}: {
  readonly open: OpenRun;
  readonly debriefing: Debriefing;
  readonly steady: Debriefing | null;
}) {
  const frame = useRef<HTMLDivElement>(null);
  const ground = useRef<HTMLCanvasElement>(null);
  const above = useRef<HTMLCanvasElement>(null);
  const picture = useRef<MapPicture | null>(null);
  const steadyNow = useRef(steady);
  steadyNow.current = steady;
  const kinds = useMemo(() => new Set(debriefing.track.map(({ kind }) => kind)), [debriefing]);
  useEffect(() => {
    const elements = { frame: frame.current!, ground: ground.current!, above: above.current! };
    picture.current = openMapPicture(elements, open, debriefing, () => steadyNow.current);
    return picture.current.close;
  }, [open, debriefing]);
  useEffect(() => picture.current?.repaint(), [steady]);
  return (
    <div class="debrief-map-frame">
      <div class="run-map" ref={frame} role="img" aria-label={saidMap(debriefing)}>
        <canvas ref={ground} />
        <canvas ref={above} />
      </div>
      <LookButtons zoom={(factor) => picture.current?.zoom(factor)} whole={() => picture.current?.whole()} wholeSaid="The whole walk">
        <button
          type="button"
          class="map-button map-layers"
          aria-expanded={layersOpen.value}
          title="Layers (L)"
          onClick={() => {
            layersOpen.value = !layersOpen.value;
          }}
        >
          Layers
        </button>
      </LookButtons>
      {layersOpen.value && <LayerPanel hasSteady={steady !== null} />}
      <div class="map-keys">
        <LayerKey scenario={open.exercise.scenario} poses={debriefing.poses} />
        <TrackKey kinds={kinds} />
      </div>
    </div>
  );
}

function saidMap({ bearings, shares }: Debriefing): string {
  const share = (part: number) => `${Math.round(100 * part)} %`;
  return `Map with your track, ${bearings.length} bearings and the tag. Of the beeps ${share(shares.quiet)} came at quiet gain, ${share(shares.loud)} louder, ${share(shares['flat-out'])} flat out or near it, ${share(shares.silent)} too low to hear.`;
}
