import type Phaser from 'phaser';
import type { Fix } from '../../core/fix/fix';
import type { HatchGrid } from '../../core/run/ruleOut';
import type { Hold, Mark } from '../../core/run/state';
import { type MapPoint, stepAlong } from '../../core/units/frames';
import { type Palette, rgbOf } from '../design/palette';
import { hatchLines } from '../map/hatchLines';
import { type ScreenPoint, type SizePx, screenStep, toScreen, type View } from '../map/screenFrame';
import { antennaStrokes } from './antennaShape';
import { drawFix, drawStart } from './drawFix';

/** What lies on the map and moves: nothing of it says where the tag is. */
export type OnMap = {
  readonly walker: MapPoint | null;
  /** Where the vehicle stands; `null` without one, aboard, and where the map shows nobody. */
  readonly vehicle: MapPoint | null;
  /** Where the walker says to be, where the map does not show him. */
  readonly believed: MapPoint | null;
  readonly hold: Hold;
  readonly goal: MapPoint | null;
  readonly track: readonly MapPoint[];
  readonly notebook: readonly Mark[];
  readonly guess: MapPoint | null;
  /** Ground that is ruled out. */
  readonly hatch: HatchGrid | null;
  /** The fix that was asked for; `null` where none was. */
  readonly fix: Fix | null;
  readonly start: MapPoint | null;
  /** The next tap sets a pin or a start: the window's middle is marked for those who set it by key. */
  readonly placing: boolean;
  readonly bearingLengthM: number;
  readonly gridEveryM: number;
  readonly sizeM: number;
};

export type NumberOnMap = ScreenPoint & { readonly text: string; readonly colour: string };

const colour = (hex: string): number => {
  const [red, green, blue] = rgbOf(hex);
  return (red << 16) | (green << 8) | blue;
};

/** Draws all of it in CSS pixels and returns the numbers to write. */
export function drawMarks(g: Phaser.GameObjects.Graphics, on: OnMap, view: View, size: SizePx, palette: Palette): readonly NumberOnMap[] {
  const at = (point: MapPoint) => toScreen(view, size, point);
  if (on.hatch) drawHatch(g, on.hatch, at, view, palette);
  if (on.fix) drawFix(g, on.fix, on.notebook, at, view, palette);
  drawTrack(g, on.track.map(at), palette);
  const numbers = [...drawBearings(g, on, at, palette), ...gridNumbers(on, view, size, palette)];
  if (on.start) drawStart(g, at(on.start), palette);
  if (on.guess) drawPin(g, at(on.guess), palette);
  if (on.goal && on.walker) drawGoal(g, at(on.walker), at(on.goal), palette);
  if (on.vehicle) drawVehicle(g, at(on.vehicle), palette);
  if (on.believed) drawBelieved(g, at(on.believed), palette);
  if (on.walker) drawWalker(g, at(on.walker), on.hold, palette);
  if (on.placing) drawCross(g, { x: size.width / 2, y: size.height / 2 }, palette);
  return numbers;
}

function drawHatch(
  g: Phaser.GameObjects.Graphics,
  hatch: HatchGrid,
  at: (point: MapPoint) => ScreenPoint,
  view: View,
  palette: Palette,
): void {
  g.lineStyle(1, colour(palette.ink), 0.55);
  for (const [from, to] of hatchLines(hatch, view.pxPerM)) {
    const [a, b] = [at(from), at(to)];
    g.lineBetween(a.x, a.y, b.x, b.y);
  }
}

function drawTrack(g: Phaser.GameObjects.Graphics, points: readonly ScreenPoint[], palette: Palette): void {
  if (points.length < 2) return;
  for (const [width, hex, alpha] of [
    [5, palette.paper, 0.75],
    [2.6, palette.sound, 1],
  ] as const) {
    g.lineStyle(width, colour(hex), alpha);
    g.beginPath();
    points.forEach(({ x, y }, i) => {
      if (i === 0) g.moveTo(x, y);
      else g.lineTo(x, y);
    });
    g.strokePath();
  }
}

function drawBearings(
  g: Phaser.GameObjects.Graphics,
  on: OnMap,
  at: (point: MapPoint) => ScreenPoint,
  palette: Palette,
): readonly NumberOnMap[] {
  const numbers: NumberOnMap[] = [];
  on.notebook.forEach((mark) => {
    const from = at(mark.at);
    const to = at(stepAlong(mark.at, mark.bearingDeg, on.bearingLengthM));
    if (mark.struckOut) {
      g.lineStyle(1.4, colour(palette['ink-2']), 0.9);
      broken(g, from, to, 1.5, 5);
    } else {
      g.lineStyle(3.6, colour(palette.paper), 0.6).lineBetween(from.x, from.y, to.x, to.y);
      g.lineStyle(1.6, colour(palette.ink), 1).lineBetween(from.x, from.y, to.x, to.y);
    }
  });
  on.notebook.forEach((mark, i) => {
    const from = at(mark.at);
    // The number stands beside its station, away from the line, so that walker and number never cover each other.
    const away = screenStep(mark.bearingDeg + 180);
    const spot = { x: from.x + away.x * 15, y: from.y + away.y * 15 };
    g.fillStyle(colour(palette.ink), 1).fillCircle(from.x, from.y, 2.6);
    g.fillStyle(colour(palette.paper), 1).fillCircle(spot.x, spot.y, 9.5);
    g.lineStyle(1.5, colour(mark.struckOut ? palette['ink-2'] : palette.ink), 1).strokeCircle(spot.x, spot.y, 9.5);
    numbers.push({ ...spot, text: String(i + 1), colour: mark.struckOut ? palette['ink-2'] : palette.ink });
  });
  return numbers;
}

function broken(g: Phaser.GameObjects.Graphics, from: ScreenPoint, to: ScreenPoint, dash: number, gap: number): void {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = [(to.x - from.x) / (length || 1), (to.y - from.y) / (length || 1)];
  for (let along = 0; along < Math.min(length, 4_000); along += dash + gap) {
    const end = Math.min(length, along + dash);
    g.lineBetween(from.x + ux * along, from.y + uy * along, from.x + ux * end, from.y + uy * end);
  }
}

/** Kilometres along the left and lower edge, beside the grid's hairlines. */
function gridNumbers(on: OnMap, view: View, size: SizePx, palette: Palette): readonly NumberOnMap[] {
  const numbers: NumberOnMap[] = [];
  for (let m = on.gridEveryM; m < on.sizeM; m += on.gridEveryM) {
    const { x, y } = toScreen(view, size, { eM: m, nM: m });
    const text = String(m / 1000);
    if (x > 30 && x < size.width - 20) numbers.push({ x: x + 8, y: 10, text, colour: palette['ink-2'] });
    if (y > 30 && y < size.height - 20) numbers.push({ x: 10, y: y - 8, text, colour: palette['ink-2'] });
  }
  return numbers;
}

function drawWalker(g: Phaser.GameObjects.Graphics, at: ScreenPoint, hold: Hold, palette: Palette): void {
  const forward = screenStep(hold.headingDeg);
  const right = screenStep(hold.headingDeg + 90);
  const hand = 17;
  const unit = hold.raised ? 15 : 12.5;
  const place = ([along, across]: readonly [number, number]): ScreenPoint => ({
    x: at.x + forward.x * (hand + 14 + along * unit) + right.x * across * unit,
    y: at.y + forward.y * (hand + 14 + along * unit) + right.y * across * unit,
  });
  g.lineStyle(1.2, colour(palette.sound), 0.65);
  broken(g, place([1.6, 0]), { x: at.x + forward.x * 2_000, y: at.y + forward.y * 2_000 }, 7, 6);
  for (const [width, hex] of [
    [6.5, palette.paper],
    [3, palette.sound],
  ] as const) {
    g.lineStyle(width, colour(hex), hex === palette.paper ? 0.85 : 1);
    for (const stroke of antennaStrokes(hold.antenna, hold.rollDeg)) {
      const [from, to] = [stroke.boom ? { x: at.x + forward.x * 7, y: at.y + forward.y * 7 } : place(stroke.from), place(stroke.to)];
      g.lineBetween(from.x, from.y, to.x, to.y);
    }
  }
  g.fillStyle(colour(palette.paper), 1).fillCircle(at.x, at.y, 10);
  g.fillStyle(colour(palette.ink), 1).fillCircle(at.x, at.y, 6.5);
  g.lineStyle(1.6, colour(palette.ink), 1).strokeCircle(at.x, at.y, 9.2);
}

/** From above: a body with its windscreen. */
function drawVehicle(g: Phaser.GameObjects.Graphics, { x, y }: ScreenPoint, palette: Palette): void {
  g.fillStyle(colour(palette.paper), 1).fillRoundedRect(x - 8, y - 12, 16, 24, 5);
  g.fillStyle(colour(palette.ink), 1).fillRoundedRect(x - 6.5, y - 10.5, 13, 21, 4);
  g.fillStyle(colour(palette.paper), 1).fillRect(x - 4, y - 5, 8, 4);
}

/** A ring without a dot: nobody is there for sure, and nothing points. */
function drawBelieved(g: Phaser.GameObjects.Graphics, at: ScreenPoint, palette: Palette): void {
  g.lineStyle(5, colour(palette.paper), 0.85).strokeCircle(at.x, at.y, 10);
  g.lineStyle(2, colour(palette.ink), 1).strokeCircle(at.x, at.y, 10);
  g.lineStyle(1.6, colour(palette.ink), 1);
  for (const [dx, dy] of CROSSWISE) g.lineBetween(at.x + dx * 10, at.y + dy * 10, at.x + dx * 15, at.y + dy * 15);
}

function drawGoal(g: Phaser.GameObjects.Graphics, from: ScreenPoint, to: ScreenPoint, palette: Palette): void {
  g.lineStyle(1.4, colour(palette.ink), 0.55);
  broken(g, from, to, 3, 4);
  g.lineStyle(1.6, colour(palette.ink), 0.9);
  g.strokeCircle(to.x, to.y, 5);
}

function drawPin(g: Phaser.GameObjects.Graphics, at: ScreenPoint, palette: Palette): void {
  const head = { x: at.x, y: at.y - 20 };
  g.fillStyle(colour(palette.paper), 1).fillCircle(head.x, head.y, 10.5);
  g.lineStyle(5, colour(palette.paper), 1).lineBetween(at.x, at.y, head.x, head.y);
  g.lineStyle(2, colour(palette.ink), 1).lineBetween(at.x, at.y, head.x, head.y + 8);
  g.fillStyle(colour(palette.ink), 1).fillCircle(head.x, head.y, 8.5);
  g.fillStyle(colour(palette.paper), 1).fillCircle(head.x, head.y, 3);
  g.fillStyle(colour(palette.ink), 1).fillCircle(at.x, at.y, 2.4);
}

const CROSSWISE = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

function drawCross(g: Phaser.GameObjects.Graphics, { x, y }: ScreenPoint, palette: Palette): void {
  for (const [width, hex] of [
    [4, palette.paper],
    [1.6, palette.ink],
  ] as const) {
    g.lineStyle(width, colour(hex), 1);
    for (const [dx, dy] of CROSSWISE) {
      g.lineBetween(x + dx * 6, y + dy * 6, x + dx * 18, y + dy * 18);
    }
  }
}
