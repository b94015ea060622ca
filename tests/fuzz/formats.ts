import { readFileSync } from 'node:fs';
import { deflateSync } from 'fflate';
import { documentsOf } from '../../src/cli/documents';
import { clubReport } from '../../src/core/club/clubReport';
import { mergeTables } from '../../src/core/club/mergeTables';
import { savedTableFrom, savedTableOf } from '../../src/core/club/savedTable';
import { packedCard, unpackedCard } from '../../src/core/club/scoreCard';
import { readEsriGrid } from '../../src/core/elevation/esriGrid';
import { onOwnGround, packedPiece } from '../../src/core/elevation/ownGround';
import { previewOf } from '../../src/core/elevation/preview';
import { gridTrouble, remarksOn } from '../../src/core/elevation/remarks';
import { clipHeights, insideGrid } from '../../src/core/elevation/window';
import { bookText, readBook } from '../../src/core/logbook/bookFile';
import { openExercise } from '../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../src/core/run/live';
import { packedHeard, packedLog } from '../../src/core/run/packedParts';
import { readRecording, recordingOf, writeRecording } from '../../src/core/run/record';
import { loadElementsFile } from '../../src/core/scenario/elementsFile';
import { InputFaults } from '../../src/core/scenario/faults';
import { loadFixFile } from '../../src/core/scenario/fixFile';
import { packedScenario, unpackedScenario } from '../../src/core/scenario/link';
import { loadScenario } from '../../src/core/scenario/load';
import { loadPaths } from '../../src/core/scenario/pathFile';
import { loadPoses } from '../../src/core/scenario/poseFile';
import { FELL, handmadeRow } from '../core/club/handmadeTable';
import { smallField } from '../core/club/smallField';
import { drawnBook } from '../core/logbook/handmadeBook';
import { plainScenario } from '../core/world/fixtureScenario';

/** A kind of file from outside: good samples of it, and its reader. */
export type Format = {
  readonly name: string;
  readonly packed?: boolean;
  readonly samples: readonly string[];
  readonly read: (text: string) => unknown;
};

/** The same with its growing parts packed, as a long run stands in its file. */
function packedRun(): string {
  const run = readRecording('short', shortRun());
  return JSON.stringify({ ...run, log: packedLog(run.log), heard: packedHeard(run.heard) });
}

function shortRun(): string {
  const exercise = openExercise(smallField('fuzzed', [640, 610], 60));
  let live = beginLive(exercise);
  for (let tick = 0; tick < 120; tick++) {
    const deeds =
      tick % 20 === 0
        ? ([
            { type: 'turn', toDeg: tick },
            { type: 'setGain', gainDb: 60 - tick / 10 },
            { type: 'mark' },
            { type: 'ruleOut', around: { eM: tick, nM: 300 } },
            { type: 'takeBack', ruling: 0 },
          ] as const)
        : [];
    live = tickOnce(exercise, live, deeds);
  }
  return writeRecording(recordingOf(exercise, live, { name: 'Rowan', by: 'person', begunAt: '2031-05-12T19:30:05+02:00' }));
}

function shortTable(): string {
  const table = mergeTables(
    { exercises: [], rows: [] },
    { exercises: [FELL], rows: [handmadeRow('Ash'), handmadeRow('Rowan', { technique: 61 })] },
  );
  return JSON.stringify({ ...savedTableOf(table, false), report: clubReport(table), faults: [] });
}

const scenarioText = JSON.stringify(plainScenario());
const openFell = readFileSync('scenarios/open-fell.json', 'utf8');
const packed = packedScenario(plainScenario());
const linked = (text: string): string => `d1.${Buffer.from(deflateSync(new TextEncoder().encode(text))).toString('base64url')}`;
const path = {
  frequencyMHz: 150,
  polarization: 'v',
  txHeightM: 1,
  rxHeightM: 1.7,
  distancesM: [0, 100, 200],
  heightsM: [1, 2, 3],
  ground: { epsR: 15, sigma: 0.005 },
};
const pose = { atS: 0, e: 500, n: 500, headingDeg: 0, rollDeg: 90, gainDb: 60, attenuatorDb: 0 };
const card = {
  title: 'Open fell',
  exercise: 'cb69d725',
  name: 'Rowan',
  by: 'person',
  technique: 71.4,
  found: true,
  timeS: 1_260,
  aided: false,
  on: '2031-05-12',
} as const;
const rods = {
  frequencyMHz: 150,
  elements: [
    { alongM: 0, lengthM: 0.95, diameterM: 0.004, driven: true },
    { alongM: 0.3, lengthM: 0.9, diameterM: 0.004 },
  ],
  mount: 'h',
};

const fellGrid = (columns: number, rows: number, cellM: number): string => {
  const row = (r: number) => Array.from({ length: columns }, (_, c) => ((r * 7 + c * 13) % 90) + 200).join(' ');
  const header = `ncols ${columns}\nnrows ${rows}\nxllcorner 4300000\nyllcorner 5200000\ncellsize ${cellM}\nNODATA_value -9999\n`;
  return header + Array.from({ length: rows }, (_, r) => row(r)).join('\n');
};

/** All that is done with an elevation file before an exercise lies on it. */
function layOnGrid(text: string): void {
  const grid = readEsriGrid('hostile', text);
  const trouble = gridTrouble(grid);
  if (trouble) throw new InputFaults([{ file: 'hostile', path: '', ...trouble }]);
  remarksOn(grid);
  previewOf(grid, 40);
  const piece = insideGrid(grid, { eastM: 0, northM: 0, sizeM: 1_000, cellM: 20 });
  const cut = clipHeights(grid, piece);
  if (typeof cut === 'string') throw new InputFaults([{ file: 'hostile', path: '', found: cut, mend: 'take another piece' }]);
  onOwnGround(plainScenario(), piece, packedPiece(cut), 'hostile');
}

export const FORMATS: readonly Format[] = [
  { name: 'scenario', samples: [scenarioText, openFell], read: (text) => loadScenario('hostile', text) },
  { name: 'run', samples: [shortRun(), packedRun()], read: (text) => readRecording('hostile', text) },
  { name: 'logbook', samples: [bookText(drawnBook('fuzzed', 12))], read: (text) => readBook('hostile', text) },
  {
    name: 'table',
    samples: [shortTable()],
    read: (text) => documentsOf('hostile', text).documents.map(({ name, value }) => savedTableFrom(name, value)),
  },
  { name: 'link', packed: true, samples: [packed, linked(scenarioText), linked('{"format":')], read: (text) => unpackedScenario(text) },
  {
    name: 'card',
    packed: true,
    samples: [packedCard(card), packedCard({ ...card, name: '', technique: null, fixOffM: 80 })],
    read: (text) => unpackedCard(text),
  },
  {
    name: 'fix',
    samples: [
      JSON.stringify({
        stations: [
          [0, 0],
          [100, 0],
          [50, 90],
        ],
        bearingsDeg: [45, 315, 180],
      }),
    ],
    read: (text) => loadFixFile('hostile', text),
  },
  { name: 'path', samples: [JSON.stringify(path), JSON.stringify([path, path])], read: (text) => loadPaths('hostile', text) },
  { name: 'poses', samples: [JSON.stringify([pose, { ...pose, atS: 5, headingDeg: 90 }])], read: (text) => loadPoses('hostile', text) },
  { name: 'elevation', samples: [fellGrid(8, 7, 160), fellGrid(12, 5, 240)], read: layOnGrid },
  { name: 'elements', samples: [JSON.stringify(rods)], read: (text) => loadElementsFile('hostile', text) },
];
