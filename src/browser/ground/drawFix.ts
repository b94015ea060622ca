import type Phaser from 'phaser';
import { UNMEASURED_SD_DEG } from '../../core/fix/estimate';
import type { Fix, FoundFix } from '../../core/fix/fix';
import type { Mark } from '../../core/run/state';
import { type MapPoint, stepAlong } from '../../core/units/frames';
import { type Palette, rgbOf } from '../design/palette';
import type { ScreenPoint, View } from '../map/screenFrame';

const SPREAD_LENGTH_M = 4_000;
const AROUND = 48;

const colour = (hex: string): number => {
  const [red, green, blue] = rgbOf(hex);
  return (red << 16) | (green << 8) | blue;
};

type ToScreen = (point: MapPoint) => ScreenPoint;

/** Each bearing that stands within the wedge of its own spread, and the area that they leave together. */
export function drawFix(
  g: Phaser.GameObjects.Graphics,
  fix: Fix,
  notebook: readonly Mark[],
  at: ToScreen,
  view: View,
  palette: Palette,
): void {
  for (const mark of notebook) if (!mark.struckOut) drawSpread(g, mark, at, palette);
  if (!fix.ok) return;
  drawArea(g, fix, at, view, palette);
  const { x, y } = at({ eM: fix.x, nM: fix.y });
  for (const [width, hex] of [
    [5, palette.paper],
    [2, palette.ink],
  ] as const) {
    g.lineStyle(width, colour(hex), 1);
    g.lineBetween(x - 8, y, x + 8, y);
    g.lineBetween(x, y - 8, x, y + 8);
  }
}

function drawSpread(g: Phaser.GameObjects.Graphics, { at: from, bearingDeg }: Mark, at: ToScreen, palette: Palette): void {
  const tip = at(from);
  const sides = [-UNMEASURED_SD_DEG, UNMEASURED_SD_DEG].map((off) => at(stepAlong(from, bearingDeg + off, SPREAD_LENGTH_M)));
  g.fillStyle(colour(palette.ink), 0.1);
  g.fillTriangle(tip.x, tip.y, sides[0]!.x, sides[0]!.y, sides[1]!.x, sides[1]!.y);
}

function drawArea(g: Phaser.GameObjects.Graphics, { x, y, learnerEllipse }: FoundFix, at: ToScreen, view: View, palette: Palette): void {
  if (!learnerEllipse) return;
  const { semiMajorM, semiMinorM, majorAxisBearingDeg } = learnerEllipse;
  const centre = { eM: x, nM: y };
  const rim = Array.from({ length: AROUND }, (_, i) => {
    const turn = (2 * Math.PI * i) / AROUND;
    // A tiny area is still to be seen.
    const alongM = Math.max(semiMajorM, 5 / view.pxPerM) * Math.cos(turn);
    const acrossM = Math.max(semiMinorM, 4 / view.pxPerM) * Math.sin(turn);
    return at(stepAlong(stepAlong(centre, majorAxisBearingDeg, alongM), majorAxisBearingDeg + 90, acrossM));
  });
  trace(g, rim);
  g.fillStyle(colour(palette.paper), 0.35).fillPath();
  for (const [width, hex] of [
    [5, palette.paper],
    [2, palette.ink],
  ] as const) {
    g.lineStyle(width, colour(hex), 1);
    trace(g, rim);
    g.strokePath();
  }
}

function trace(g: Phaser.GameObjects.Graphics, rim: readonly ScreenPoint[]): void {
  g.beginPath();
  rim.forEach(({ x, y }, i) => {
    if (i === 0) g.moveTo(x, y);
    else g.lineTo(x, y);
  });
  g.closePath();
}

/** The start that was chosen: a square, as nothing else on the map is. */
export function drawStart(g: Phaser.GameObjects.Graphics, { x, y }: ScreenPoint, palette: Palette): void {
  g.fillStyle(colour(palette.paper), 1).fillRect(x - 8, y - 8, 16, 16);
  g.lineStyle(2.2, colour(palette.ink), 1).strokeRect(x - 8, y - 8, 16, 16);
  g.fillStyle(colour(palette.ink), 1).fillCircle(x, y, 2.6);
}
