import type { Preview } from '../../../core/elevation/preview';
import { between, type Palette, rgbOf } from '../../design/palette';
import { reliefShade } from '../../map/reliefShade';
import { shadeImage } from '../../map/shadeImage';

/** Slope that a picture of land shows best, rise over run: flatter land is exaggerated to it. */
const SHOWN_SLOPE = 0.5;
const MOST_EXAGGERATION = 12;
/** How far the highest land goes from the colour of open land to that of contours. */
const HIGHEST_TINT = 0.55;

/** The whole grid as land from above; what has no height is left clear. */
export function paintRelief(canvas: HTMLCanvasElement, preview: Preview, lowM: number, highM: number, palette: Palette): void {
  const { columns, rows, values, cellM } = preview;
  canvas.width = columns;
  canvas.height = rows;
  const context = canvas.getContext('2d')!;
  const land = context.createImageData(columns, rows);
  const spanM = Math.max(1, highM - lowM);
  const tints = Array.from({ length: 64 }, (_, i) =>
    (/\d+,\d+,\d+/.exec(between(palette.open, palette.contour, (HIGHEST_TINT * i) / 63))?.[0].split(',') ?? rgbOf(palette.open)).map(
      Number,
    ),
  );
  const level = values.map((h) => (Number.isNaN(h) ? lowM : h));
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const h = values[row * columns + column]!;
      if (Number.isNaN(h)) continue;
      const at = 4 * ((rows - 1 - row) * columns + column);
      land.data.set(tints[Math.round((63 * (h - lowM)) / spanM)]!, at);
      land.data[at + 3] = 255;
    }
  context.putImageData(land, 0, 0);
  // the shade only where there is land, or holes would have a cliff around them
  context.globalCompositeOperation = 'source-atop';
  context.drawImage(shadeImage(reliefShade({ ...preview, values: level }, exaggerationOf(level, columns, cellM)), palette), 0, 0);
  context.globalCompositeOperation = 'source-over';
}

function exaggerationOf(heightsM: Float32Array, columns: number, cellM: number): number {
  let [sum, count] = [0, 0];
  for (let i = 1; i < heightsM.length; i++) {
    if (i % columns === 0) continue;
    sum += Math.abs(heightsM[i]! - heightsM[i - 1]!);
    count++;
  }
  const steep = sum / Math.max(1, count) / cellM;
  return Math.min(MOST_EXAGGERATION, Math.max(1, SHOWN_SLOPE / Math.max(0.001, 4 * steep)));
}
