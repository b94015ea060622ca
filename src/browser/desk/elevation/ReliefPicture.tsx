import { useEffect, useRef } from 'preact/hooks';
import { heightM, widthM } from '../../../core/elevation/window';
import { currentPalette } from '../../design/palette';
import { settings } from '../../storage/settings';
import type { GridSaid } from '../../workers/elevationMessages';
import { piece, placePiece } from './elevationState';
import { paintRelief } from './paintRelief';

const STEP_M = 100;
const LONG_STEP_M = 1_000;
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};
const km = (m: number): string => (m / 1_000).toFixed(1);

/** The relief of a whole file with the square that is taken of it; dragged, or moved by the arrows. */
export function ReliefPicture({ said, name }: { readonly said: GridSaid; readonly name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { palette } = settings.value;
  useEffect(() => paintRelief(canvas.current!, said.preview, said.lowM, said.highM, currentPalette()), [said, palette]);
  /** Where in the piece it was taken hold of, metres. */
  const held = useRef({ eastM: 0, northM: 0 });
  const [wide, high] = [widthM(said.extent), heightM(said.extent)];
  const { eastM, northM, sizeM } = piece.value;
  const under = (event: PointerEvent) => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    return {
      eastM: ((event.clientX - box.left) / box.width) * wide,
      northM: ((box.bottom - event.clientY) / box.height) * high,
    };
  };
  return (
    <div
      class="own-relief"
      role="application"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the piece is moved by keys here
      tabIndex={0}
      aria-label={`Relief of ${name}, with a piece of ${km(sizeM)} km a side, ${km(eastM)} km east and ${km(northM)} km north of its south-west corner. Arrows move it, with Shift farther.`}
      style={{ aspectRatio: `${wide} / ${high}`, '--longer': String(Math.min(1, wide / high)) }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        const at = under(event);
        const [e, n] = [at.eastM - eastM, at.northM - northM];
        const inside = e >= 0 && n >= 0 && e <= sizeM && n <= sizeM;
        held.current = inside ? { eastM: e, northM: n } : { eastM: sizeM / 2, northM: sizeM / 2 };
        if (!inside) placePiece({ eastM: at.eastM - sizeM / 2, northM: at.northM - sizeM / 2 });
      }}
      onPointerMove={(event) => {
        if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
        const at = under(event);
        placePiece({ eastM: at.eastM - held.current.eastM, northM: at.northM - held.current.northM });
      }}
      onKeyDown={(event) => {
        const way = WAYS[event.key];
        if (!way || event.ctrlKey || event.metaKey || event.altKey) return;
        const m = event.shiftKey ? LONG_STEP_M : STEP_M;
        placePiece({ eastM: eastM + way[0] * m, northM: northM + way[1] * m });
        event.preventDefault();
      }}
    >
      <canvas ref={canvas} />
      <div
        class="own-piece"
        style={{
          left: `${(100 * eastM) / wide}%`,
          bottom: `${(100 * northM) / high}%`,
          width: `${(100 * sizeM) / wide}%`,
          height: `${(100 * sizeM) / high}%`,
        }}
      />
    </div>
  );
}
