import { readFileSync } from 'node:fs';
import { check } from '@placemarkio/check-geojson';
import { describe, expect, test } from 'vitest';
import statementWarnings from 'xapi-validation';
import { validateXML } from 'xmllint-wasm';
import { geojsonOf } from '../../src/core/club/geojson';
import { gpxOf } from '../../src/core/club/gpx';
import { NOWHERE, placeOnGlobe } from '../../src/core/club/mapOrigin';
import { statementsOf } from '../../src/core/club/statements';
import { uuidFor } from '../../src/core/scenario/seal';
import { bearingDeg, distanceM } from '../../src/core/units/frames';
import { handmadeRow, reportOf } from '../core/club/handmadeTable';

const HOSTILE = `</name><script>alert("1")</script>&'\u0000\u001b\ud800 Ünïcode 🦊`;
const cheat = handmadeRow('cheat', { sound: false, mark: 'does not replay', technique: null, outcome: null, track: [] });
const report = reportOf(
  handmadeRow('Rowan'),
  handmadeRow(HOSTILE, { aided: true }),
  handmadeRow('', { begunAt: null, technique: null }),
  handmadeRow('Still', { track: [[0, 442, 322]], outcome: { found: false, ending: 'gave-up', timeS: 0 } }),
  cheat,
);

describe('GPX 1.1', () => {
  const schema = [{ fileName: 'gpx.xsd', contents: readFileSync('tests/outside/data/gpx-1.1-structure.xsd', 'utf8') }];
  const faultsOf = async (contents: string) => (await validateXML({ xml: [{ fileName: 'table.gpx', contents }], schema })).errors;

  test('tracks, starts and tags keep to the structure of the schema, hostile names included', async () => {
    const gpx = gpxOf(report);
    expect((await faultsOf(gpx)).map(({ message }) => message)).toEqual([]);
    expect(gpx.match(/<trk>/g)!.length).toBe(4); // who does not replay is nowhere
    expect(gpx).not.toContain('<script');
    expect(gpx).toContain('<time>2026-05-12T17:40:05.000Z</time>'); // 19:30:05 two hours east of Greenwich, and ten minutes
    expect(gpx).toContain('means nothing');
  });

  test.each([
    ['a track before a waypoint', (gpx: string) => gpx.replace(/(<wpt[\s\S]*<\/wpt>\n)(<trk>[\s\S]*<\/trk>\n)/, '$2$1')],
    ['no creator', (gpx: string) => gpx.replace(/ creator="[^"]*"/, '')],
    ['a latitude of 91 degrees', (gpx: string) => gpx.replace(/lat="[^"]*"/, 'lat="91"')],
    ['a time without a date', (gpx: string) => gpx.replace(/<time>[^<]*/, '<time>17:40')],
    ['an unescaped name', (gpx: string) => gpx.replace('<name>Rowan', '<name>Rowan & Ash')],
  ])('the check can fail: %s is a fault', async (_what, spoil) => {
    const spoilt = spoil(gpxOf(report));
    expect(spoilt).not.toBe(gpxOf(report));
    expect((await faultsOf(spoilt)).length).toBeGreaterThan(0);
  });
});

describe('GeoJSON (RFC 7946)', () => {
  test('an independent checker finds no fault, and positions are longitude before latitude', () => {
    const geojson = geojsonOf(report, { latDeg: 10, lonDeg: 20 }) as {
      features: { geometry: { type: string; coordinates: number[] } | null }[];
    };
    expect(() => check(JSON.stringify(geojson))).not.toThrow();
    expect(geojson.features[0]!.geometry!.coordinates.map(Math.floor)).toEqual([20, 10]);
    const shapes = geojson.features.map(({ geometry }) => geometry?.type ?? 'nowhere');
    expect(shapes.sort()).toEqual(['LineString', 'LineString', 'LineString', 'Point', 'Point', 'Point', 'nowhere']);
  });

  test('the checker can fail: a line of one place is a fault', () => {
    const text = JSON.stringify(geojsonOf(report)).replace(
      /"LineString","coordinates":\[(\[[^\]]*\])[^"]*\]\]/,
      '"LineString","coordinates":[$1]',
    );
    expect(() => check(text)).toThrow();
  });
});

describe('places on the globe', () => {
  // One degree at the equator of WGS 84: 110.574 km of latitude, 111.320 km of longitude; at 60 degrees 111.412 and 55.800 (NIMA TR8350.2).
  test.each([
    [0, 110_574, 111_320],
    [60, 111_412, 55_800],
  ])('at latitude %i a degree is %i m north and %i m east', (latDeg, northM, eastM) => {
    const { lat, lon } = placeOnGlobe({ latDeg, lonDeg: 0 }, eastM / 100, northM / 100);
    expect(Math.abs(lat - latDeg - 0.01)).toBeLessThan(1e-7);
    expect(Math.abs(lon - 0.01)).toBeLessThan(1e-7);
  });

  test('distances and bearings on a map of 10 km come back to 0.3 % and 0.2 degrees from the degrees at latitude 55', () => {
    const origin = { latDeg: 55, lonDeg: 10 };
    const back = (eM: number, nM: number) => {
      const { lat, lon } = placeOnGlobe(origin, eM, nM);
      const middle = ((lat + 55) / 2) * (Math.PI / 180);
      // Degrees to metres by the series of the WGS 84 ellipsoid at the middle latitude (NIMA TR8350.2).
      const northM = 111_132.954 - 559.822 * Math.cos(2 * middle) + 1.175 * Math.cos(4 * middle);
      const eastM = 111_412.84 * Math.cos(middle) - 93.5 * Math.cos(3 * middle) + 0.118 * Math.cos(5 * middle);
      return { eM: (lon - 10) * eastM, nM: (lat - 55) * northM };
    };
    const here = { eM: 0, nM: 0 };
    for (const [eM, nM] of [
      [9_000, 9_500],
      [300, 400],
      [9_000, 10],
      [10, 9_000],
    ] as const) {
      expect(Math.abs(distanceM(here, back(eM, nM)) / Math.hypot(eM, nM) - 1)).toBeLessThan(0.003);
      expect(Math.abs(bearingDeg(here, back(eM, nM)) - bearingDeg(here, { eM, nM }))).toBeLessThan(0.2);
    }
  });

  test('a longitude past 180 goes on at -180, and no map lies beyond 80 degrees', () => {
    expect(placeOnGlobe({ latDeg: 0, lonDeg: 179.999 }, 500, 0).lon).toBeLessThan(-179.99);
    expect(() => placeOnGlobe({ latDeg: 85, lonDeg: 0 }, 0, 0)).toThrow(RangeError);
    expect(placeOnGlobe(NOWHERE, 0, 0)).toEqual({ lat: 0, lon: 0 });
  });
});

describe('xAPI statements', () => {
  type Statement = {
    id: string;
    actor: { account?: { name: string }; mbox?: string };
    verb: { id: string };
    result: { score?: { scaled: number; raw: number }; success: boolean; duration: string };
    timestamp?: string;
  };
  const statements = statementsOf(report) as Statement[];

  test('a validator of statements has nothing to say, hostile names included', () => {
    expect(statements.length).toBe(4);
    expect(statements.flatMap((statement) => statementWarnings(JSON.parse(JSON.stringify(statement))))).toEqual([]);
  });

  test('the validator can fail: a score over its range and a verb that is no address are faults', () => {
    const [first] = statements;
    expect(statementWarnings({ ...first, verb: { ...first!.verb, id: 'completed' } }).length).toBeGreaterThan(0);
    expect(statementWarnings({ ...first, result: { ...first!.result, score: { scaled: 80 } } }).length).toBeGreaterThan(0);
  });

  test('people are accounts by nickname, the time is the end of the run, and a run without a date gets none', () => {
    const of = (name: string) => statements.find(({ actor }) => actor.account!.name === name)!;
    expect(of('rowan')).toMatchObject({
      timestamp: '2026-05-12T17:40:05.000Z',
      result: { score: { scaled: 0.8, raw: 80 }, success: true, duration: 'PT600.00S' },
    });
    expect(statements.filter(({ timestamp }) => timestamp === undefined).length).toBe(1);
    expect(JSON.stringify(statements)).not.toMatch(/mbox|mailto/);
    expect(of('still').verb.id).toContain('attempted');
  });

  test('the same run gives the same id, another run another', () => {
    expect((statementsOf(report) as Statement[]).map(({ id }) => id)).toEqual(statements.map(({ id }) => id));
    expect(new Set(statements.map(({ id }) => id)).size).toBe(4);
  });

  // RFC 9562, appendix A.4: version 5 of www.example.com in the namespace of domain names.
  test('the UUID of www.example.com in the namespace of domain names is the published one', () => {
    expect(uuidFor('6ba7b810-9dad-11d1-80b4-00c04fd430c8', 'www.example.com')).toBe('2ed6657d-e927-568b-95e1-2665a8aea6a2');
  });
});
