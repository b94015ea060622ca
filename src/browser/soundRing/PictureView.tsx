import type { Picture, PictureMark, Spot } from '../../core/listening/picture';

const SIZE = 300;
const HEIGHT = 250;

/** Where on a plan a point of its drawing lies, pixels from the drawing's corner. The plan is as large as the drawing holds it whole, in its middle. */
export function spotAt({ from, to }: Picture, box: { readonly width: number; readonly height: number }, [x, y]: Spot): Spot {
  const perUnit = Math.max((to[0] - from[0]) / SIZE, (to[1] - from[1]) / HEIGHT);
  const perPx = perUnit * Math.max(SIZE / box.width, HEIGHT / box.height);
  return [(from[0] + to[0]) / 2 + (x - box.width / 2) * perPx, (from[1] + to[1]) / 2 - (y - box.height / 2) * perPx];
}

/** A small plan or section of the scene: you in ink, what is heard in the sound's colour, waves dashed in the truth's. */
export function PictureView({ picture }: { readonly picture: Picture }) {
  const [fromX, fromY] = picture.from;
  const [toX, toY] = picture.to;
  const plain = Math.min(SIZE / (toX - fromX), HEIGHT / (toY - fromY));
  // A plan keeps its shape; a section may be drawn out in height, as sections are.
  const scaleX = picture.view === 'plan' ? plain : SIZE / (toX - fromX);
  const scaleY = picture.view === 'plan' ? plain : HEIGHT / (toY - fromY);
  const left = (SIZE - (toX - fromX) * scaleX) / 2;
  const top = (HEIGHT - (toY - fromY) * scaleY) / 2;
  const put = ([x, y]: Spot): Spot => [left + (x - fromX) * scaleX, HEIGHT - top - (y - fromY) * scaleY];
  const path = (points: readonly Spot[]) =>
    points
      .map((point) =>
        put(point)
          .map((v) => v.toFixed(1))
          .join(' '),
      )
      .join('L');
  return (
    <figure class="picture">
      <figcaption class="chart-name">{picture.name ?? (picture.view === 'plan' ? 'From above' : 'From the side')}</figcaption>
      <svg viewBox={`0 0 ${SIZE} ${HEIGHT}`} role="img" aria-label={picture.said}>
        {picture.ground && <path class="picture-ground" d={`M${path(picture.ground)}L${SIZE} ${HEIGHT}L0 ${HEIGHT}Z`} />}
        {picture.marks.map((mark, i) => (
          <Mark key={`${mark.kind}/${i}`} mark={mark} put={put} path={path} />
        ))}
      </svg>
    </figure>
  );
}

type Drawn = { readonly mark: PictureMark; readonly put: (spot: Spot) => Spot; readonly path: (points: readonly Spot[]) => string };

function Mark({ mark, put, path }: Drawn) {
  switch (mark.kind) {
    case 'you': {
      const [x, y] = put(mark.at);
      return <circle class={mark.now ? 'picture-you' : 'picture-was'} cx={x} cy={y} r="6.500" />;
    }
    case 'tag': {
      const [x, y] = put(mark.at);
      return (
        <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`} class="picture-tag">
          <circle r="4.500" />
          <path d={`M0 0V${mark.leanDeg === undefined ? -17 : -58}`} transform={`rotate(${mark.leanDeg ?? 0})`} />
        </g>
      );
    }
    case 'rods': {
      const [x, y] = put(mark.at);
      return (
        <g class="picture-rods" transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${mark.leanDeg})`}>
          <path d="M0 -46V46" />
        </g>
      );
    }
    case 'wave':
      return (
        <g class={`picture-wave picture-wave-${mark.wave}`} style={{ opacity: String(0.35 + 0.65 * mark.strength) }}>
          <path d={`M${path(mark.points)}`} class="picture-wave-way" style={{ strokeWidth: String(1.4 + 1.6 * mark.strength) }} />
          <Head from={put(mark.points.at(-2)!)} to={put(mark.points.at(-1)!)} />
        </g>
      );
    case 'bearing':
      return <path class={mark.back ? 'picture-bearing picture-bearing-back' : 'picture-bearing'} d={`M${path([mark.from, mark.to])}`} />;
    case 'outline':
      return <path class={`picture-${mark.land}`} d={`M${path(mark.points)}Z`} />;
    case 'edge':
      return <path class="picture-edge" d={`M${path(mark.points)}`} />;
    case 'wires':
      return (
        <g class="picture-wires">
          <path d={`M${path(mark.points)}`} />
          {mark.poles.map((pole) => {
            const [x, y] = put(pole);
            return <path key={`${x}/${y}`} class="picture-pole" d={`M${x - 4} ${y - 4}l8 8M${x + 4} ${y - 4}l-8 8`} />;
          })}
        </g>
      );
    case 'words': {
      const [x, y] = put(mark.at);
      return (
        <text class="picture-words" x={x} y={y}>
          {mark.text}
        </text>
      );
    }
  }
}

/** Arrowhead two thirds along the last stretch, clear of whoever stands at its end. */
function Head({ from, to }: { readonly from: Spot; readonly to: Spot }) {
  const [x, y] = [from[0] + (to[0] - from[0]) * 0.62, from[1] + (to[1] - from[1]) * 0.62];
  const deg = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return (
    <path
      class="picture-wave-head"
      transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${deg.toFixed(1)})`}
      d="M7 0L-5 -5.500V5.500Z"
    />
  );
}
