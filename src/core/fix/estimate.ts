import { toRad } from '../units/angles';
import { type BearingLine, meetingOf, missDeg } from './bearingLine';
import { concentrationOf } from './besselRatio';
import { REFUSED_UNDER_DEG, stationUnder, WARNED_UNDER_DEG, widestCrossingDeg } from './crossing';
import { CHI_SQUARE_95, ellipseOf, fisherF95, lenthInformation, squaredTurns, unitInformation } from './ellipse';
import { type Fix, type FixInput, type RefusedFix, refusal } from './fix';
import { shortfallAt } from './likelihood';
import { highestPlace, type Limit, limitAbove } from './peakSearch';
import { bestSupportedMeeting, KAPPA_OF_ONE_POINT, reweighted } from './robust';
import { type FramePoint, frameOf, type SightFrame, toMap } from './sightFrame';

/** The spread of a learner's bearings until a blind test has measured it, degrees. */
export const UNMEASURED_SD_DEG = 5;

/**
 * The place that bearings point to, with its 95 % areas, or the reason why they point to none. Where the likelihood is highest on a
 * station or infinitely far away, there is no fix. Nothing in the answer is ever NaN or infinite.
 * @throws RangeError for lists of unequal length, numbers that are not finite, or a learner's spread that is not positive
 */
export function estimateFix(input: FixInput): Fix {
  const lines = linesOf(input);
  if (lines.length < 2) return refusal('A fix needs at least two bearings. Take another from a second place');
  const frame = frameOf(lines);
  const apart = frame.lines.some(({ at }) => at.eM !== lines[0]!.at.eM || at.nM !== lines[0]!.at.nM);
  if (!apart) return refusal('All bearings were taken from one place, so they can only meet there. Walk aside and take another');
  if (lines.length === 2) {
    const [a, b] = [lines[0]!, lines[1]!];
    const meeting = meetingOf(a, b);
    if (meeting.kind === 'parallel') return refusal(PARALLEL, 0);
    if (meeting.kind === 'behind') return refusal(DIVERGING);
  }
  const place = input.method === 'huber' || input.method === 'andrews' ? robustPlace(frame, input.method) : plainPlace(frame);
  if (!place.ok) return place;
  return judged(frame, place, toRad(input.learnerSdDeg ?? UNMEASURED_SD_DEG));
}

const PARALLEL = 'The bearings are parallel, so they do not meet. Walk to where the bearing swings and take another';
const DIVERGING = 'The bearings diverge: they meet behind a station. Check each for a back signal, or take another';

function linesOf({ stations, bearingsDeg, learnerSdDeg }: FixInput): BearingLine[] {
  if (stations.length !== bearingsDeg.length) throw new RangeError(`${stations.length} stations but ${bearingsDeg.length} bearings`);
  if (learnerSdDeg !== undefined && !(learnerSdDeg > 0 && learnerSdDeg < 90))
    throw new RangeError(`need 0 < learnerSdDeg < 90, got ${learnerSdDeg}`);
  return stations.map(([eM, nM], i) => {
    const bearingDeg = bearingsDeg[i]!;
    if (![eM, nM, bearingDeg].every(Number.isFinite))
      throw new RangeError(`station ${i + 1}: need finite numbers, got ${eM}, ${nM}, ${bearingDeg}`);
    return { at: { eM, nM }, bearingDeg };
  });
}

/** A place found, before it is judged by its distance to the stations and its crossing angle. */
type Place = {
  readonly ok: true;
  readonly point: FramePoint;
  readonly weights: Float64Array;
  readonly kappa: number;
  readonly warnings: readonly string[];
};

function plainPlace(frame: SightFrame): Place | RefusedFix {
  const weights = new Float64Array(frame.x.length).fill(1);
  const highest = highestPlace(frame, weights);
  if (highest.kind !== 'peak') return limitRefusal(highest);
  return { ok: true, point: highest.point, weights, kappa: concentrationOf(highest.shortfall / weights.length), warnings: [] };
}

/**
 * Starts from the plain fix, as Lenth does. Where there is none, a stray bearing may be the cause: then from the meeting of two
 * lines that most bearings support, at a spread of 5 degrees.
 */
function robustPlace(frame: SightFrame, method: 'huber' | 'andrews'): Place | RefusedFix {
  const plain = plainPlace(frame);
  const startKappa = 1 / toRad(UNMEASURED_SD_DEG) ** 2;
  const start = plain.ok ? plain.point : bestSupportedMeeting(frame, startKappa);
  if (!start || frame.lines.length === 2) return plain; // two lines meet exactly whatever their weights
  const found = reweighted(frame, method, start, plain.ok ? undefined : startKappa);
  if (found.end === 'strayed') return plain.ok ? refusal(NO_ROBUST_PLACE) : plain;
  if (found.end === 'thinned') return plain.ok ? refusal(THINNED) : plain;
  const limit = limitAbove(frame, found.weights, shortfallAt(frame, found.weights, found.point));
  if (limit) return limitRefusal(limit);
  const unsettled = found.end === 'unsettled' ? ['The weights of the bearings had not settled; compare with the plain fix.'] : [];
  return { ok: true, point: found.point, weights: found.weights, kappa: found.kappa, warnings: unsettled };
}

const NO_ROBUST_PLACE = 'With the stray bearings set aside, the rest do not meet in one place. Take another bearing';
const THINNED =
  'Fewer than three bearings agree once the stray ones are set aside, so nothing confirms them. Take another bearing, or use plain maximum likelihood';

const limitRefusal = (limit: Limit): RefusedFix =>
  limit.kind === 'far'
    ? refusal(
        'The bearings are nearly parallel or diverge: they agree best infinitely far away. Check for back signals and take one from further aside',
      )
    : refusal(onTop(limit.station));

const onTop = (station: number): string =>
  `The bearings agree best on top of station ${station + 1}, where a bearing means nothing. Check its bearing for a back signal, or take another from elsewhere`;

/** Refuses a place on top of a station or of a thin crossing; otherwise adds areas, residuals and warnings. */
function judged(frame: SightFrame, place: Place, learnerSdRad: number): Fix {
  const { point, weights } = place;
  const at = toMap(frame, point);
  const counting = frame.lines.filter((_, i) => weights[i]! >= COUNTS).map((line) => line.at);
  const under = stationUnder(
    frame.lines.map((line) => line.at),
    at,
    frame.unitM,
  );
  if (under >= 0) return refusal(onTop(under));
  const crossingDeg = widestCrossingDeg(counting, at);
  if (crossingDeg < REFUSED_UNDER_DEG)
    return refusal(
      `The bearings cross at ${crossingDeg.toFixed(1)} degrees, under ${REFUSED_UNDER_DEG}: the area would be useless. Take one from further aside`,
      crossingDeg,
    );
  const onePoint = place.kappa >= KAPPA_OF_ONE_POINT;
  const residualsDeg = frame.lines.map((line) => missDeg(line, at));
  return {
    ok: true,
    x: at.eM,
    y: at.nM,
    kappa: onePoint ? null : place.kappa,
    ...areas(frame, place, onePoint, learnerSdRad),
    residualsDeg,
    weights: [...weights],
    crossingAngleDeg: crossingDeg,
    warnings: [...place.warnings, ...warningsOf(residualsDeg, place, crossingDeg, onePoint)],
  };
}

/** Bearings of less weight than this do not count towards the crossing angle. */
const COUNTS = 0.1;

function areas(frame: SightFrame, { point, weights, kappa }: Place, onePoint: boolean, learnerSdRad: number) {
  const unit = unitInformation(frame, weights, point);
  const learnerEllipse = ellipseOf(unit, learnerSdRad ** 2 * CHI_SQUARE_95);
  // A bearing of half weight is half a bearing here too; two places are used up by the two coordinates.
  const freedom = weights.reduce((sum, weight) => sum + weight, 0) - 2;
  if (onePoint || freedom <= 0) return { ellipse95: null, ellipse95Chi2: null, learnerEllipse };
  const variance = squaredTurns(frame, weights, point) / freedom;
  return {
    ellipse95: ellipseOf(unit, variance * 2 * fisherF95(freedom)),
    ellipse95Chi2: ellipseOf(lenthInformation(frame, weights, point), CHI_SQUARE_95 / kappa),
    learnerEllipse,
  };
}

function warningsOf(residualsDeg: readonly number[], place: Place, crossingDeg: number, onePoint: boolean): string[] {
  const warnings: string[] = [];
  if (crossingDeg < WARNED_UNDER_DEG)
    warnings.push(`The bearings cross at only ${crossingDeg.toFixed(1)} degrees: the area is long and thin.`);
  if (onePoint && residualsDeg.length > 2) warnings.push('The bearings meet in one point, so their spread and its areas are unknown.');
  if (residualsDeg.length === 2) warnings.push('Two bearings always meet: nothing confirms this fix. Take a third.');
  residualsDeg.forEach((residual, i) => {
    if (Math.abs(residual) > 90) warnings.push(`Bearing ${i + 1} points away from the fix: front and back may be mixed up.`);
    if (place.weights[i]! < 0.05) warnings.push(`Bearing ${i + 1} disagrees with the others and was set aside.`);
  });
  return warnings;
}
