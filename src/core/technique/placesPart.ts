import { TICKS_PER_S } from '../run/state';
import { distanceM } from '../units/frames';
import { clock, linearScore, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import type { Outlook } from './outlook';
import type { Reading } from './readings';
import type { SuggestedDistance } from './suggestedDistance';

/** A place is new this far from every earlier one. */
const NEW_PLACE_M = 50;
const LEAST_PLACES = 3;
/** Nobody chose where the exercise begins. */
const FIRST_S = 120;
const FULL_PERCENTILE = 75;
const NO_MARKS_PERCENTILE = 25;
/** Where the quartiles of openness differ by less, no place near is clearer than another. */
export const LEAST_CONTRAST = 0.05;
/** Whoever climbs a roof for a reading has sought the clearest place there is. */
const ALOFT_PERCENTILE = 100;
/** A place counts for about as much as a minute. */
const PLACE_WEIGHT = 60;

/**
 * *Places*: are readings taken where the ground sees far, among the places within two minutes' walk? Three places show the habit;
 * those of them on flat ground, where none near is clearer, are not judged.
 */
export function placesPart(readings: readonly Reading[], outlook: Outlook, distance: SuggestedDistance): HabitPart {
  const places = newPlaces(readings, distance);
  const uneven = places.filter(({ at }) => outlook.contrastAround(at) >= LEAST_CONTRAST);
  if (places.length < LEAST_PLACES || uneven.length === 0) return PART_NOT_SHOWN;
  const judged = uneven.map((reading) => ({
    reading,
    percentile: reading.aloft ? ALOFT_PERCENTILE : outlook.percentileAmong(reading.at, reading.at),
  }));
  const marks = judged.map(({ percentile }) => linearScore(percentile, FULL_PERCENTILE, NO_MARKS_PERCENTILE));
  const moments = judged.map(({ reading, percentile }, i) => momentOf(reading, percentile, marks[i]!));
  return { score: marks.reduce((sum, mark) => sum + mark, 0) / marks.length, moments };
}

function newPlaces(readings: readonly Reading[], distance: SuggestedDistance): readonly Reading[] {
  const places: Reading[] = [];
  for (const reading of readings) {
    if (reading.tick < FIRST_S * TICKS_PER_S || distance.isClose(reading.tick)) continue;
    if (places.every(({ at }) => distanceM(at, reading.at) >= NEW_PLACE_M)) places.push(reading);
  }
  return places;
}

function momentOf({ tick }: Reading, percentile: number, mark: number): Moment {
  const timeS = tick / TICKS_PER_S;
  const span = { fromS: timeS, toS: timeS };
  // Mid-rank never says that a place sees more than itself.
  const worse = Math.round(Math.min(99, Math.max(1, percentile)));
  if (mark >= 50) {
    const what = `At ${clock(timeS)} you read from a place that sees more than ${worse} % of those within two minutes.`;
    return { ...span, what, next: 'Go on choosing such places with your eyes first.', weight: (PLACE_WEIGHT * mark) / 200, good: true };
  }
  return {
    ...span,
    what: `At ${clock(timeS)} you read from a low or shut-in place: ${100 - worse} % of those within two minutes' walk see farther.`,
    next: 'Look along the skyline strip, walk up or out into the open, and read there.',
    weight: (PLACE_WEIGHT * (100 - mark)) / 100,
    good: false,
  };
}
