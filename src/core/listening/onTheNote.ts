import { CLEAREST_NOTE_HZ, PASSBAND_HZ, tuningLossDb } from '../receiver/tuning';
import { type Air, heardAt, makeAir, TAG_MHZ } from './air';
import type { Chart } from './chart';
import type { Demonstration, Listened, Piece } from './demonstration';
import { keptBy } from './keptBy';
import { madeOnce } from './madeOnce';
import type { Picture } from './picture';
import { oneOf, type Question, whichIsLoudest, yesOrNo } from './question';
import { FIRST_SETTINGS, type Settings } from './settings';
import { makeSmallScene } from './smallScene';

const AHEAD_M = 600;
const EIRP_DBM = 6;
const TEMPERATURES_C = [35, 5, -15] as const;
/** Turning point of an AT-cut crystal's drift and its cubic term per degree cubed: values from memory. */
const TURNING_C = 27;
const CUBIC_PER_C3 = 1e-10;

/** How far the tag's crystal moves at a temperature against its turning point, Hz: f times 1e-10 (T - 27)³, the AT-cut's cubic. */
export const driftHz = (celsius: number): number => TAG_MHZ * 1e6 * CUBIC_PER_C3 * (celsius - TURNING_C) ** 3;

const TAG = { eM: 500, nM: 900 };
const waves = madeOnce(() => [makeSmallScene({ sizeM: 1_000, tag: { at: TAG } }).direct({ eM: TAG.eM, nM: TAG.nM - AHEAD_M })]);
const driftOf = ({ choice }: Settings): number => driftHz(TEMPERATURES_C[choice]!);
const air = keptBy(
  ({ choice }) => choice,
  (settings): Air => makeAir({ waves: waves(), eirpDbm: EIRP_DBM, driftHz: driftOf(settings) }),
);
const start: Settings = { ...FIRST_SETTINGS, gainDb: 30 };

function says({ now, settings }: Listened): readonly Piece[] {
  const lostDb = tuningLossDb(now.pitchHz);
  const hz = Math.round(now.pitchHz / 10) * 10;
  if (lostDb > 8)
    return [
      'The note lies at ',
      { strong: `${hz} Hz, outside the passband` },
      `: ${Math.round(lostDb)} dB are lost${now.audible ? '' : ' and nothing is heard'}. It sounds like a tag far away; it is a dial not turned.`,
    ];
  if (Math.abs(now.pitchHz - CLEAREST_NOTE_HZ) < 150)
    return ['The note lies at ', { strong: `${hz} Hz` }, ': clear, and nothing is lost. At a faint level this is where you hear most.'];
  return [
    'The note lies at ',
    { strong: `${hz} Hz` },
    `: ${lostDb.toFixed(1)} dB lost${settings.choice > 0 ? ', by the cold alone' : ''}. Bring it back to the clearest note before you judge the level.`,
  ];
}

const OFFSETS_HZ = Array.from({ length: 121 }, (_, i) => -3_000 + 50 * i);

function chart({ settings, now }: Listened): Chart {
  const drift = driftOf(settings);
  const lost = (offsetHz: number) => -tuningLossDb(Math.abs(CLEAREST_NOTE_HZ + offsetHz + drift));
  return {
    name: 'What the dial costs',
    x: { from: -3_000, to: 3_000, name: 'dial off the note', unit: 'Hz', at: [-2000, 0, 2000] },
    y: { from: -50, to: 5, name: 'loudness', unit: 'dB', at: [-50, -25, 0] },
    lines: [{ kind: 'law', name: 'passband', points: OFFSETS_HZ.map((hz) => [hz, lost(hz)] as const) }],
    dots: [{ kind: 'now', name: `${Math.round(now.pitchHz)} Hz`, x: settings.offsetHz, y: lost(settings.offsetHz) }],
  };
}

const picture = ({ settings }: Listened): Picture => ({
  view: 'section',
  from: [-70, -8],
  to: [AHEAD_M + 70, 24],
  said: `From the side: open ground, the transmitter ${AHEAD_M} metres off at ${TEMPERATURES_C[settings.choice]} degrees.`,
  ground: [
    [-70, 0],
    [AHEAD_M + 70, 0],
  ],
  marks: [
    {
      kind: 'wave',
      points: [
        [AHEAD_M, 3],
        [0, 3],
      ],
      wave: 'direct',
      strength: 1,
    },
    { kind: 'tag', at: [AHEAD_M, 1.5] },
    { kind: 'you', at: [0, 2], now: true },
    { kind: 'words', at: [-20, 6], text: 'you' },
    { kind: 'words', at: [AHEAD_M - 310, 6], text: `transmitter, ${TEMPERATURES_C[settings.choice]} °C` },
  ],
});

function questions(random: () => number): readonly Question[] {
  const tuned = (offsetHz: number, choice = 0): Settings => ({ ...start, offsetHz, choice });
  const swap = random() < 0.5;
  const [off, far] = [oneOf([2_400, 2_700, 3_000], random), oneOf([-250, 150, 300, 2_200, 2_600], random)];
  const note = (hz: number, i: number) => ({ name: ['First', 'Second'][i]!, settings: tuned(hz) });
  const cold = oneOf([1, 2], random);
  const frozen = heardAt(air(tuned(0, cold)), tuned(0, cold), 0);
  const inside = CLEAREST_NOTE_HZ + far <= PASSBAND_HZ.to && CLEAREST_NOTE_HZ + far >= PASSBAND_HZ.from;
  return [
    whichIsLoudest(
      'Two places of the dial, the same gain. Which is nearer to the clearest note?',
      air,
      (swap ? [off, 0] : [0, off]).map(note),
      'No difference',
    ),
    yesOrNo(
      'One beep. Is its note inside the passband?',
      [{ name: 'The beep', settings: tuned(far) }],
      inside,
      `It lies at ${CLEAREST_NOTE_HZ + far} Hz; the band goes from ${PASSBAND_HZ.from} to ${PASSBAND_HZ.to} Hz`,
    ),
    yesOrNo(
      'First on the animal, then left in the cold, the dial not touched. Has more than half of the loudness gone?',
      [
        { name: 'Warm', settings: tuned(0, 0) },
        { name: 'Cold', settings: tuned(0, cold) },
      ],
      tuningLossDb(frozen.pitchHz) > 10,
      `At ${TEMPERATURES_C[cold]} °C the note has moved by ${Math.round(driftHz(TEMPERATURES_C[cold]!))} Hz, which costs ${tuningLossDb(frozen.pitchHz).toFixed(1)} dB (10 dB halve the loudness)`,
    ),
  ];
}

export const onTheNote: Demonstration = {
  id: 'on-the-note',
  title: 'On the note',
  scene: `one transmitter, ${AHEAD_M} m ahead; the dial and the cold`,
  listenFor: 'Turn the dial: the pitch moves, and at the edge of the band the beep falls away as if it had gone far off.',
  start,
  dials: [
    { key: 'offsetHz', name: 'Dial', from: -3_000, to: 3_000, step: 50, unit: 'Hz' },
    { key: 'choice', name: 'The tag is at', from: 0, to: 2, step: 1, unit: '', choices: TEMPERATURES_C.map((c) => `${c} °C`) },
  ],
  air,
  says,
  ways: [
    { name: 'On the note', sets: { offsetHz: 0, choice: 0 } },
    { name: 'Left in the frost', sets: { offsetHz: 0, choice: 2 } },
  ],
  picture,
  chart,
  talkingPoints: [
    'Tune at a faint level: when the beep is flat out every note sounds right.',
    'Pitch and level move together. A beep that has gone low or high has also gone softer.',
    'A tag that lies in the frost drifts by a whole note. Before you call it out of range, turn the dial.',
    'Do the tag check at the vehicle: clearest note, both axes, rate.',
  ],
  handoutGainsDb: [60, 45, 30, 20],
  questions,
};
