import { withoutNames } from '../core/club/anonymous';
import { type ClubReport, clubReport } from '../core/club/clubReport';
import { type Collected, collectedTable, makeCollector } from '../core/club/collect';
import { csvOf } from '../core/club/csv';
import { geojsonOf } from '../core/club/geojson';
import { gpxOf } from '../core/club/gpx';
import { LARGEST_LATITUDE_DEG, type MapOrigin, NOWHERE } from '../core/club/mapOrigin';
import { EMPTY_TABLE } from '../core/club/mergeTables';
import { pageOf } from '../core/club/page';
import { statementsOf } from '../core/club/statements';
import { tableDocument } from '../core/club/tableDocument';
import { type Fault, faultLine, InputFaults } from '../core/scenario/faults';
import { readableDocuments } from './documents';
import { numberFrom, textOf, UsageError } from './inputs';
import { printed } from './printed';
import { printedTable } from './tableText';

const SHAPES = ['csv', 'gpx', 'geojson', 'xapi', 'html'] as const;
type Shape = (typeof SHAPES)[number] | 'json' | 'text';

/** Makes the club table of run files and saved tables, and writes it in one shape. @returns the exit code */
export function tableCommand(files: readonly string[], options: Readonly<Record<string, unknown>>, json: boolean): number {
  const shape = shapeFrom(options, json);
  const origin = options['origin'] === undefined ? NOWHERE : originFrom(options['origin']);
  const anonymous = options['anonymous'] === true;
  const collected = collectedTable(collectedFrom(files));
  const table = anonymous ? withoutNames(collected.table) : collected.table;
  const faults = anonymous ? numberedFiles(collected.faults, files) : collected.faults;
  for (const fault of faults) process.stderr.write(`${faultLine(fault)}\n`);
  const report = clubReport(table);
  process.stdout.write(shape === 'json' ? line(tableDocument(table, report, faults, anonymous)) : shaped(shape, report, origin));
  return faults.length > 0 ? 1 : 0;
}

function shapeFrom(options: Readonly<Record<string, unknown>>, json: boolean): Shape {
  const asked = SHAPES.filter((shape) => options[shape] === true);
  if (asked.length > 1) throw new UsageError(`table gives one shape at a time, found --${asked.join(' and --')}`);
  const [shape] = asked;
  if (json && shape !== undefined && shape !== 'geojson' && shape !== 'xapi')
    throw new UsageError(`--${shape} is no JSON: leave --json out`);
  return shape ?? (json ? 'json' : 'text');
}

function originFrom(value: unknown): MapOrigin {
  const parts = String(value).split(',');
  if (parts.length !== 2) throw new UsageError(`--origin wants LATITUDE,LONGITUDE in degrees, found "${String(value)}"`);
  const latDeg = numberFrom('origin', parts[0], -LARGEST_LATITUDE_DEG, LARGEST_LATITUDE_DEG);
  return { latDeg, lonDeg: numberFrom('origin', parts[1], -180, 180) };
}

/** Every document of every file; a file that can't be read is its faults and nothing more. */
function collectedFrom(files: readonly string[]): readonly Collected[] {
  const collect = makeCollector();
  return files.flatMap((file, i) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${i + 1} of ${files.length} files\x1b[K${i + 1 === files.length ? '\n' : ''}`);
    try {
      const { documents, faults } = readableDocuments(file, textOf(file));
      return [...documents.map(({ name, value }) => collect(name, value)), { table: EMPTY_TABLE, faults }];
    } catch (error) {
      if (error instanceof InputFaults) return [{ table: EMPTY_TABLE, faults: error.faults }];
      throw error;
    }
  });
}

/** Names of files are names of people often enough. */
const numberedFiles = (faults: readonly Fault[], files: readonly string[]): readonly Fault[] =>
  faults.map((fault) => {
    const at = files.findIndex((file) => fault.file === file || fault.file.startsWith(`${file}:`));
    return { ...fault, file: `file ${at + 1}${fault.file.slice(files[at]?.length ?? fault.file.length)}` };
  });

const line = (value: unknown): string => `${JSON.stringify(value)}\n`;

function shaped(shape: Exclude<Shape, 'json'>, report: ClubReport, origin: MapOrigin): string {
  switch (shape) {
    case 'csv':
      return csvOf(report);
    case 'gpx':
      return gpxOf(report, origin);
    case 'geojson':
      return line(geojsonOf(report, origin));
    case 'xapi':
      return line(statementsOf(report));
    case 'html':
      return pageOf(report);
    case 'text':
      return printedTable(report, printed);
  }
}
