import { PROGRAM_VERSION } from '../run/record';
import type { ClubReport, ExerciseReport } from './clubReport';
import { type MapOrigin, NOWHERE, placeOnGlobe, placesNote } from './mapOrigin';
import { rowSentence } from './rowSentence';
import type { TableRow } from './tableRow';
import { utcInstant } from './utcInstant';
import { xmlText } from './xmlText';

/**
 * Tracks, starts and tags as GPX 1.1. Track points carry a time where the run says when it began.
 * @source GPX 1.1 schema: metadata, then waypoints, then tracks; children in its fixed order
 */
export function gpxOf(report: ClubReport, origin: MapOrigin = NOWHERE): string {
  const place = (tag: string, eM: number, nM: number, inner: string) => {
    const { lat, lon } = placeOnGlobe(origin, eM, nM);
    return `<${tag} lat="${lat.toFixed(8)}" lon="${lon.toFixed(8)}">${inner}</${tag}>`;
  };
  const waypoints = report.exercises.flatMap(({ exercise: { title, startAt, tags } }) => [
    place('wpt', ...startAt, `<name>${xmlText(`${title}: start`)}</name><type>start</type>`),
    ...tags.map(({ name, at }) =>
      place('wpt', ...at, `<name>${xmlText(`${title}: ${name}`)}</name><type>tag at the start of the run</type>`),
    ),
  ]);
  const track = ({ exercise }: ExerciseReport, row: TableRow) => {
    const points = row.track.map(([timeS, eM, nM]) => place('trkpt', eM, nM, timeElement(row.begunAt, timeS)));
    const name = `${row.name || 'no name'}: ${exercise.title}`;
    return `<trk><name>${xmlText(name)}</name><desc>${xmlText(rowSentence(row))}</desc><type>training run</type>\n<trkseg>\n${points.join('\n')}\n</trkseg></trk>`;
  };
  const tracks = report.exercises.flatMap((of) => of.runs.filter(({ row }) => row.track.length > 0).map(({ row }) => track(of, row)));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="Faintward ${xmlText(PROGRAM_VERSION)}">`,
    `<metadata><name>Club table</name><desc>${xmlText(placesNote(origin))}</desc></metadata>`,
    ...waypoints,
    ...tracks,
    '</gpx>\n',
  ].join('\n');
}

function timeElement(begunAt: string | null, timeS: number): string {
  if (begunAt === null) return '';
  return `<time>${utcInstant(begunAt, timeS)}</time>`;
}
