import { type Air, heardAt, heardRound, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { limiterChart } from './limiterChart';
import { madeOnce } from './madeOnce';
import type { Picture, Spot } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { makeSmallScene } from './smallScene';
import { loudest, sameArcDeg } from './soundRing';

const DISTANCES_M = [200, 400, 800] as const;
const EIRP_DBM = 6;
const TOO_MUCH_DB = 84;
const ENOUGH_DB = 20;

const TAG = { eM: 600, nM: 1_000 };
const scene = madeOnce(() => makeSmallScene({ sizeM: 1_200, tag: { at: TAG } }));
const distanceOf = ({ choice }: Settings): number => DISTANCES_M[choice] ?? DISTANCES_M[0];
const air = keptBy(
  ({ choice }) => choice,
  (settings): Air => makeAir({ waves: [scene().direct({ eM: TAG.eM, nM: TAG.nM - distanceOf(settings) })], eirpDbm: EIRP_DBM }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: TOO_MUCH_DB, choice: 1 };

/** Degrees of the turn in which an ear hears no change, at a gain. */
export const sameArcAtDeg = (settings: Settings, gainDb: number): number => {
  const at = { ...settings, gainDb };
  return sameArcDeg(heardRound(air(at), at));
};

function says({ ring, settings }: Listened): readonly Piece[] {
  const arcDeg = sameArcDeg(ring);
  if (arcDeg === 0) return ['At ', { strong: `${settings.gainDb} dB` }, ' nothing is heard. The gain to sweep with lies a little higher.'];
  if (arcDeg >= 150)
    return [
      'At ',
      { strong: `${settings.gainDb} dB` },
      ' nothing changes over ',
      { strong: `${arcDeg}° of the turn` },
      '. That is no bearing.',
    ];
  if (arcDeg > 72)
    return ['The loudest part is ', { strong: `${arcDeg}° wide` }, '. Its middle can be guessed; less gain makes it narrow.'];
  return [
    'Now the loudest part is only ',
    { strong: `${arcDeg}° wide` },
    ' and its edges are plain: half way between them is the bearing.',
  ];
}

/** How far aside the second dot of the limiter's curve is heard, degrees. */
export const ASIDE_DEG = 60;

/** The gain of the way that is farther off. */
const otherGainDb = ({ gainDb }: Settings): number => (Math.abs(gainDb - ENOUGH_DB) < 20 ? TOO_MUCH_DB : ENOUGH_DB);

function chart({ settings, air: here }: Listened): Chart {
  const otherDb = otherGainDb(settings);
  const words = otherDb < settings.gainDb ? 'less gain' : 'more gain';
  const at = (gainDb: number, deg: number) => heardAt(here, { ...settings, gainDb }, deg);
  return limiterChart([
    { name: `ahead, ${words}`, heard: at(otherDb, 0), kind: 'other' },
    { name: `${ASIDE_DEG}° aside, ${words}`, heard: at(otherDb, ASIDE_DEG), kind: 'other' },
    { name: 'ahead', heard: at(settings.gainDb, 0), kind: 'now' },
    { name: `${ASIDE_DEG}° aside`, heard: at(settings.gainDb, ASIDE_DEG), kind: 'now' },
  ]);
}

/** The way from the listener along a bearing, as far as `reachM`. */
const along = (deg: number, reachM: number): Spot => [reachM * Math.sin((deg * Math.PI) / 180), reachM * Math.cos((deg * Math.PI) / 180)];

/** A part of the turn as a slice. */
function slice(middleDeg: number, arcDeg: number, reachM: number): readonly Spot[] {
  const steps = Math.max(1, Math.round(arcDeg / 3));
  const rim = Array.from({ length: steps + 1 }, (_, i) => along(middleDeg - arcDeg / 2 + (arcDeg * i) / steps, reachM));
  return arcDeg >= 360 ? rim : [[0, 0], ...rim];
}

/** The arc of the present gain as a filled slice, that of the other way as an empty one. */
function picture({ settings, ring, air: here }: Listened): Picture {
  const distanceM = distanceOf(settings);
  const other = { ...settings, gainDb: otherGainDb(settings) };
  const [arcDeg, otherDeg] = [sameArcDeg(ring), sameArcDeg(heardRound(here, other))];
  const arcs = `${arcDeg} degrees in which nothing changes, ${otherDeg} at ${other.gainDb} decibels`;
  return {
    view: 'plan',
    from: [-1.1 * distanceM, -0.62 * distanceM],
    to: [1.1 * distanceM, 1.2 * distanceM],
    said: `Plan: the transmitter ${distanceM} metres ahead, and the ${arcs}.`,
    marks: [
      ...(arcDeg > 0
        ? ([{ kind: 'outline', land: 'area', points: slice(loudest(ring).headingDeg, arcDeg, distanceM * 0.86) }] as const)
        : []),
      ...(otherDeg > 0 ? ([{ kind: 'edge', points: [...slice(0, otherDeg, distanceM * 0.6), [0, 0]] }] as const) : []),
      { kind: 'wave', points: [along(0, distanceM), along(0, 0)], wave: 'direct', strength: 1 },
      { kind: 'tag', at: along(0, distanceM) },
      { kind: 'you', at: along(0, 0), now: true },
      { kind: 'words', at: [0.07 * distanceM, 1.02 * distanceM], text: 'transmitter' },
      { kind: 'words', at: [-0.05 * distanceM, -0.19 * distanceM], text: 'you' },
      ...(arcDeg > 0 ? ([{ kind: 'words', at: [0.36 * distanceM, 0.6 * distanceM], text: `${arcDeg}° now` }] as const) : []),
      ...(otherDeg > 0
        ? ([{ kind: 'words', at: [-0.98 * distanceM, -0.48 * distanceM], text: `thin: ${otherDeg}° at ${other.gainDb} dB` }] as const)
        : []),
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const offDeg = oneOf([30, 36, 42], random) * (random() < 0.5 ? -1 : 1);
  const facing = (headingDeg: number, gainDb: number): Settings => ({ ...start, headingDeg: (headingDeg + 360) % 360, gainDb });
  const swap = random() < 0.5;
  const pair = (gainDb: number) =>
    (swap ? [offDeg, 0] : [0, offDeg]).map((deg, i) => ({ name: ['First', 'Second'][i]!, settings: facing(deg, gainDb) }));
  const [loud, soft] = [oneOf([80, 84, 88], random), oneOf([20, 22, 24], random)];
  const arcs = [sameArcAtDeg(start, loud), sameArcAtDeg(start, soft)] as const;
  return [
    whichIsLoudest(`Two headings ${Math.abs(offDeg)}° apart. Which points at the transmitter?`, air, pair(loud), 'No ear can say'),
    whichIsLoudest('The same two headings with less gain. Which points at the transmitter?', air, pair(soft), 'No ear can say'),
    yesOrNo(
      'The second gain after the first, straight ahead. Is the second one better for a bearing?',
      [
        { name: 'First', settings: facing(0, loud) },
        { name: 'Second', settings: facing(0, soft) },
      ],
      arcs[1] < arcs[0],
      `Nothing changes over ${arcs[0]}° at ${loud} dB, over ${arcs[1]}° at ${soft} dB`,
    ),
  ];
}

export const quietGain: Demonstration = {
  id: 'quiet-gain',
  title: 'Quiet gain',
  scene: 'the same bearing, taken at four gains',
  listenFor: 'Swing the antenna past the loudest part: how far can you swing before anything changes?',
  start,
  dials: [{ key: 'choice', name: 'Distance', from: 0, to: 2, step: 1, unit: '', choices: DISTANCES_M.map((m) => `${m} m`) }],
  air,
  says,
  ways: [
    { name: 'Loud', sets: { gainDb: TOO_MUCH_DB } },
    { name: 'Quiet', sets: { gainDb: ENOUGH_DB } },
  ],
  picture,
  chart,
  talkingPoints: [
    'Take the bearing at 84, 60, 40 and 20 dB, aloud, and write the four arcs on the board.',
    'A loud beep feels sure and says little. The quiet one swings from heard to gone within a hand’s breadth.',
    'Set the gain first, then sweep with the hand off the knob: a gain changed in the middle of a sweep makes two half bearings.',
    'Nearer, the same gain is too much again. Ask the room what to do before doing it.',
  ],
  handoutGainsDb: [84, 60, 40, 20],
  questions,
};
