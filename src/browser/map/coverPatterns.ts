import type { Palette } from '../design/palette';

/** What is drawn over a kind of cover, so that it is told by more than its colour. */
export type CoverPatterns = Readonly<Record<'wood' | 'scrub' | 'wet' | 'rock', CanvasPattern>>;

export function coverPatterns(palette: Palette, dpr: number): CoverPatterns {
  const make = (size: number, draw: (context: CanvasRenderingContext2D) => void): CanvasPattern => {
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = Math.round(size * dpr);
    const context = canvas.getContext('2d')!;
    context.scale(canvas.width / size, canvas.height / size);
    draw(context);
    return context.createPattern(canvas, 'repeat')!;
  };
  return {
    wood: make(22, (c) => treeMarks(c, palette['wood-edge'])),
    scrub: make(18, (c) => tufts(c, palette['wood-edge'])),
    wet: make(22, (c) => reeds(c, palette['water-edge'])),
    rock: make(15, (c) => stones(c, palette.ink)),
  };
}

function treeMarks(c: CanvasRenderingContext2D, colour: string): void {
  c.fillStyle = colour;
  c.globalAlpha = 0.34;
  for (const [x, y, r] of [
    [5, 6, 1.5],
    [15.5, 3.5, 1.2],
    [11, 13, 1.6],
    [19, 17, 1.3],
    [3.5, 18, 1.2],
  ] as const) {
    c.beginPath();
    c.arc(x, y, r, 0, 2 * Math.PI);
    c.fill();
  }
}

function tufts(c: CanvasRenderingContext2D, colour: string): void {
  c.strokeStyle = colour;
  c.lineWidth = 0.9;
  c.lineCap = 'round';
  c.globalAlpha = 0.8;
  c.beginPath();
  for (const [x, y] of [
    [4, 6],
    [13, 14],
  ] as const) {
    c.moveTo(x - 2, y - 2);
    c.lineTo(x, y + 1);
    c.lineTo(x + 2, y - 2);
  }
  c.stroke();
}

function reeds(c: CanvasRenderingContext2D, colour: string): void {
  c.strokeStyle = colour;
  c.lineWidth = 1;
  c.globalAlpha = 0.75;
  c.beginPath();
  for (const [x, y, w] of [
    [2, 5, 8],
    [13, 12, 8],
    [3, 18, 6],
  ] as const) {
    c.moveTo(x, y);
    c.lineTo(x + w, y);
  }
  c.stroke();
}

function stones(c: CanvasRenderingContext2D, colour: string): void {
  c.fillStyle = colour;
  c.globalAlpha = 0.42;
  for (const [x, y, r] of [
    [3, 3, 1.1],
    [10, 6, 0.8],
    [6, 11, 1.2],
    [13, 13, 0.7],
  ] as const) {
    c.beginPath();
    c.arc(x, y, r, 0, 2 * Math.PI);
    c.fill();
  }
}
