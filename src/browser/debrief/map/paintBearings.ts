import type { BearingRow } from '../../../core/debrief/bearings';
import type { ArrowKind, WaveArrow } from '../../../core/debrief/lossBudget';
import { stepAlong } from '../../../core/units/frames';
import { NUMBERS_FONT } from '../../design/palette';
import { arrow, disc, type Easel, line, type Stroke, stepPx, write } from '../../map/brush';

const LINE_PX = 92;
const FAINT = 0.42;

/** Each bearing as taken, solid, and where the tag truly was, dashed. One may stand out; the others then stand back. */
export function paintBearings(easel: Easel, rows: readonly BearingRow[], chosen: number | null): void {
  for (const row of rows) {
    easel.context.globalAlpha = chosen === null || row.number === chosen ? 1 : FAINT;
    paintBearing(easel, row, row.number === chosen);
  }
  easel.context.globalAlpha = 1;
  for (const row of rows) if (row.number !== chosen) paintNumber(easel, row, false);
  for (const row of rows) if (row.number === chosen) paintNumber(easel, row, true);
}

function paintBearing(easel: Easel, row: BearingRow, stands: boolean): void {
  const { palette, view } = easel;
  const from = easel.at(row.at);
  const farPx = stands ? Math.min(row.distanceM * view.pxPerM, 2_000) : LINE_PX;
  const taken = easel.at(stepAlong(row.at, row.takenDeg, Math.max(LINE_PX, farPx) / view.pxPerM));
  const truth = stands ? easel.at(row.tagAt) : stepPx(from, row.trueDeg, Math.min(LINE_PX, row.distanceM * view.pxPerM));
  line(easel, [from, truth], { colour: palette.truth, width: stands ? 2 : 1.4, dash: [6, 5], cap: 'butt' });
  line(easel, [from, taken], { colour: palette.paper, width: 3.6 });
  line(easel, [from, taken], { colour: palette.ink, width: stands ? 2.2 : 1.4, dash: row.struckOut ? [0.1, 5] : [] });
}

function paintNumber(easel: Easel, { at, takenDeg, number, struckOut }: BearingRow, stands: boolean): void {
  const { palette } = easel;
  const away = stepPx(easel.at(at), takenDeg + 180, 14);
  disc(easel, away, 9.5, stands ? palette.ink : palette.paper, { colour: struckOut ? palette['ink-2'] : palette.ink, width: 1.5 });
  const { context } = easel;
  context.font = `700 11px ${NUMBERS_FONT}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = stands ? palette['on-ink'] : palette.ink;
  context.fillText(String(number), away.x, away.y + 0.5);
}

/** Kinds are told apart by the stroke and by their name, never by colour. */
export const WAVE_DASHES: Readonly<Record<ArrowKind, readonly number[]>> = {
  direct: [],
  hillside: [10, 5],
  wall: [10, 4, 2, 4],
  wire: [3, 3],
  scatter: [0.1, 5],
};
export const WAVE_WIDTHS: Readonly<Record<ArrowKind, number>> = { direct: 3.2, hillside: 2.4, wall: 2.4, wire: 2.4, scatter: 1.5 };
export const WAVE_NAMES: Readonly<Record<ArrowKind, string>> = {
  direct: 'direct',
  hillside: 'hillside',
  wall: 'wall',
  wire: 'wire',
  scatter: 'scatter',
};

/** Share of an arrow's full length by how far the wave lies under the strongest, 25 dB and more giving a fifth. */
export const waveShare = (powerDbm: number, strongestDbm: number): number => Math.max(0.2, 1 - (0.8 * (strongestDbm - powerDbm)) / 25);

const LONGEST_PX = 118;
const GAP_PX = 15;

/** The waves at a station, each an arrow that comes in from its side; the strongest is the longest. */
export function paintWaves(easel: Easel, at: BearingRow['at'], waves: readonly WaveArrow[]): void {
  const centre = easel.at(at);
  const strongest = waves[0]?.powerDbm ?? 0;
  const named = new Set<ArrowKind>();
  for (const { kind, azimuthDeg, powerDbm } of [...waves].reverse()) {
    const px = GAP_PX + LONGEST_PX * waveShare(powerDbm, strongest);
    const stroke: Stroke = { colour: easel.palette.truth, width: WAVE_WIDTHS[kind], dash: WAVE_DASHES[kind] };
    arrow(easel, stepPx(centre, azimuthDeg, px), stepPx(centre, azimuthDeg, GAP_PX), stroke, kind === 'scatter' ? 5 : 8);
  }
  for (const { kind, azimuthDeg, powerDbm } of waves) {
    if (named.has(kind)) continue;
    named.add(kind);
    const tail = stepPx(centre, azimuthDeg, GAP_PX + 10 + LONGEST_PX * waveShare(powerDbm, strongest));
    const align = Math.sin((azimuthDeg * Math.PI) / 180) < -0.3 ? 'right' : 'left';
    write(easel, tail, { text: WAVE_NAMES[kind], colour: easel.palette.truth, align });
  }
}
