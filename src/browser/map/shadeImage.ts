import { type Palette, rgbOf } from '../design/palette';
import type { Shade } from './reliefShade';

/** The shade as a transparent picture over the land colours: dark in the shadows, pale on the lit slopes. */
export function shadeImage(shade: Shade, palette: Palette): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = shade.columns;
  canvas.height = shade.rows;
  const context = canvas.getContext('2d')!;
  const image = context.createImageData(shade.columns, shade.rows);
  const [dark, light] = [rgbOf(palette['shade-dark']), rgbOf(palette['shade-light'])];
  const pixels = image.data;
  for (let at = 0; at < shade.values.length; at++) {
    const lit = shade.values[at]! - 128;
    const [red, green, blue] = lit < 0 ? dark : light;
    pixels[4 * at] = red;
    pixels[4 * at + 1] = green;
    pixels[4 * at + 2] = blue;
    pixels[4 * at + 3] = lit < 0 ? Math.min(150, -lit * 1.15) : Math.min(190, lit * 3.2);
  }
  context.putImageData(image, 0, 0);
  return canvas;
}
