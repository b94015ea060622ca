import { wrapBearingDeg } from '../units/angles';
import { type Air, type Heard, heardAt, makeAir } from './air';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { limiterChart } from './limiterChart';
import { madeOnce } from './madeOnce';
import type { Picture, Spot } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { makeSmallScene } from './smallScene';

const EIRP_DBM = 6;
const CARRIED = ['yagi3', 'whip', 'off'] as const;
const CARRIED_WORDS = ['Yagi', 'whip at the chest', 'no antenna'] as const;

const TAG = { eM: 200, nM: 250 };
const scene = madeOnce(() => makeSmallScene({ sizeM: 400, tag: { at: TAG } }));
const air = keptBy(
  ({ choice, walkM }) => `${choice}/${walkM}`,
  ({ choice, walkM }): Air =>
    makeAir({ waves: [scene().direct({ eM: TAG.eM, nM: TAG.nM - walkM })], eirpDbm: EIRP_DBM, antenna: CARRIED[choice] ?? 'yagi3' }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 30, walkM: 8 };

/** In front and behind, the transmitter straight ahead. */
export function closeSides(settings: Settings): { readonly front: Heard; readonly back: Heard } {
  const at = (headingDeg: number) => heardAt(air(settings), settings, wrapBearingDeg(headingDeg));
  return { front: at(0), back: at(180) };
}

function says({ settings }: Listened): readonly Piece[] {
  const { front, back } = closeSides(settings);
  const gapDb = front.levelDb - back.levelDb;
  const where = `${settings.walkM} m from it`;
  if (settings.choice === 2) {
    if (!front.audible)
      return [`Without an antenna, ${where}, `, { strong: 'nothing is heard' }, '. Hear it like this and you stand almost on it.'];
    return [`Without an antenna, ${where}, `, { strong: 'the case alone hears it' }, ': no direction, but each step nearer is louder.'];
  }
  if (!front.audible) return [`${where}: `, { strong: 'nothing' }, '. Give gain, or take the attenuator out.'];
  if (front.flatOut && gapDb < 3)
    return [
      `${where}: `,
      { strong: 'flat out on every side' },
      settings.attenuatorDb < 30 ? '. Gain alone will not do: put the attenuator in.' : '. Take gain away.',
    ];
  if (settings.choice === 1)
    return [
      `The whip has no front, but your body shades it: turned away it is `,
      { strong: `${Math.round(gapDb)} dB softer` },
      '. The softest heading has the transmitter at your back.',
    ];
  return [
    `${Math.round(gapDb)} dB between front and back: `,
    { strong: 'the side is plain again' },
    `, ${where}. Go on like this, gain down with every few steps.`,
  ];
}

function picture({ settings }: Listened): Picture {
  const { walkM } = settings;
  const circle: Spot[] = Array.from({ length: 48 }, (_, i) => {
    const rad = (i * 7.5 * Math.PI) / 180;
    return [walkM * Math.sin(rad), walkM * Math.cos(rad)];
  });
  return {
    view: 'plan',
    from: [-1.5 * walkM, -1.35 * walkM],
    to: [1.5 * walkM, 1.15 * walkM],
    said: `Plan: the transmitter ${walkM} metres ahead.`,
    marks: [
      { kind: 'edge', points: [...circle, circle[0]!] },
      {
        kind: 'wave',
        points: [
          [0, 0],
          [0, -walkM],
        ],
        wave: 'direct',
        strength: 1,
      },
      { kind: 'tag', at: [0, 0] },
      { kind: 'you', at: [0, -walkM], now: true },
      { kind: 'words', at: [0.12 * walkM, -1.12 * walkM], text: `you, ${walkM} m` },
      { kind: 'words', at: [0.1 * walkM, 0.06 * walkM], text: 'transmitter' },
    ],
  };
}

function questions(random: () => number): readonly Question[] {
  const walkM = oneOf([6, 8, 10], random);
  const swap = random() < 0.5;
  const facing = (headingDeg: number, by: Partial<Settings>): Settings => ({ ...start, walkM, headingDeg, ...by });
  const pair = (by: Partial<Settings>) =>
    (swap ? [180, 0] : [0, 180]).map((deg, i) => ({ name: ['First', 'Second'][i]!, settings: facing(deg, by) }));
  const offM = oneOf([2, 40], random);
  const off = { ...start, walkM: offM, choice: 2, gainDb: 20 };
  const heard = heardAt(air(off), off, 0);
  return [
    whichIsLoudest(`${walkM} m from it at 60 dB. Which faces the transmitter?`, air, pair({ gainDb: 60 }), 'No ear can say'),
    whichIsLoudest('The same with the attenuator in. Which faces it?', air, pair({ gainDb: 20, attenuatorDb: 30 }), 'No ear can say'),
    yesOrNo(
      'The antenna is off, the gain low. Are you within a few metres?',
      [{ name: 'No antenna', settings: off }],
      heard.audible,
      `It was ${offM} m: ${heard.audible ? 'so near that the case hears it' : 'too far for the case'}`,
    ),
  ];
}

export const closeIn: Demonstration = {
  id: 'close-in',
  title: 'Close in',
  scene: 'the last fifty metres',
  listenFor: 'Every side is loud. Put the attenuator in, step by step, until turning makes a difference again.',
  start,
  dials: [
    { key: 'walkM', name: 'Distance', from: 2, to: 50, step: 2, unit: 'm' },
    { key: 'attenuatorDb', name: 'Attenuator', from: 0, to: 30, step: 10, unit: 'dB', choices: ['0', '10', '20', '30'] },
    { key: 'choice', name: 'Hold', from: 0, to: 2, step: 1, unit: '', choices: CARRIED_WORDS },
  ],
  air,
  says,
  ways: [
    { name: 'Gain alone', sets: { attenuatorDb: 0, choice: 0 } },
    { name: 'Attenuator in', sets: { attenuatorDb: 30, choice: 0 } },
  ],
  picture,
  chart({ settings }) {
    const now = closeSides(settings);
    const other = closeSides({ ...settings, attenuatorDb: settings.attenuatorDb >= 20 ? 0 : 30 });
    const words = settings.attenuatorDb >= 20 ? 'gain alone' : 'attenuator';
    return limiterChart([
      { name: `front, ${words}`, heard: other.front, kind: 'other' },
      { name: `back, ${words}`, heard: other.back, kind: 'other' },
      { name: 'front', heard: now.front, kind: 'now' },
      { name: 'back', heard: now.back, kind: 'now' },
    ]);
  },
  talkingPoints: [
    'Within 50 m the gain knob runs out at its lower end: the attenuator goes on where it stops.',
    'Close by the receiver’s own case hears the transmitter, past antenna and attenuator. That part has no direction.',
    'A whip held to the chest has no front; the body behind it makes one. Turn round and listen for the softest heading.',
    'Last metres: antenna off, lowest gain, and walk a small cross. Mind where you put your feet.',
  ],
  handoutGainsDb: [60, 40, 20, 0],
  questions,
};
