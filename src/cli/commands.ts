import { type Fault, faultLine } from '../core/scenario/faults';
import { textOf, UsageError } from './inputs';
import { printed } from './printed';

type Options = Record<string, unknown>;
type PatternInput = Parameters<typeof import('./pattern').patternCommand>[0];

export type Command = {
  readonly name: string;
  readonly takes: string;
  readonly help: string;
  readonly options: readonly (readonly [string, string])[];
  /** @returns the exit code */
  readonly run: (files: string[], options: Options, json: boolean) => Promise<number>;
};

/** Writes one result: JSON where asked for, else for people. */
function give(value: unknown, json: boolean): number {
  process.stdout.write(json ? `${JSON.stringify(value)}\n` : `${printed(value)}\n`);
  return 0;
}

const line = (value: unknown): void => void process.stdout.write(`${JSON.stringify(value)}\n`);

const tell = (faults: readonly Fault[]): void => {
  for (const fault of faults) process.stderr.write(`${faultLine(fault)}\n`);
};

const AT = ['--at <place>', 'EAST,NORTH in metres'] as const;
const LINES = ['--lines', 'each line of the input is a document of its own, however few there are'] as const;
const TAG = ['--tag <number>', 'which tag, from 0'] as const;
const SETTING = [
  ['--gain <db>', 'gain 0 to 90 dB'],
  ['--attenuator <db>', '0, 10, 20 or 30 dB'],
  ['--roll <deg>', 'antenna: 0 flat to 90 upright'],
  ['--antenna <name>', 'another antenna than the exercise starts with'],
] as const;

/** Everything the command line can do, in the order of its help. Each loads only what it needs. */
export const COMMANDS: readonly Command[] = [
  {
    name: 'path',
    takes: '<file>',
    help: 'Loss along a profile, or a list of profiles, by every model',
    options: [],
    run: async ([file], _options, json) => give((await import('./path')).pathCommand(textOf(file!), file!), json),
  },
  {
    name: 'pattern',
    takes: '[name]',
    help: 'Pattern of an antenna, by name or from its elements',
    options: [
      ['--elements <file>', 'elements of an antenna as JSON'],
      ['--step <deg>', 'step of the cuts'],
    ],
    run: async ([name], { elements, step }, json) =>
      give((await import('./pattern')).patternCommand(patternInput(name, elements, step)), json),
  },
  {
    name: 'fix',
    takes: '<file>',
    help: 'Fix from bearings, with its area',
    options: [],
    run: async ([file], _options, json) => give((await import('./fix')).fixCommand(textOf(file!), file!), json),
  },
  {
    name: 'arrivals',
    takes: '<scenario>',
    help: 'Every wave at a point, strongest first',
    options: [AT, ['--height <m>', 'antenna height, 1.7 m'], TAG],
    run: async ([file], options, json) => give((await import('./arrivals')).arrivalsCommand(file!, options), json),
  },
  {
    name: 'sweep',
    takes: '<scenario>',
    help: 'What a turn of the antenna brings at a point',
    options: [AT, ...SETTING, ['--step <deg>', 'step of the headings, 5'], TAG],
    run: async ([file], options, json) => give((await import('./sweep')).sweepCommand(file!, options), json),
  },
  {
    name: 'listen',
    takes: '<scenario>',
    help: 'Render what is heard to a WAV file',
    options: [
      AT,
      ['--turn <range>', 'FROM..TO in degrees'],
      ['--seconds <s>', 'how long'],
      ...SETTING,
      ['--poses <file>', 'a list of poses instead of a turn'],
      ['--out <file>', 'the WAV file'],
      TAG,
    ],
    run: async ([file], options, json) => give((await import('./listen')).listenCommand(file!, options), json),
  },
  {
    name: 'survey',
    takes: '<scenario>',
    help: 'A picture of the map by one quantity',
    options: [['--out <file>', 'the PNG file'], ['--what <kind>', 'loudness, excess, openness or apparent-bearing-error'], TAG],
    run: async ([file], options, json) => {
      const survey = (await import('./survey')).surveyCommand(file!, options);
      return json ? give(survey, true) : give({ ...survey, values: undefined }, false);
    },
  },
  {
    name: 'walk',
    takes: '<scenario>',
    help: 'Let a walker do an exercise',
    options: [
      ['--as <walker>', 'which walker'],
      ['--seed <number>', 'what the walker draws'],
      ['--out <file>', 'the run file'],
    ],
    run: async ([file], options, json) => give((await import('./walk')).walkCommand(file!, options), json),
  },
  {
    name: 'grade',
    takes: '<...runs>',
    help: 'Grade run files',
    options: [LINES],
    run: async (files, { lines: asLines }, json) => {
      const { lines, grades, faults } = (await import('./grade')).gradeCommand(files, asLines === true, line);
      tell(faults);
      if (lines) {
        for (const grade of grades) line(grade);
        return faults.length > 0 ? 1 : 0;
      }
      return give(grades.length === 1 && files.length === 1 ? grades[0] : grades, json);
    },
  },
  {
    name: 'table',
    takes: '<...runs>',
    help: 'The club table of run files and saved tables: replayed, checked, ranked',
    options: [
      ['--csv', 'for a spreadsheet'],
      ['--gpx', 'tracks as GPX 1.1'],
      ['--geojson', 'tracks as GeoJSON'],
      ['--xapi', 'xAPI statements'],
      ['--html', 'a page to print'],
      ['--anonymous', 'without names, for the projector'],
      ['--origin <place>', 'LATITUDE,LONGITUDE of the maps’ south-west corner in GPX and GeoJSON, 0,0'],
    ],
    run: async (files, options, json) => (await import('./table')).tableCommand(files, options, json),
  },
  {
    name: 'check',
    takes: '<...files>',
    help: 'Look for faults in scenario and run files',
    options: [LINES],
    run: async (files, { lines: asLines }, json) => {
      let lined = asLines === true;
      const results = (await import('./check')).checkCommand(files, lined, (checked) => {
        lined = true;
        line(checked);
      });
      const faults = results.flatMap((result) => result.faults);
      tell(faults);
      if (!lined) {
        if (json) give(faults, true);
        else
          process.stdout.write(
            `${results.length} checked, ${results.filter((result) => result.faults.length === 0).length} without fault\n`,
          );
      }
      return faults.length > 0 ? 1 : 0;
    },
  },
  {
    name: 'draw',
    takes: '',
    help: 'Draw a new exercise, rehearsed before it is handed out',
    options: [
      ['--seed <number>', 'what is drawn'],
      ['--lesson <name>', 'what it teaches'],
      ['--level <number>', '1 to 5'],
      ['--out <file>', 'the scenario file'],
    ],
    run: async (_files, options, json) => give((await import('./draw')).drawCommand(options), json),
  },
  {
    name: 'rate',
    takes: '<...scenarios>',
    help: 'How hard scenarios are, by rehearsal',
    options: [['--walks <number>', 'walks of the steady walker, 3']],
    run: async (files, options, json) => give((await import('./rate')).rateCommand(files, options), json),
  },
  {
    name: 'validity',
    takes: '',
    help: 'Does the grade measure technique: the validity study',
    options: [
      ['--exercises <number>', 'in the fault matrix, 5; 50 is the full study'],
      ['--state <file>', 'what is done so far, to go on from'],
      ['--report', 'write assets/guide/validity.md'],
    ],
    run: async (_files, options, json) => {
      const ran = await (await import('./validity')).validityCommand(options);
      if (!ran) return 0;
      if (json) return give(ran.study, true);
      process.stdout.write(`${ran.tables}\n`);
      return 0;
    },
  },
  {
    name: 'fidelity',
    takes: '',
    help: 'Every check value beside its reference',
    options: [
      ['--page <file>', 'also write the rows as a page of the guide'],
      ['--all', 'phenomena on all drawn grounds, not on a small sample: minutes'],
    ],
    run: async (_files, { page, all }, json) => {
      const { fidelityCommand, writeFidelityPage } = await import('./fidelity');
      const rows = fidelityCommand(all === true);
      if (page !== undefined) writeFidelityPage(String(page), rows);
      give(rows, json);
      const failed = rows.filter(({ pass }) => !pass).length;
      process.stderr.write(`${rows.length - failed} of ${rows.length} rows pass\n`);
      return 0;
    },
  },
];

function patternInput(name: string | undefined, elements: unknown, step: unknown): PatternInput {
  if ((name === undefined) === (elements === undefined)) throw new UsageError('pattern wants either a name or --elements FILE');
  const stepDeg = step === undefined ? {} : { stepDeg: Number(step) };
  if (name !== undefined) return { name, ...stepDeg };
  return { elementsText: textOf(String(elements)), elementsFile: String(elements), ...stepDeg };
}
