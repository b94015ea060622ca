import { directWave } from '../radio/directWave';
import { GROUND, permittivity } from '../radio/ground';
import { hillEchoes } from '../radio/hillEcho';
import type { Facet } from '../radio/hillFacets';
import type { Wave } from '../radio/wave';
import { lengthOfVector, minus, unit, type Vector, wavePowerDbm } from '../radio/waveVector';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import { type Air, heardAt, makeAir, RING_HEADINGS, TAG_MHZ } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce, madeOnceFor } from './madeOnce';
import { type Picture, type PictureMark, type Spot, strengthOf } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { CHEST_M, makeSmallScene, type SmallScene } from './smallScene';

const EIRP_DBM = 6;
const WALK_M = 100;
const TAG = { eM: 700, nM: 1_000 };
/** The walk goes north, towards the ridge; it begins where both waves are about as strong. */
const HOME = { eM: 700, nM: 134 };
/** A ridge of 45 m across the line of sight, and a rocky hillside behind the walker's left shoulder that looks over it. */
const RIDGE = { nM: 400, heightM: 45, halfWidthM: 140 } as const;
const HILL = { footM: 760, heightM: 120, widthM: 260 } as const;
/** The piece of hillside that shines. */
const SHINING = { eM: 540, nM: 70, sizeM: 150, reflectance: 0.2, roughnessM: 0.6 } as const;

function heightM(eM: number, nM: number): number {
  const up = Math.min(1, Math.max(0, (HILL.footM - eM - nM) / Math.SQRT2 / HILL.widthM));
  return 100 + RIDGE.heightM * Math.exp(-(((nM - RIDGE.nM) / RIDGE.halfWidthM) ** 2)) + HILL.heightM * up * up * (3 - 2 * up);
}

/** The ground and the lit hillside. The place that shines is lit by its nearest radial alone, as every hillside of an exercise is. */
const scene = madeOnce((): { readonly small: SmallScene; readonly facet: Facet } => {
  const small = makeSmallScene({ sizeM: 1_100, tag: { at: TAG }, heightM, relief: HILL.heightM });
  const slope = (e: number, n: number) =>
    (heightM(SHINING.eM + e, SHINING.nM + n) - heightM(SHINING.eM - e, SHINING.nM - n)) / (2 * (e + n));
  const centre: Vector = [SHINING.eM, SHINING.nM, heightM(SHINING.eM, SHINING.nM) + 1];
  const facet: Facet = {
    centre,
    normal: unit([-slope(20, 0), -slope(0, 20), 1]),
    areaM2: SHINING.sizeM ** 2,
    halfM: SHINING.sizeM / 2,
    rho: SHINING.reflectance,
    roughnessM: SHINING.roughnessM,
    incident: directWave(small.site, SHINING, 8, true).wave,
    r1M: lengthOfVector(minus([TAG.eM, TAG.nM, heightM(TAG.eM, TAG.nM)], centre)),
  };
  return { small, facet };
});

/** Direct wave and hillside's wave at a place of the walk. Scatter is left out: this page is about one hillside. */
function wavesAt(walkM: number): readonly Wave[] {
  const { small, facet } = scene();
  const at = { eM: HOME.eM, nM: HOME.nM + walkM };
  const receiver: Vector = [at.eM, at.nM, heightM(at.eM, at.nM) + CHEST_M];
  const eps = permittivity(GROUND.wet, TAG_MHZ);
  return [small.direct(at), ...hillEchoes([facet], { world: small.world, receiver, frequencyMHz: TAG_MHZ, eps })];
}

const air = keptBy(
  ({ walkM, choice }) => `${walkM}/${choice}`,
  ({ walkM, choice }): Air => makeAir({ waves: wavesAt(walkM).filter(({ kind }) => choice === 0 || kind === 'direct'), eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 56 };

/** Headings of the ring's peaks, strongest first, at most 15 dB under the strongest. */
export function peaksDeg(settings: Settings): readonly number[] {
  const here = air(settings);
  const powers = RING_HEADINGS.map((deg) => here.powerDbm(deg, settings.rollDeg));
  const n = powers.length;
  const top = Math.max(...powers);
  return RING_HEADINGS.filter(
    (_, i) => powers[i]! > powers[(i + 1) % n]! && powers[i]! >= powers[(i + n - 1) % n]! && powers[i]! > top - 15,
  ).sort((a, b) => here.powerDbm(b, settings.rollDeg) - here.powerDbm(a, settings.rollDeg));
}

/** The peak nearest to the transmitter and the one nearest to the hillside; null where they have run into one. */
export function sidesDeg(settings: Settings): { readonly trueDeg: number | null; readonly falseDeg: number | null } {
  const echo = wavesAt(settings.walkM).find(({ kind }) => kind === 'hillside');
  const near = (deg: number) => peaksDeg(settings).find((peak) => Math.abs(turnDeg(deg, peak)) < 45) ?? null;
  return { trueDeg: near(0), falseDeg: settings.choice === 0 && echo ? near(echo.azimuthDeg) : null };
}

function says({ settings }: Listened): readonly Piece[] {
  if (settings.choice === 1)
    return ['With the hillside taken away ', { strong: 'one side is left' }, ', weak and true. The ridge takes most of it.'];
  const now = sidesDeg(settings);
  if (now.trueDeg === null || now.falseDeg === null)
    return ['Here the two waves ', { strong: 'run into one another' }, '. A few steps on they part again.'];
  if (settings.walkM === 0)
    return ['Two sides, ', { strong: 'both of them loud' }, ', at a gain where the back is long gone. One is a hillside. Which?'];
  const before = sidesDeg({ ...settings, walkM: 0 });
  const swung = (a: number | null, b: number | null) => (a === null || b === null ? 0 : Math.abs(Math.round(turnDeg(a, b))));
  return [
    `After ${settings.walkM} m one side has swung by `,
    { strong: `${swung(before.falseDeg, now.falseDeg)}°` },
    ', the other by ',
    { strong: `${swung(before.trueDeg, now.trueDeg)}°` },
    '. What is far away stays where it is; the near hillside swings.',
  ];
}

const PLACES_M = Array.from({ length: 11 }, (_, i) => 10 * i);
const sidesAt = madeOnceFor((walkM: number) => sidesDeg({ ...start, walkM }));
function swingLines(): Pick<Chart, 'lines'> {
  const sides = PLACES_M.map((walkM) => ({ walkM, ...sidesAt(walkM) }));
  const line = (key: 'trueDeg' | 'falseDeg') =>
    sides.flatMap((side) => {
      const deg = side[key];
      return deg === null ? [] : [[side.walkM, turnDeg(0, deg)] as const];
    });
  return {
    lines: [
      { kind: 'truth', name: 'transmitter', points: line('trueDeg') },
      { kind: 'heard', name: 'hillside', points: line('falseDeg') },
    ],
  };
}

function chart({ settings }: Listened): Chart {
  const { falseDeg, trueDeg } = sidesDeg(settings);
  const dot = (deg: number | null) =>
    deg === null ? [] : [{ kind: 'now' as const, name: `${Math.round(turnDeg(0, deg))}°`, x: settings.walkM, y: turnDeg(0, deg) }];
  return {
    name: 'Where the loud sides are',
    x: { from: 0, to: WALK_M, name: 'walked', unit: 'm', at: [0, 50, 100] },
    y: { from: -180, to: 60, name: 'heading', unit: 'degrees', at: [-180, -90, 0] },
    ...swingLines(),
    dots: [...dot(trueDeg), ...dot(falseDeg)],
  };
}

function picture({ settings }: Listened): Picture {
  const you: Spot = [0, settings.walkM];
  const off = (eM: number, nM: number): Spot => [eM - HOME.eM, nM - HOME.nM];
  const waves = wavesAt(settings.walkM);
  const power = (kind: Wave['kind']) =>
    Math.max(...waves.filter((wave) => wave.kind === kind).map((wave) => wavePowerDbm(wave, EIRP_DBM, TAG_MHZ)));
  const top = Math.max(...waves.map((wave) => wavePowerDbm(wave, EIRP_DBM, TAG_MHZ)));
  const shine = off(SHINING.eM, SHINING.nM);
  const tag = off(TAG.eM, TAG.nM);
  const hill: PictureMark[] = [80, 130, 180].map((back) => ({
    kind: 'edge',
    points: [off(HILL.footM - 190 - back * 1.2, 190), off(HILL.footM + 20 - back * 1.2, -20)],
  }));
  return {
    view: 'plan',
    from: [-560, -200],
    to: [560, 940],
    said: 'Plan: the transmitter far ahead behind a ridge; a hillside behind your left shoulder sends its wave on to you.',
    marks: [
      ...(settings.choice === 0 ? hill : []),
      {
        kind: 'edge',
        points: [
          [-560, RIDGE.nM - HOME.nM],
          [560, RIDGE.nM - HOME.nM],
        ],
      },
      {
        kind: 'edge',
        points: [
          [-560, RIDGE.nM - HOME.nM + 60],
          [560, RIDGE.nM - HOME.nM + 60],
        ],
      },
      { kind: 'words', at: [260, RIDGE.nM - HOME.nM + 90], text: 'ridge' },
      { kind: 'wave', points: [tag, you], wave: 'direct', strength: strengthOf(power('direct'), top) },
      ...(settings.choice === 0
        ? ([{ kind: 'wave', points: [tag, shine, you], wave: 'hillside', strength: strengthOf(power('hillside'), top) }] as const)
        : []),
      { kind: 'words', at: [-500, -120], text: 'hillside' },
      { kind: 'tag', at: tag },
      { kind: 'you', at: you, now: true },
      { kind: 'words', at: [tag[0] + 45, tag[1] - 16], text: 'transmitter' },
      { kind: 'words', at: [you[0] + 45, you[1] - 16], text: 'you' },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const towards = (walkM: number, deg: number | null, gainDb = start.gainDb): Settings => ({
    ...start,
    walkM,
    gainDb,
    headingDeg: wrapBearingDeg(deg ?? 0),
  });
  const [first, last] = [sidesDeg(start), sidesDeg({ ...start, walkM: WALK_M })];
  const named = (settings: readonly Settings[]) => settings.map((one, i) => ({ name: ['First', 'Second'][i]!, settings: one }));
  const keep = random() < 0.5;
  const [before, after] = keep ? [first.trueDeg, last.trueDeg] : [first.falseDeg, last.falseDeg];
  const swungDeg = Math.abs(Math.round(turnDeg(before!, after!)));
  const away = oneOf([90, 135], random);
  const without = { ...towards(0, away), choice: 0 };
  const heard = heardAt(air(without), without, away);
  return [
    whichIsLoudest(
      'Two loud sides at one place. Which is the louder? (It need not be the true one.)',
      air,
      named([towards(0, first.trueDeg, 66), towards(0, first.falseDeg, 66)]),
      'No ear can say',
    ),
    yesOrNo(
      `A loud side that moved by ${swungDeg}° over 100 m. Is it a near hillside’s?`,
      named([towards(0, before), towards(WALK_M, after)]),
      !keep,
      keep ? 'It was the transmitter itself, far away: it hardly moves' : 'It was the hillside: near things swing',
    ),
    yesOrNo(
      'A third heading at the same gain. Is there a third side?',
      [{ name: 'The heading', settings: without }],
      heard.audible,
      `${Math.round(Math.abs(heard.loudnessDb))} dB ${heard.audible ? 'over' : 'under'} just heard`,
    ),
  ];
}

export const bounce: Demonstration = {
  id: 'bounce',
  title: 'Bounce',
  scene: 'a ridge between, and a hillside that shines',
  listenFor: 'Find both loud sides. Walk the hundred metres and find them again: which one has stayed?',
  start,
  dials: [
    { key: 'walkM', name: 'Walk on', from: 0, to: WALK_M, step: 10, unit: 'm' },
    { key: 'choice', name: 'Hillside', from: 0, to: 1, step: 1, unit: '', choices: ['there', 'taken away'] },
  ],
  air,
  says,
  ways: [
    { name: 'Here', sets: { walkM: 0 } },
    { name: '100 m on', sets: { walkM: WALK_M } },
  ],
  picture,
  chart,
  ahead: () => PLACES_M.map((walkM) => () => sidesAt(walkM)),
  talkingPoints: [
    'This is no back signal: the gain is low enough, and the second side is not opposite.',
    'Between you and the transmitter the ridge takes thirty decibels. The hillside sees over it and sends on what it has.',
    'Loudness can’t tell true from bounce. Walking can: the far one stays, the near one swings.',
    'On the way the two waves add and cancel, and the peaks wobble. Take the bearing again a few steps on.',
  ],
  handoutGainsDb: [86, 70, 56, 46],
  questions,
};
