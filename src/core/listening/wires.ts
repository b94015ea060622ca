import { GROUND, permittivity } from '../radio/ground';
import { type LitLine, litLines } from '../radio/litLine';
import { lineEchoes } from '../radio/powerLineEcho';
import type { Wave } from '../radio/wave';
import { type Vector, wavePowerDbm } from '../radio/waveVector';
import { type Air, heardAt, makeAir, RING_HEADINGS, TAG_MHZ } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce } from './madeOnce';
import { type Picture, type Spot, strengthOf } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { CHEST_M, makeSmallScene, type SmallScene } from './smallScene';
import { towerLine } from './towerLine';

const EIRP_DBM = 6;
/** Never nearer to a line than 20 m, here as outdoors. */
const ASIDE_M = 25;
const LINE_N_M = 60;
/** The line stands under a bank 14 m high; the tag, a bird's, sits 8 m up a tree on top, its whip lying along the line. */
const BANK = { fromM: 92, widthM: 60, heightM: 14 } as const;
const TAG = { eM: 400, nM: 760 };
const WHIP = { heightM: 8, leanDeg: 80, towardDeg: 90 } as const;
const LINE = { towersM: [160, 280, 400, 520, 640], lineNM: LINE_N_M, towerHeightM: 34, wireHeightM: 28 } as const;

function heightM(_eM: number, nM: number): number {
  const up = Math.min(1, Math.max(0, (nM - BANK.fromM) / BANK.widthM));
  return 100 + BANK.heightM * up * up * (3 - 2 * up);
}

const scene = madeOnce((): { readonly small: SmallScene; readonly lit: readonly LitLine[] } => {
  const small = makeSmallScene({ sizeM: 800, tag: { at: TAG, ...WHIP }, heightM, powerLines: [towerLine(LINE)], mirrored: true });
  return { small, lit: litLines(small.site) };
});

/** Where one stands: the transmitter's side of the line, or across it. */
const placeOf = ({ walkM }: Settings): number => LINE_N_M + (walkM === 0 ? ASIDE_M : -ASIDE_M);

function wavesAt(settings: Settings): readonly Wave[] {
  const { small, lit } = scene();
  const at = { eM: TAG.eM, nM: placeOf(settings) };
  const receiver: Vector = [at.eM, at.nM, heightM(at.eM, at.nM) + CHEST_M];
  const echoes = lineEchoes(lit, { world: small.world, receiver, frequencyMHz: TAG_MHZ, eps: permittivity(GROUND.wet, TAG_MHZ) });
  return [small.direct(at), ...(settings.choice === 0 ? echoes : [])];
}

const air = keptBy(
  ({ walkM, choice }) => `${walkM}/${choice}`,
  (settings): Air => makeAir({ waves: wavesAt(settings), eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 32, rollDeg: 0 };

/** Heading with one's back to the wires. */
const awayDeg = ({ walkM }: Settings): number => (walkM === 0 ? 0 : 180);

/** The two-sided test: back to the wires, the same gain on both sides of the line. */
export function twoSides(settings: Settings) {
  const side = (walkM: number) => {
    const there = { ...settings, walkM };
    return heardAt(air(there), there, awayDeg(there));
  };
  return { near: side(0), across: side(2 * ASIDE_M) };
}

/** Loudest heading, degrees. */
export function loudestDeg(settings: Settings): number {
  const here = air(settings);
  return RING_HEADINGS.reduce(
    (best, deg) => (here.powerDbm(deg, settings.rollDeg) > here.powerDbm(best, settings.rollDeg) ? deg : best),
    0,
  );
}

function says({ settings }: Listened): readonly Piece[] {
  const { near, across } = twoSides(settings);
  const gapDb = Math.round(near.driveDb - across.driveDb);
  const atLine = Math.abs(Math.cos(((loudestDeg(settings) - awayDeg(settings)) * Math.PI) / 180) + 1) < 0.5;
  if (settings.choice === 1)
    return [
      'Without the wires the loudest side is ',
      { strong: settings.walkM === 0 ? 'the transmitter’s' : 'the transmitter’s, over the line' },
      '. With them nobody could tell.',
    ];
  if (settings.walkM === 0)
    return [
      atLine ? 'The loudest side ' : 'A loud side ',
      { strong: 'points at the wires' },
      '. Turn your back to them, set the gain until you just hear it, and keep it.',
    ];
  return [
    'Across the line, back to the wires, the same gain: ',
    { strong: across.audible ? `${gapDb} dB softer` : 'nothing' },
    '. So it lies on the other side, where it was louder.',
  ];
}

function chart({ settings }: Listened): Chart {
  const line = (choice: number) => {
    const there = { ...settings, choice };
    const here = air(there);
    return [...RING_HEADINGS, 360].map((deg) => [deg, heardAt(here, there, deg % 360).loudnessDb] as const);
  };
  const away = heardAt(air(settings), settings, awayDeg(settings));
  return {
    name: 'Once round',
    x: { from: 0, to: 360, name: 'heading', unit: 'degrees', at: [0, 90, 180, 270, 360] },
    y: { from: -30, to: 50, name: 'over just heard', unit: 'dB', at: [-25, 0, 25, 50] },
    lines: [
      { kind: 'heard', name: settings.choice === 0 ? 'with the wires' : 'heard', points: line(settings.choice) },
      ...(settings.choice === 0 ? ([{ kind: 'truth', name: 'without them', points: line(1) }] as const) : []),
    ],
    dots: [{ kind: 'now', name: 'back to wires', x: awayDeg(settings), y: away.loudnessDb }],
  };
}

function picture({ settings }: Listened): Picture {
  const y = placeOf(settings) - LINE_N_M;
  const you: Spot = [0, y];
  const waves = wavesAt(settings);
  const powers = (kind: Wave['kind']) => waves.filter((wave) => wave.kind === kind).map((wave) => wavePowerDbm(wave, EIRP_DBM, TAG_MHZ));
  const top = Math.max(...waves.map((wave) => wavePowerDbm(wave, EIRP_DBM, TAG_MHZ)));
  return {
    view: 'plan',
    from: [-96, -60],
    to: [96, 100],
    said: `Plan: a power line from left to right, you ${ASIDE_M} metres ${y > 0 ? 'on the transmitter’s side' : 'on the far side'} of it.`,
    marks: [
      {
        kind: 'edge',
        points: [
          [-96, BANK.fromM - LINE_N_M],
          [96, BANK.fromM - LINE_N_M],
        ],
      },
      {
        kind: 'edge',
        points: [
          [-96, BANK.fromM - LINE_N_M + 22],
          [96, BANK.fromM - LINE_N_M + 22],
        ],
      },
      {
        kind: 'wires',
        points: [
          [-96, 0],
          [96, 0],
        ],
        poles: [[0, 0]],
      },
      {
        kind: 'wave',
        points: [
          [6, 100],
          [6, y],
        ],
        wave: 'direct',
        strength: strengthOf(powers('direct')[0]!, top),
      },
      ...(settings.choice === 0
        ? ([
            { kind: 'wave', points: [[-26, 100], [-26, 0], you], wave: 'wire', strength: strengthOf(Math.max(...powers('wire')), top) },
          ] as const)
        : []),
      { kind: 'you', at: you, now: true },
      { kind: 'words', at: [14, 86], text: 'transmitter' },
      { kind: 'words', at: [44, -13], text: 'wires' },
      { kind: 'words', at: [52, BANK.fromM - LINE_N_M + 5], text: 'bank' },
      { kind: 'words', at: [9, y - 3], text: 'you' },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const away = (walkM: number, gainDb = start.gainDb): Settings => {
    const there = { ...start, walkM, gainDb };
    return { ...there, headingDeg: awayDeg(there) };
  };
  const swap = random() < 0.5;
  const named = (all: readonly Settings[]) => all.map((settings, i) => ({ name: ['First', 'Second'][i]!, settings }));
  const gainDb = oneOf([26, 30, 34], random);
  const facing = (headingDeg: number): Settings => ({ ...start, gainDb, headingDeg });
  const [atLine, fromLine] = [facing(180), facing(0)];
  const loud = oneOf([32, 90], random);
  const sides = twoSides({ ...start, gainDb: loud });
  return [
    whichIsLoudest(
      'Back to the wires on either side, the same gain. On which side is the transmitter?',
      air,
      named(swap ? [away(50), away(0)] : [away(0), away(50)]),
      'No ear can say',
    ),
    whichIsLoudest(
      'One side of the line, two headings. Which would you have marked as the bearing?',
      air,
      named(swap ? [fromLine, atLine] : [atLine, fromLine]),
      'Either',
    ),
    yesOrNo(
      `The two-sided test at ${loud} dB. Does it tell the side?`,
      named([away(0, loud), away(50, loud)]),
      sides.near.levelDb - sides.across.levelDb > 3,
      `The sides differ by ${Math.round(sides.near.levelDb - sides.across.levelDb)} dB${sides.near.flatOut ? ': with the first flat out it is a close thing' : ''}`,
    ),
  ];
}

export const wires: Demonstration = {
  id: 'wires',
  title: 'Wires',
  scene: `${ASIDE_M} m from a power line, the transmitter over a bank`,
  listenFor: 'Turn round: the loud side is the line. Then back to the wires, set the gain, cross by the road, listen again.',
  start,
  dials: [
    { key: 'walkM', name: 'You stand', from: 0, to: 2 * ASIDE_M, step: 2 * ASIDE_M, unit: 'm', choices: ['this side', 'across'] },
    { key: 'choice', name: 'The wires', from: 0, to: 1, step: 1, unit: '', choices: ['there', 'taken away'] },
  ],
  air,
  says,
  ways: [
    { name: 'Back to them, here', sets: { walkM: 0, headingDeg: 0 } },
    { name: 'Back to them, across', sets: { walkM: 2 * ASIDE_M, headingDeg: 180 } },
  ],
  picture,
  chart,
  talkingPoints: [
    'The wires hang high and see over the bank; what they catch they send down to you. So everything points at the line.',
    'Two-sided test: back to the wires, gain until just heard, cross, turn round, the same gain. The louder side has it.',
    'It works because the antenna hears behind it 18 dB less: the wires are made the weak part.',
    'Better still: walk away from the line until it stops mattering.',
  ],
  handoutGainsDb: [86, 60, 44, 32],
  questions,
  caution: 'Outdoors: stay 20 m from overhead lines with the antenna lowered, cross only by a road or path, never go near a fallen wire.',
};
