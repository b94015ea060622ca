import { PROGRAM_VERSION } from '../run/record';
import type { ClubReport } from './clubReport';
import { type MapOrigin, NOWHERE, placeOnGlobe, placesNote } from './mapOrigin';
import type { Placed } from './rank';

/** Tracks, starts and tags as GeoJSON (RFC 7946): longitude before latitude, WGS 84, lines of two places or more. */
export function geojsonOf(report: ClubReport, origin: MapOrigin = NOWHERE): object {
  const position = (eM: number, nM: number): readonly [number, number] => {
    const { lat, lon } = placeOnGlobe(origin, eM, nM);
    return [lon, lat];
  };
  const point = (at: readonly [number, number], properties: object) => ({
    type: 'Feature',
    geometry: { type: 'Point', coordinates: position(...at) },
    properties,
  });
  const features = report.exercises.flatMap(({ exercise: { title, digest, startAt, tags }, words, runs }) => [
    point(startAt, { kind: 'start', exercise: title, words, digest }),
    ...tags.map(({ name, at }) => point(at, { kind: 'tag', exercise: title, words, digest, name })),
    ...runs.map((placed) => ({
      type: 'Feature',
      geometry: trackGeometry(placed.row.track.map(([, eM, nM]) => position(eM, nM))),
      properties: { kind: 'run', exercise: title, words, digest, ...runProperties(placed) },
    })),
  ]);
  return { type: 'FeatureCollection', note: placesNote(origin), program: PROGRAM_VERSION, features };
}

/** A line wants two places: somebody who never moved is a point, a run that does not replay is nowhere. */
function trackGeometry(positions: readonly (readonly [number, number])[]): object | null {
  if (positions.length === 0) return null;
  if (positions.length === 1) return { type: 'Point', coordinates: positions[0] };
  return { type: 'LineString', coordinates: positions };
}

const runProperties = ({ row, technique, outcome, why }: Placed): object => ({
  name: row.name,
  by: row.by,
  begunAt: row.begunAt,
  technique: row.technique,
  placeByTechnique: technique,
  placeByOutcome: outcome,
  whyNoPlace: why,
  found: row.outcome?.found ?? null,
  timeS: row.outcome?.timeS ?? null,
  habits: row.habits,
  replay: row.mark,
  aided: row.aided,
  withInstructor: row.withInstructor ?? false,
  secondsOfPositions: row.track.map(([timeS]) => timeS),
});
