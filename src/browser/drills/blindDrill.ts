import { BLIND_PLACES, blindPlace } from '../../core/drills/blindTest';
import { type Drill, planAround } from '../../core/drills/drill';
import { GAIN, HEADING } from '../../core/listening/settings';

/** Thirty places, bearings only, played like a check: nothing is told before the end. */
export const BLIND_TEST: Drill = {
  id: 'blind-test',
  title: 'Blind test',
  skill: 'take bearings at thirty places',
  unit: '°',
  measures: 'of spread',
  ladder: { hardest: 1, easiest: 1, first: 1, step: 1, ratio: false },
  kind: 'set',
  guess: 0,
  trials: BLIND_PLACES,
  example: [],
  draw(seed, level, listener) {
    const place = blindPlace(seed, 0, listener);
    return {
      level,
      ask: 'A new place. Take the bearing of the transmitter.',
      hint: '',
      start: place.start,
      dials: [HEADING, GAIN],
      air: () => place.air,
      answer: { kind: 'setting', deed: 'Mark the bearing' },
      judge: () => ({ right: true, error: 0, because: '' }),
      truth: { settings: { ...place.start, headingDeg: place.trueDeg }, said: '', picture: planAround(1, '', []) },
    };
  },
  says: () => '',
};
