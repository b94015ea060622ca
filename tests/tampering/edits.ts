import type { Action } from '../../src/core/run/actions';
import type { Recording } from '../../src/core/run/record';
import type { Scenario } from '../../src/core/scenario/schema';

/** A run file open to the pen of whoever edits it. */
export type Open = { -readonly [K in keyof Recording]: Recording[K] };

/**
 * One kind of edit at one degree: 0 is the least that could be worth somebody's while, 1 a gross one. `random` picks the line.
 * @throws RangeError for a run that has nothing of the kind to edit
 */
export type Edit = { readonly part: Part; readonly kind: string; readonly make: (run: Open, degree: number, random: () => number) => void };
export type Part = 'scenario' | 'poses' | 'controls' | 'times' | 'heard' | 'scores';

type Tag = Scenario['tags'][number];
type Named<T extends Action['type']> = Extract<Action, { type: T }>;

function pick<T>(items: readonly T[], random: () => number): T {
  if (items.length === 0) throw new RangeError('the run has nothing of this kind to edit');
  return items[Math.floor(random() * items.length)]!;
}

/** From `least` to `most` by equal ratios. */
const scaled = (least: number, most: number, degree: number): number => least * (most / least) ** degree;
const eitherWay = (random: () => number): number => (random() < 0.5 ? 1 : -1);

/** A pulse interval and more: an edit that is undone sooner changes nothing that was heard, and so tells no lie. */
const LASTS_TICKS = 35;
/** What takes the place of an action of each kind. */
const UNDONE_BY: Partial<Record<Action['type'], readonly Action['type'][]>> = {
  turn: ['turn', 'spin'],
  walk: ['walk', 'walkTo'],
  setGain: ['setGain'],
};

/** Whether the run would be another without it: a walk that stands still and a knob set to where it stands say nothing that could be a lie. */
function changes(run: Open, [, action]: Open['log'][number], at: number): boolean {
  if (action.type === 'walk') return action.paceMPerS > 0;
  if (action.type !== 'setGain') return true;
  const before = run.log
    .slice(0, at)
    .filter(([, { type }]) => type === 'setGain')
    .at(-1)?.[1] as Named<'setGain'> | undefined;
  return action.gainDb !== (before?.gainDb ?? run.scenario.kit.startGainDb);
}

/** An action of such a kind that changes something and stays in force over a pulse at least, by itself and with `alsoFree` of other hands after it. */
function entryOf<T extends Action['type']>(
  run: Open,
  random: () => number,
  types: readonly T[],
  alsoFree: readonly Action['type'][] = [],
): [number, Named<T>] {
  const lasts = ([tick, { type }]: Open['log'][number], at: number): boolean => {
    const enders = [...(UNDONE_BY[type] ?? [type]), ...alsoFree];
    const next = run.log.slice(at + 1).find(([, later]) => enders.includes(later.type));
    return (next ? next[0] : run.ticks) - tick >= LASTS_TICKS;
  };
  return pick(
    run.log.filter((entry, at) => (types as readonly string[]).includes(entry[1].type) && changes(run, entry, at) && lasts(entry, at)),
    random,
  ) as [number, Named<T>];
}

const ordered = (run: Open): void => {
  run.log.sort(([a], [b]) => a - b);
};

const on = (part: Part, kind: string, make: Edit['make']): Edit => ({ part, kind, make });

const onTag = (kind: string, change: (tag: Tag, degree: number, random: () => number) => Tag): Edit =>
  on('scenario', kind, (run, degree, random) => {
    const [first, ...rest] = run.scenario.tags;
    run.scenario = { ...run.scenario, tags: [change(first!, degree, random), ...rest] };
  });

const onScenario = (kind: string, change: (scenario: Scenario, degree: number) => Partial<Scenario>): Edit =>
  on('scenario', kind, (run, degree) => {
    run.scenario = { ...run.scenario, ...change(run.scenario, degree) };
  });

const onHeard = (kind: string, change: (row: Open['heard'][number], degree: number, random: () => number) => void): Edit =>
  on('heard', kind, (run, degree, random) => change(pick(run.heard, random), degree, random));

const onScore = (
  kind: string,
  change: (result: NonNullable<Open['result']>, degree: number) => Partial<NonNullable<Open['result']>>,
): Edit =>
  on('scores', kind, (run, degree) => {
    run.result = { ...run.result!, ...change(run.result!, degree) };
  });

/** Up or down by so much, whichever stays a mark. A point is what two browsers may differ by. */
const moved = (score: number | null, degree: number): number => {
  const by = scaled(1.2, 60, degree);
  return score === null ? by : score + by <= 100 ? score + by : Math.max(0, score - by);
};

export const EDITS: readonly Edit[] = [
  onTag('tag moved', (tag, degree) => ({ ...tag, at: [tag.at[0] - Math.round(scaled(2, 200, degree)), tag.at[1]] })),
  onTag('tag stronger', (tag, degree) => ({ ...tag, eirpDbm: tag.eirpDbm + scaled(0.2, 9, degree) })),
  onTag('whip turned', (tag, degree) => ({ ...tag, whip: { ...tag.whip, leanDeg: tag.whip.leanDeg + scaled(2, 60, degree) } })),
  onScenario('quieter receiver', ({ kit }, degree) => ({
    kit: { ...kit, noiseFigureDb: Math.max(1, kit.noiseFigureDb - scaled(0.2, 5, degree)) },
  })),
  onScenario('wider find', ({ limits }, degree) => ({
    limits: { ...limits, findWithinM: limits.findWithinM + Math.ceil(scaled(1, 45, degree)) },
  })),
  onScenario('other draws', ({ seed }, degree) => ({ seed: `${seed}-${Math.round(1e6 * degree)}` })),
  onScenario('start moved', ({ start }, degree) => ({ start: { ...start, at: [start.at[0] + scaled(2, 150, degree), start.at[1]] } })),
  onScenario('lighter weights', ({ weights }, degree) => ({
    weights: { ...weights, quietGain: weights.quietGain + scaled(0.05, 2, degree) },
  })),

  on('poses', 'antenna turned', (run, degree, random) => {
    const [, turn] = entryOf(run, random, ['turn']);
    Object.assign(turn, { toDeg: turn.toDeg + eitherWay(random) * scaled(2, 170, degree) });
  }),
  on('poses', 'course changed', (run, degree, random) => {
    const [, walk] = entryOf(run, random, ['walk']);
    Object.assign(walk, { courseDeg: walk.courseDeg + eitherWay(random) * scaled(3, 170, degree) });
  }),
  on('poses', 'walked faster', (run, degree, random) => {
    const [, walk] = entryOf(run, random, ['walk']);
    Object.assign(walk, { paceMPerS: walk.paceMPerS + scaled(0.05, 0.4, degree) });
  }),
  on('poses', 'a turn left out', (run, _degree, random) => {
    run.log.splice(run.log.indexOf(entryOf(run, random, ['turn'])), 1);
  }),
  on('poses', 'a turn put in', (run, degree, random) => {
    const [tick, { toDeg }] = entryOf(run, random, ['turn']);
    run.log.push([tick + 1, { type: 'turn', toDeg: toDeg + scaled(5, 170, degree) }]);
    ordered(run);
  }),

  on('controls', 'less gain', (run, degree, random) => {
    const [, set] = entryOf(run, random, ['setGain']);
    Object.assign(set, { gainDb: set.gainDb - scaled(1, 30, degree) });
  }),
  on('controls', 'a setting left out', (run, _degree, random) => {
    run.log.splice(run.log.indexOf(entryOf(run, random, ['setGain'])), 1);
  }),
  on('controls', 'a step of the attenuator put in', (run, degree, random) => {
    const [tick] = entryOf(run, random, ['setGain'], ['setAttenuator']);
    const before = run.log.filter(([at, { type }]) => at <= tick && type === 'setAttenuator').at(-1)?.[1] as
      | Named<'setAttenuator'>
      | undefined;
    const steps = [0, 10, 20, 30].filter((step) => step !== (before?.attenuatorDb ?? 0));
    run.log.push([tick + 1, { type: 'setAttenuator', attenuatorDb: steps[Math.min(2, Math.floor(3 * degree))]! }]);
    ordered(run);
  }),
  on('controls', 'dial turned', (run, degree, random) => {
    const [tick] = entryOf(run, random, ['setGain'], ['tune']);
    run.log.push([tick + 1, { type: 'tune', tunedMHz: run.scenario.tags[0]!.frequencyMHz - 0.001 - scaled(0.0002, 0.01, degree) }]);
    ordered(run);
  }),

  // A whole pulse apart at least, so that one is heard with the hand where it was before.
  on('times', 'done later', (run, degree, random) => {
    const entry = entryOf(run, random, ['turn', 'setGain']);
    entry[0] += Math.round(scaled(21, LASTS_TICKS, degree));
    ordered(run);
  }),
  on('times', 'done earlier', (run, degree, random) => {
    const entry = entryOf(run, random, ['turn', 'setGain']);
    const by = Math.round(scaled(LASTS_TICKS, 80, degree));
    // The one before must have stood long enough to be heard without it.
    entry[0] = Math.max(0, entry[0] - by);
    ordered(run);
  }),
  on('times', 'cut short', (run, degree) => {
    run.ticks -= Math.round(scaled(25, 300, degree));
    run.log = run.log.filter(([tick]) => tick < run.ticks);
  }),
  on('times', 'all of it sooner', (run, degree) => {
    const by = Math.round(scaled(21, 60, degree));
    run.log = run.log.map(([tick, action]): [number, Action] => [Math.max(0, tick - by), action]);
  }),

  onHeard('level', (row, degree) => {
    row[2] += scaled(0.03, 20, degree);
  }),
  onHeard('loudness', (row, degree) => {
    row[3] += scaled(0.03, 20, degree);
  }),
  onHeard('heard or not', (row) => {
    row[4] = !row[4];
  }),
  onHeard('pitch', (row, degree) => {
    row[1] += scaled(0.3, 200, degree);
  }),
  onHeard('S-meter', (row, degree) => {
    row[6] += scaled(0.3, 6, degree);
  }),
  onHeard('moment', (row, degree) => {
    row[0] += Math.round(scaled(1, 900, degree));
  }),
  on('heard', 'a pulse left out', (run, _degree, random) => {
    run.heard.splice(Math.floor(random() * run.heard.length), 1);
  }),
  on('heard', 'a pulse put in', (run, _degree, random) => {
    const at = Math.floor(random() * run.heard.length);
    run.heard.splice(at, 0, [...run.heard[at]!]);
  }),

  onScore('technique', ({ technique }, degree) => ({ technique: moved(technique, degree) })),
  onScore('a habit', ({ quietGain }, degree) => ({ quietGain: moved(quietGain, degree) })),
  onScore('a habit that was not shown', ({ clearView }, degree) => ({ clearView: clearView === null ? 100 * degree : null })),
  onScore('found', ({ found }) => ({ found: !found })),
  onScore('time', ({ timeS }, degree) => ({ timeS: Math.max(0, timeS - scaled(1.5, 30, degree)) })),
];
