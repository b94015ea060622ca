import { heardAt } from '../listening/air';
import { type Dial, FIRST_SETTINGS, GAIN, onDial, type Settings } from '../listening/settings';
import { CLEAREST_NOTE_HZ, tuningLossDb } from '../receiver/tuning';
import { drawn } from './drawn';
import type { Drill, Trial } from './drill';
import { plainView, viewFromAbove } from './plainView';

export const TUNING: Dial = { key: 'offsetHz', name: 'Dial', from: -3_000, to: 3_000, step: 20, unit: 'Hz' };
/** The dial's own zero is off the tag by so much at most: crystals drift, lists are old. */
const MOST_OFF_HZ = 1_400;

function draw(seed: string, level: number, listener: { readonly thresholdDb: number }): Trial {
  const by = drawn(seed);
  const view = plainView(by, { fromM: 400, toM: 2_000 });
  const driftHz = Math.round(by.between(-MOST_OFF_HZ, MOST_OFF_HZ) / 20) * 20;
  const air = { ...view.air, carrierMHz: view.air.carrierMHz + driftHz / 1e6 };
  const start: Settings = {
    ...FIRST_SETTINGS,
    headingDeg: view.bearingDeg,
    // Within the band at the start, so that there is something to go by.
    offsetHz: Math.round((by.oneOf([-620, -560, 800, 1_100, 1_400, 1_700]) - driftHz) / 20) * 20,
    gainDb: onDial(GAIN, view.leastDb(listener) + by.between(10, 22)),
  };
  const noteOf = (settings: Settings) => heardAt(air, settings, settings.headingDeg).pitchHz;
  return {
    level,
    ask: `Turn the dial to the clearest note: within ${Math.round(level)} Hz of ${CLEAREST_NOTE_HZ} Hz.`,
    hint: 'Take gain away until it is faint, then turn the dial to where you hear most. Both edges of the band fall away; the note lies nearer to the low one.',
    start,
    dials: [GAIN, TUNING],
    air: () => air,
    answer: { kind: 'setting', deed: 'On the note' },
    judge(answer) {
      if (answer.kind !== 'setting') return { right: false, error: 3_000, because: '' };
      const noteHz = noteOf(answer.settings);
      const offHz = noteHz - CLEAREST_NOTE_HZ;
      return {
        right: Math.abs(offHz) <= level,
        error: Math.abs(offHz),
        because: `Your note was ${Math.round(noteHz)} Hz, ${Math.round(Math.abs(offHz))} Hz too ${offHz > 0 ? 'high' : 'low'}; that costs ${tuningLossDb(noteHz).toFixed(1)} dB`,
      };
    },
    truth: {
      settings: { ...start, offsetHz: -driftHz },
      said: `The tag had drifted ${Math.abs(driftHz)} Hz ${driftHz < 0 ? 'down' : 'up'}.`,
      picture: viewFromAbove(view, `Plan: the transmitter ${Math.round(view.distanceM)} metres off.`),
    },
  };
}

export const onTheNote: Drill = {
  id: 'on-the-note',
  title: 'On the note',
  skill: 'tune to where a faint beep is heard best',
  unit: 'Hz',
  measures: 'off the clearest note',
  ladder: { hardest: 20, easiest: 1_200, first: 300, step: 1.35, ratio: true },
  kind: 'set',
  guess: 0,
  trials: 6,
  example: [
    'Turn the dial: the pitch moves with it.',
    'Go too far both ways until the beep falls away: those are the edges of the band.',
    'The clearest note is about two octaves above the low edge, where the ear and a small loudspeaker do best. Learn its sound here: this is it.',
    'Do it at a faint level. When the beep is flat out every note sounds right.',
  ],
  draw,
  says: (number) =>
    `Half of your notes were within ${Math.round(number / 5) * 5} Hz. ${
      number <= 200 ? 'Nothing is lost at that.' : 'Lower the gain first; at a faint level the best note stands out.'
    }`,
};
