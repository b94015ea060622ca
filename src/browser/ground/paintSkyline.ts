import { toDeg, wrapBearingDeg } from '../../core/units/angles';
import type { Skyline } from '../../core/world/skyline';
import { COVER } from '../../core/world/world';
import { between, NUMBERS_FONT, type Palette, rgbOf } from '../design/palette';
import { type StripView, xOf, yOf } from './skylineView';

type Context = CanvasRenderingContext2D;
type SkylineLayer = Skyline['layers'][number];
type SkylineItem = Skyline['items'][number];
type SkylineWire = Skyline['wires'][number];
const bearingOf = ({ east, north }: { readonly east: number; readonly north: number }): number =>
  wrapBearingDeg(toDeg(Math.atan2(east, north)));

/** Sky, ridges from far to near with what stands on them, the wires, the antenna's pointer, and degrees along the foot. */
export function paintSkyline(context: Context, skyline: Skyline, view: StripView, palette: Palette, read: Read | null): void {
  const { width, height } = view.size;
  const sky = context.createLinearGradient(0, 0, 0, view.horizonY);
  sky.addColorStop(0, palette['sky-top']);
  sky.addColorStop(1, palette['sky-foot']);
  context.fillStyle = sky;
  context.fillRect(0, 0, width, height);
  // Past the map's edge nothing is known: level haze.
  context.fillStyle = palette.haze;
  context.fillRect(0, view.horizonY, width, height);
  const last = skyline.layers.length - 1;
  for (let band = last; band >= 0; band--) {
    const layer = skyline.layers[band]!;
    const hazeShare = band === 0 ? 0 : 0.16 + (0.62 * band) / last;
    const stands = skyline.items.filter(({ isSeen, distanceM }) => isSeen && distanceM >= layer.fromM && distanceM < layer.toM);
    const isBehind = (item: SkylineItem) => item.distanceM > layer.distanceM[binOf(skyline, bearingOf(item.toward))]!;
    for (const item of stands.filter(isBehind)) paintItem(context, item, view, palette, hazeShare);
    paintRidge(context, skyline, layer, view, between(palette.ridge, palette.haze, hazeShare));
    paintTrees(context, skyline, layer, view, between(treeColour(palette), palette.haze, hazeShare), band);
    for (const item of stands.filter((each) => !isBehind(each))) paintItem(context, item, view, palette, hazeShare);
    for (const wire of skyline.wires)
      if (wire.distanceM >= layer.fromM && wire.distanceM < layer.toM) paintWire(context, wire, view, palette, hazeShare);
  }
  paintFoot(context, view, palette, read);
  paintPointer(context, view, palette);
}

const treeColour = (palette: Palette): string => darker(palette.ridge);
/** The ridge's colour a third of the way to black, as #rrggbb. */
function darker(hex: string): string {
  const parts = rgbOf(hex).map((value) =>
    Math.round(value * 0.68)
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${parts.join('')}`;
}

const binOf = ({ bins }: Skyline, bearingDeg: number): number => Math.floor((bearingDeg / 360) * bins) % bins;

/** Bins that the strip shows, with one to spare at either end: bin and where it stands. */
function* binsInView({ bins }: Skyline, view: StripView): Generator<{ readonly bin: number; readonly x: number }> {
  const half = view.size.width / 2 / view.pxPerDeg;
  const perDeg = bins / 360;
  const first = Math.floor((view.headingDeg - half) * perDeg) - 1;
  const count = Math.ceil(2 * half * perDeg) + 3;
  for (let i = first; i < first + count; i++) {
    yield { bin: ((i % bins) + bins) % bins, x: view.size.width / 2 + (i / perDeg - view.headingDeg) * view.pxPerDeg };
  }
}

function paintRidge(context: Context, skyline: Skyline, layer: SkylineLayer, view: StripView, colour: string): void {
  context.fillStyle = colour;
  context.beginPath();
  const floor = view.size.height + 2;
  let open = false;
  let lastX = 0;
  let lastY = 0;
  for (const { bin, x } of binsInView(skyline, view)) {
    const slope = layer.slope[bin]!;
    const known = Number.isFinite(slope);
    const y = known ? Math.min(floor, yOf(view, slope)) : floor;
    if (known && !open) {
      context.moveTo(x, floor);
      context.lineTo(x, y);
    }
    // Through the middles, so that the bins are not seen as stairs.
    else if (known) context.quadraticCurveTo(lastX, lastY, (lastX + x) / 2, (lastY + y) / 2);
    else if (open) context.lineTo(lastX, floor);
    open = known;
    lastX = x;
    lastY = y;
  }
  if (open) context.lineTo(lastX, floor);
  context.fill();
}

/** A number 0..1 that belongs to a place of the skyline, so that the same tree stands there in every frame. */
function chance(a: number, b: number): number {
  let h = Math.imul(a + 1, 0x9e3779b1) ^ Math.imul(b + 7, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return ((h ^ (h >>> 13)) >>> 0) / 4294967296;
}

const TREE_M = 12;

/** Where wood covers the crest its edge is drawn crown by crown, down to where the trees stand. */
function paintTrees(context: Context, skyline: Skyline, layer: SkylineLayer, view: StripView, colour: string, band: number): void {
  context.fillStyle = colour;
  context.beginPath();
  const binPx = (360 / skyline.bins) * view.pxPerDeg;
  for (const { bin, x } of binsInView(skyline, view)) {
    if (layer.cover[bin] !== COVER.wood || layer.isSeen[bin] !== 1) continue;
    const distanceM = Math.max(20, layer.distanceM[bin]!);
    const tallPx = Math.min(70, toDeg(TREE_M / distanceM) * view.pxPerDeg * view.exaggeration);
    const apart = crownBins((tallPx * 0.42) / binPx);
    if (bin % apart !== 0) continue;
    const [dice, other] = [chance(bin, band), chance(bin, band + 40)];
    const middle = x + apart * binPx * (0.2 + 0.6 * dice);
    const half = Math.max(1.6, apart * binPx * (0.72 + 0.4 * other));
    const crest = yOf(view, layer.slope[bin]!);
    const top = crest + tallPx * (0.3 * other - 0.16);
    const foot = crest + Math.max(3, tallPx * 0.95);
    // Spruce or broadleaf by the dice: a spire, or a round crown.
    const shoulder = dice < 0.6 ? 0.34 : 0.95;
    context.moveTo(middle - half, foot);
    context.bezierCurveTo(middle - half, crest + tallPx * 0.4, middle - half * shoulder, top, middle, top);
    context.bezierCurveTo(middle + half * shoulder, top, middle + half, crest + tallPx * 0.4, middle + half, foot);
  }
  context.fill();
}

/** Bins from one crown to the next: a number that divides a whole round, so that no crown is cut at north. */
function crownBins(wanted: number): number {
  return [12, 10, 8, 6, 5, 4, 3, 2, 1].find((count) => count <= wanted) ?? 1;
}

function paintItem(context: Context, item: SkylineItem, view: StripView, palette: Palette, hazeShare: number): void {
  const x = xOf(view, bearingOf(item.toward));
  if (x < -80 || x > view.size.width + 80) return;
  const [top, foot] = [yOf(view, item.topSlope), yOf(view, item.footSlope)];
  const colour = between(palette.ink, palette.haze, hazeShare * 0.7);
  const tall = foot - top;
  context.strokeStyle = colour;
  context.fillStyle = colour;
  context.lineWidth = Math.max(0.8, Math.min(2, tall / 26));
  if (item.kind === 'building') {
    const half = Math.max(1.5, toDeg(item.halfWidth) * view.pxPerDeg);
    context.beginPath();
    context.moveTo(x - half, foot + 3);
    context.lineTo(x - half, top + tall * 0.42);
    context.lineTo(x - half * 0.8, top);
    context.lineTo(x + half * 0.8, top);
    context.lineTo(x + half, top + tall * 0.42);
    context.lineTo(x + half, foot + 3);
    context.fill();
    return;
  }
  context.beginPath();
  if (item.kind === 'pole') {
    const arm = Math.max(1.5, tall * 0.09);
    context.moveTo(x, foot);
    context.lineTo(x, top);
    context.moveTo(x - arm, top + tall * 0.06);
    context.lineTo(x + arm, top + tall * 0.06);
  } else {
    const half = tall * 0.1;
    context.moveTo(x - half, foot);
    context.lineTo(x - half * 0.15, top);
    context.lineTo(x + half * 0.15, top);
    context.lineTo(x + half, foot);
    for (const [share, reach] of [
      [0.12, 1.1],
      [0.26, 1.5],
    ] as const) {
      context.moveTo(x - half * reach, top + tall * share);
      context.lineTo(x + half * reach, top + tall * share);
    }
    for (const [from, to] of [
      [0.35, 0.65],
      [0.65, 1],
    ] as const) {
      context.moveTo(x - half * from, top + tall * from);
      context.lineTo(x + half * to, top + tall * to);
      context.moveTo(x + half * from, top + tall * from);
      context.lineTo(x - half * to, top + tall * to);
    }
  }
  context.stroke();
}

function paintWire(context: Context, wire: SkylineWire, view: StripView, palette: Palette, hazeShare: number): void {
  context.strokeStyle = between(palette.ink, palette.haze, hazeShare * 0.8);
  context.lineWidth = wire.distanceM < 150 ? 1.1 : 0.7;
  context.beginPath();
  let lastX = Number.NaN;
  for (let i = 0; i < wire.slope.length; i++) {
    const x = xOf(view, bearingOf({ east: wire.east[i]!, north: wire.north[i]! }));
    const y = yOf(view, wire.slope[i]!);
    // A wire overhead runs from one side to the other: there it leaves the strip and comes in again.
    if (Number.isNaN(lastX) || Math.abs(x - lastX) > view.size.width) context.moveTo(x, y);
    else context.lineTo(x, y);
    lastX = x;
  }
  context.stroke();
}

/** A true bearing as the learner reads it. */
type Read = (trueDeg: number) => number;

function paintFoot(context: Context, view: StripView, palette: Palette, read: Read | null): void {
  const { width, height } = view.size;
  const top = height - view.footPx;
  context.fillStyle = palette.paper;
  context.fillRect(0, top, width, view.footPx);
  context.strokeStyle = palette.ink;
  context.fillStyle = palette.ink;
  context.font = `500 12.5px ${NUMBERS_FONT}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineWidth = 1;
  context.beginPath();
  const half = width / 2 / view.pxPerDeg;
  const every = view.pxPerDeg > 7 ? 15 : 30;
  const headingDeg = read ? read(view.headingDeg) : view.headingDeg;
  for (let deg = Math.ceil((headingDeg - half) / 5) * 5; deg <= headingDeg + half; deg += 5) {
    const x = width / 2 + (deg - headingDeg) * view.pxPerDeg;
    const named = deg % every === 0;
    context.moveTo(x, top);
    context.lineTo(x, top + (named ? 5 : 3));
    if (named && read && x > 18 && x < width - 18) context.fillText(nameOf(wrapBearingDeg(deg)), x, top + 5 + (view.footPx - 5) / 2);
  }
  context.stroke();
}

const QUARTERS: Readonly<Record<number, string>> = { 0: 'N', 90: 'E', 180: 'S', 270: 'W' };
const nameOf = (deg: number): string => QUARTERS[deg] ?? `${String(deg).padStart(3, '0')}°`;

function paintPointer(context: Context, view: StripView, palette: Palette): void {
  const x = view.size.width / 2;
  context.fillStyle = palette.sound;
  context.strokeStyle = palette.sound;
  context.lineWidth = 1.6;
  context.beginPath();
  context.moveTo(x, 8);
  context.lineTo(x, view.size.height - view.footPx);
  context.stroke();
  context.beginPath();
  context.moveTo(x - 7, 0);
  context.lineTo(x + 7, 0);
  context.lineTo(x, 10);
  context.fill();
}
