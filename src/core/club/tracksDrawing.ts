import type { TableExercise, TableRow } from './tableRow';
import { xmlText } from './xmlText';

/** Tracks that are drawn as the ones to look at; the rest stay in the background so that the sheet can be read. */
const NAMED = 3;
const SIDE = 600;

/** All tracks of an exercise on one square map, north up: the first three by technique with their names, the others thin. */
export function tracksDrawing(exercise: TableExercise, rows: readonly TableRow[]): string {
  const walked = rows.filter(({ track }) => track.length > 0);
  if (walked.length === 0) return '';
  const frame = frameOf(exercise, walked);
  const line = (row: TableRow, i: number) => {
    const points = row.track.map(([, eM, nM]) => frame.to(eM, nM).join(',')).join(' ');
    const named = i < NAMED;
    return `<polyline points="${points}" fill="none" stroke="${named ? '#c2410c' : '#56605e'}" stroke-width="${named ? 2.5 : 1}" stroke-opacity="${named ? 1 : 0.45}"${named ? ` stroke-dasharray="${['none', '9 4', '2 4'][i]}"` : ''}/>`;
  };
  const label = (row: TableRow, i: number) => {
    const [x, y] = frame.to(...(row.track.at(-1)!.slice(1) as [number, number]));
    return `<text x="${x + 8}" y="${y + 5 + 18 * i}" font-size="15" fill="#1f2a2c">${xmlText(row.name || 'no name')}</text>`;
  };
  const [startX, startY] = frame.to(...exercise.startAt);
  const tags = exercise.tags.map(({ at }) => {
    const [x, y] = frame.to(...at);
    return `<circle cx="${x}" cy="${y}" r="9" fill="none" stroke="#0f5e78" stroke-width="2.5" stroke-dasharray="4 3"/>`;
  });
  const drawn = [...walked.map(line)].reverse(); // the first lies on top
  return [
    `<figure><svg viewBox="0 0 ${SIDE} ${SIDE}" role="img" aria-label="Tracks of ${walked.length} runs">`,
    `<rect width="${SIDE}" height="${SIDE}" fill="#efe9d4" stroke="#cfc6b1"/>`,
    ...drawn,
    `<path d="M${startX - 7} ${startY + 6}h14l-7 -13z" fill="#1f2a2c"/>`,
    ...tags,
    ...walked.slice(0, NAMED).map(label),
    frame.scale,
    `</svg><figcaption>North is up. Triangle: start. Dashed ring: tag at the start of the run. ${captionOf(walked)}</figcaption></figure>`,
  ].join('\n');
}

function captionOf(walked: readonly TableRow[]): string {
  const named = walked.slice(0, NAMED).map(({ name }) => xmlText(name || 'no name'));
  const lines = ['full line', 'long dashes', 'dots'].slice(0, named.length).map((how, i) => `${named[i]} (${how})`);
  const rest = walked.length - NAMED;
  return `${lines.join(', ')}${rest > 0 ? `; thin: ${rest} ${rest === 1 ? 'other' : 'others'}` : ''}.`;
}

/** A square that holds everything that was walked, with a scale bar of a round length. */
function frameOf({ startAt, tags, sizeM }: TableExercise, rows: readonly TableRow[]) {
  const places = [startAt, ...tags.map(({ at }) => at), ...rows.flatMap(({ track }) => track.map(([, eM, nM]) => [eM, nM] as const))];
  const [easts, norths] = [places.map(([eM]) => eM), places.map(([, nM]) => nM)];
  const [west, east, south, north] = [least(easts), most(easts), least(norths), most(norths)];
  const sideM = Math.min(Math.max(200, 1.2 * Math.max(east - west, north - south)), 1.2 * sizeM);
  const [fromE, fromN] = [(west + east - sideM) / 2, (south + north - sideM) / 2];
  const scale = SIDE / sideM;
  const tenth = (value: number) => Math.round(value * 10) / 10;
  const barM = [2_000, 1_000, 500, 200, 100].find((length) => length * scale < SIDE / 3) ?? 50;
  const bar =
    `<path d="M14 ${SIDE - 14}h${tenth(barM * scale)}" stroke="#1f2a2c" stroke-width="2"/>` +
    `<text x="14" y="${SIDE - 22}" font-size="14" fill="#1f2a2c">${barM} m</text>`;
  const to = (eM: number, nM: number): readonly [number, number] => [tenth((eM - fromE) * scale), tenth(SIDE - (nM - fromN) * scale)];
  return { to, scale: bar };
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
