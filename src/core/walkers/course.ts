import { widestCrossingDeg } from '../fix/crossing';
import { bestSupportedDirection } from '../fix/support';
import { distanceFromLeastGainM } from '../technique/gainDistance';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import type { Hunt, HuntReading } from './hunt';

/** A crossing nearer than this is where one stands. */
const HERE_M = 50;
/** Readings remembered, and how many of them count together. */
const REMEMBERED = 8;
const COUNTED = 5;
/** So much more gain than at another place, and the tag is in shadow here. */
const SHADOW_DB = 13;
/** Ridges and woods make a tag seem farther, but not this much: a crossing nearer than this share is chance. */
const NEAREST_SHARE = 0.15;
/** Under this the gain says that little stands between, and then the tag is no nearer than so. */
const IN_VIEW_M = 400;
const NEAREST_SHARE_IN_VIEW = 0.6;
/** Lines that cross so widely leave no such doubt. */
const WELL_CROSSED_DEG = 40;
/** And three lines together are believed against a gain that a ridge has raised by 40 dB. */
const MANY_AGREE = 3;
const NEAREST_SHARE_SURE = 0.07;
/** A crossing so near is walked to in one go and listened at, whatever the gain says of the distance. */
const NEAR_M = 80;
/** One who has read so close to a crossing and heard the tag elsewhere need not go there again. */
const READ_THERE_M = 25;

/**
 * The readings that it goes by: of the last ones, those that needed little gain. Where the tag needs far more gain than at a place
 * before, a hill stands between, and what is heard is a hillside or a wire.
 */
function trusted({ readings }: Hunt): readonly HuntReading[] {
  const recent = readings.slice(-REMEMBERED);
  const leastDb = Math.min(...recent.map(({ leastGainDb }) => leastGainDb));
  return recent.filter(({ leastGainDb }) => leastGainDb <= leastDb + SHADOW_DB).slice(-COUNTED);
}

export type Course = { readonly alongDeg: number; readonly point: MapPoint | null };

/** Where the last readings together point; where three of them don't agree, those that it trusts; else the line of the last of these. */
export function supportedCourse(hunt: Hunt, byGainM: number): Course {
  const { at } = hunt.view.seen;
  const chosen = trusted(hunt);
  const last = chosen.at(-1) ?? hunt.readings.at(-1)!;
  const onItsLine = stepAlong(last.at, last.bearingDeg, Math.max(2 * HERE_M, distanceM(at, last.at) + byGainM));
  const alone = { alongDeg: last === hunt.readings.at(-1) ? last.bearingDeg : bearingDeg(at, onItsLine), point: null };
  return together(hunt.readings.slice(-COUNTED), at, byGainM, 3) ?? together(chosen, at, byGainM, 2) ?? alone;
}

function together(readings: readonly HuntReading[], at: MapPoint, byGainM: number, least: number): Course | null {
  const supported = bestSupportedDirection(readings, at);
  if (!supported || supported.agreeing < least) return null;
  const { point } = supported;
  if (!point) return { alongDeg: supported.bearingDeg, point };
  const crossing = widestCrossingDeg(
    readings.map((reading) => reading.at),
    point,
  );
  const wide = crossing >= WELL_CROSSED_DEG;
  const inDoubt = byGainM < IN_VIEW_M ? NEAREST_SHARE_IN_VIEW : NEAREST_SHARE;
  const share = wide ? (supported.agreeing >= MANY_AGREE ? NEAREST_SHARE_SURE : NEAREST_SHARE) : inDoubt;
  const tooNear = distanceM(at, point) < Math.max(HERE_M, share * byGainM) || readings.some((reading) => wasThere(reading, point, share));
  return tooNear ? null : { alongDeg: supported.bearingDeg, point };
}

/** Three lines that cross well and near by: what is left to walk to their crossing, metres; `null` where there is none, or it was read from. */
export function crossingNearM({ readings, view }: Hunt): number | null {
  const { at } = view.seen;
  const counted = readings.slice(-COUNTED);
  const supported = bestSupportedDirection(counted, at);
  const point = supported && supported.agreeing >= MANY_AGREE ? supported.point : null;
  if (!point || distanceM(at, point) > NEAR_M) return null;
  const places = counted.map((reading) => reading.at);
  if (widestCrossingDeg(places, point) < WELL_CROSSED_DEG) return null;
  return places.slice(0, -1).some((place) => distanceM(place, point) < READ_THERE_M) ? null : distanceM(at, point);
}

/** Lines cross at a place already read from, for one of them led there; but there the sound pointed away, and asked for more gain. */
const wasThere = ({ at, leastGainDb }: HuntReading, point: MapPoint, share: number): boolean =>
  distanceM(at, point) < Math.max(HERE_M, Math.min(NEAREST_SHARE, share) * distanceFromLeastGainM(leastGainDb));
