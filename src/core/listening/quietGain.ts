import { type Air, heardRound, makeAir } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce, madeOnceFor } from './madeOnce';
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

const GAINS_DB = Array.from({ length: 19 }, (_, i) => 5 * i);
const arcsAt = madeOnceFor((choice: number) => madeOnceFor((gainDb: number) => sameArcAtDeg({ ...start, choice }, gainDb)));

/** The arc at every gain, for a distance. */
const curveOf = ({ choice }: Settings): readonly (readonly [number, number])[] =>
  GAINS_DB.map((gainDb) => [gainDb, arcsAt(choice)(gainDb)] as const).filter(([, arcDeg]) => arcDeg > 0);

function chart({ settings }: Listened): Chart {
  const otherDb = Math.abs(settings.gainDb - ENOUGH_DB) < 20 ? TOO_MUCH_DB : ENOUGH_DB;
  return {
    name: 'Arc in which nothing changes',
    x: { from: 0, to: 90, name: 'gain', unit: 'dB', at: [0, 30, 60, 90] },
    y: { from: 0, to: 380, name: 'arc', unit: 'degrees', at: [0, 90, 180, 270, 360] },
    lines: [{ kind: 'heard', name: 'arc', points: curveOf(settings) }],
    dots: [
      {
        kind: 'now',
        name: `${sameArcAtDeg(settings, settings.gainDb)}° now`,
        x: settings.gainDb,
        y: sameArcAtDeg(settings, settings.gainDb),
      },
      { kind: 'other', name: `${sameArcAtDeg(settings, otherDb)}°`, x: otherDb, y: sameArcAtDeg(settings, otherDb) },
    ],
  };
}

function picture({ settings, ring }: Listened): Picture {
  const distanceM = distanceOf(settings);
  const reachM = distanceM * 0.82;
  const half = sameArcDeg(ring) / 2;
  const middle = loudest(ring).headingDeg;
  const fan: Spot[] = [[0, 0]];
  for (let deg = -half; deg <= half; deg += 3) {
    const rad = ((middle + deg) * Math.PI) / 180;
    fan.push([reachM * Math.sin(rad), reachM * Math.cos(rad)]);
  }
  return {
    view: 'plan',
    from: [-1.1 * distanceM, -0.9 * distanceM],
    to: [1.1 * distanceM, 1.16 * distanceM],
    said: `Plan: the transmitter ${distanceM} metres ahead, and the ${Math.round(2 * half)} degrees in which nothing changes.`,
    marks: [
      ...(half > 0 ? ([{ kind: 'outline', land: 'area', points: fan }] as const) : []),
      {
        kind: 'wave',
        points: [
          [0, distanceM],
          [0, 0],
        ],
        wave: 'direct',
        strength: 1,
      },
      { kind: 'tag', at: [0, distanceM] },
      { kind: 'you', at: [0, 0], now: true },
      { kind: 'words', at: [0.1 * distanceM, -0.06 * distanceM], text: 'you' },
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
  ahead: ({ choice }) => GAINS_DB.map((gainDb) => () => arcsAt(choice)(gainDb)),
  talkingPoints: [
    'Take the bearing at 84, 60, 40 and 20 dB, aloud, and write the four arcs on the board.',
    'A loud beep feels sure and says little. The quiet one swings from heard to gone within a hand’s breadth.',
    'Set the gain first, then sweep with the hand off the knob: a gain changed in the middle of a sweep makes two half bearings.',
    'Nearer, the same gain is too much again. Ask the room what to do before doing it.',
  ],
  handoutGainsDb: [84, 60, 40, 20],
  questions,
};
