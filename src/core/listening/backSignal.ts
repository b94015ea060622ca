import { wrapBearingDeg } from '../units/angles';
import { type Air, type Heard, heardAt } from './air';
import type { Demonstration, Listened, Piece } from './demonstration';
import { limiterChart } from './limiterChart';
import { openGround } from './openGround';
import type { Picture, PictureMark, Spot } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { heardSides } from './soundRing';

const AHEAD_M = 300;
const STEP_ASIDE_M = 100;
/** Too much gain for this distance, and enough of it, dB. */
const TOO_MUCH_DB = 84;
const ENOUGH_DB = 12;

const ground = openGround({ aheadM: AHEAD_M, eirpDbm: 6 });
const air = ({ walkM }: Settings): Air => ground.air(walkM);
const start: Settings = { ...FIRST_SETTINGS, gainDb: TOO_MUCH_DB };

/** Front and back as the ear has them at a place and gain. */
export function frontAndBack(settings: Settings): { readonly front: Heard; readonly back: Heard } {
  const bearing = ground.tagBearingDeg(settings.walkM);
  const at = (headingDeg: number) => heardAt(air(settings), settings, headingDeg);
  return { front: at(bearing), back: at(wrapBearingDeg(bearing + 180)) };
}

function says({ settings }: Listened): readonly Piece[] {
  const { front, back } = frontAndBack(settings);
  const gapDb = front.levelDb - back.levelDb;
  if (!front.audible) return ['At this gain you hear ', { strong: 'nothing at all' }, '. Give a little more.'];
  if (!back.audible)
    return ['At this gain only ', { strong: 'the true side is left' }, '. Turn right round: behind you there is nothing but hiss.'];
  if (gapDb < 2)
    return [
      'At this gain the beep is ',
      { strong: 'as loud behind you as in front' },
      '. The receiver has no more loudness to give: both sides are flat out.',
    ];
  return [
    'Behind you the beep is ',
    { strong: `${Math.round(gapDb)} dB softer` },
    ', and still plain to hear. Less gain, until one side is left.',
  ];
}

/** Bearings that an ear would take at a place: the loudest heading, and the other side where it is heard too. */
function bearingsFrom(settings: Settings): PictureMark[] {
  const from = ground.at(settings.walkM);
  const at = air(settings);
  const ring = Array.from({ length: 120 }, (_, i) => heardAt(at, settings, 3 * i));
  return heardSides(ring).map(({ headingDeg }, i) => ({ kind: 'bearing', from, to: reached(from, headingDeg), back: i > 0 }));
}

const LINE_M = 470;
const reached = ([x, y]: Spot, headingDeg: number): Spot => [
  x + LINE_M * Math.sin((headingDeg * Math.PI) / 180),
  y + LINE_M * Math.cos((headingDeg * Math.PI) / 180),
];

function picture({ settings }: Listened): Picture {
  const { walkM } = settings;
  const here = ground.at(walkM);
  const stations = walkM > 0 ? [{ ...settings, walkM: 0 }, settings] : [settings];
  const { back } = frontAndBack(settings);
  return {
    view: 'plan',
    from: [-260, -330],
    to: [300, 370],
    said: `Plan: the transmitter ${AHEAD_M} metres ahead. ${walkM > 0 ? 'From two places the true bearings cross on it' : 'One bearing'}${back.audible ? ', the back bearings lead apart' : ''}.`,
    marks: [
      ...stations.flatMap(bearingsFrom),
      { kind: 'wave', points: [ground.tag, here], wave: 'direct', strength: 1 },
      { kind: 'tag', at: ground.tag },
      ...(walkM > 0 ? ([{ kind: 'you', at: ground.at(0), now: false }] as const) : []),
      { kind: 'you', at: here, now: true },
      { kind: 'words', at: [here[0] + 26, here[1] - 8], text: walkM > 0 ? '100 m on' : 'you' },
      { kind: 'words', at: [22, AHEAD_M - 6], text: 'transmitter' },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const facing = (headingDeg: number, gainDb: number): Settings => ({ ...start, headingDeg, gainDb });
  const trueFirst = random() < 0.5;
  const ways = (gainDb: number) =>
    (trueFirst ? [0, 180] : [180, 0]).map((headingDeg, i) => ({ name: ['First', 'Second'][i]!, settings: facing(headingDeg, gainDb) }));
  const loud = oneOf([84, 86, 88, 90], random);
  const soft = oneOf([20, 22, 24], random);
  const hush = oneOf([6, 8, 10, 30, 34, 38], random);
  const behind = heardAt(air(start), facing(180, hush), 180);
  return [
    whichIsLoudest('Two ways of facing, the same gain. Which one faces the transmitter?', air, ways(loud), 'No ear can say'),
    whichIsLoudest('The same two ways with less gain. Which one faces the transmitter?', air, ways(soft), 'No ear can say'),
    yesOrNo(
      'Now facing straight away from it. Is the back signal gone?',
      [{ name: 'Away', settings: facing(180, hush) }],
      !behind.audible,
      behind.audible
        ? `At ${hush} dB it is still ${Math.round(behind.loudnessDb)} dB over just heard`
        : `At ${hush} dB it lies ${Math.round(-behind.loudnessDb)} dB under what an ear hears`,
    ),
  ];
}

export const backSignal: Demonstration = {
  id: 'back-signal',
  title: 'Back signal',
  scene: 'one transmitter, 300 m ahead, in view',
  listenFor: 'Listen in front, then behind: is there any difference? Lower the gain until there is only one side.',
  start,
  dials: [{ key: 'walkM', name: 'Read again', from: 0, to: STEP_ASIDE_M, step: STEP_ASIDE_M, unit: 'm', choices: ['here', '100 m on'] }],
  air,
  says,
  ways: [
    { name: 'Too much gain', sets: { gainDb: TOO_MUCH_DB } },
    { name: 'Just enough', sets: { gainDb: ENOUGH_DB } },
  ],
  picture,
  chart({ settings }) {
    const now = frontAndBack(settings);
    const gainDb = Math.abs(settings.gainDb - ENOUGH_DB) < 15 ? TOO_MUCH_DB : ENOUGH_DB;
    const other = frontAndBack({ ...settings, gainDb });
    const words = gainDb < settings.gainDb ? 'less gain' : 'more gain';
    return limiterChart([
      { name: `front, ${words}`, heard: other.front, kind: 'other' },
      { name: `back, ${words}`, heard: other.back, kind: 'other' },
      { name: 'front', heard: now.front, kind: 'now' },
      { name: 'back', heard: now.back, kind: 'now' },
    ]);
  },
  talkingPoints: [
    'Ask the room before you turn: where is it? Turn right round once. Nobody can say.',
    'The antenna hears the back 18 dB weaker. At this gain the receiver makes both as loud as it can.',
    'Take gain away slowly and stop when the back is gone. That number is the gain to sweep with.',
    'Walk 100 m and read again: the true bearings cross, the back bearings lead apart.',
  ],
  handoutGainsDb: [84, 60, 36, 12],
  questions,
};
