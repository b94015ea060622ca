import { TICKS_PER_S } from '../run/state';
import { distanceM, type MapPoint } from '../units/frames';
import { clock, type Evidence, type Moment } from './habit';
import type { Piece } from './sweeps';

/** A place is new this far from every earlier bearing. */
const NEW_PLACE_M = 50;
/** Sweeps count for a bearing when they were made this near to it and this shortly before. */
const SAME_PLACE_M = 25;
const SHORTLY_S = 180;
const FULL_DEG = 300;

/**
 * Whether the first bearing at each new place came from a full look round; `null` where nothing was marked. `sweeps` are those
 * that a change of the controls has not spoilt: over a change of gain front and back can't be compared.
 */
export function fullLooks(
  evidence: Evidence,
  sweeps: readonly Piece[],
): { readonly score: number | null; readonly moments: readonly Moment[] } {
  const { notebook } = evidence.run.state;
  const firsts = notebook.filter((mark, i) => notebook.slice(0, i).every((earlier) => distanceM(earlier.at, mark.at) >= NEW_PLACE_M));
  if (firsts.length === 0) return { score: null, moments: [] };
  const looks = firsts.map((mark) => ({ mark, coveredDeg: coveredDeg(evidence, sweeps, mark.atTick, mark.at) }));
  const full = looks.filter((look) => look.coveredDeg >= FULL_DEG).length;
  const moments = looks.map(({ mark, coveredDeg: deg }): Moment => {
    const fromS = mark.atTick / TICKS_PER_S;
    const good = deg >= FULL_DEG;
    return {
      fromS: Math.max(0, fromS - 20),
      toS: fromS,
      what: good
        ? `At ${clock(fromS)} the first bearing at a new place came from a look all round.`
        : `At ${clock(fromS)} the first bearing at a new place came from an arc of ${deg.toFixed(0)} degrees; a back signal would have looked the same.`,
      next: good ? 'Go on so: later bearings there may be narrow.' : 'At a new place turn once all round before you believe a side.',
      weight: good ? 60 : 90,
      good,
    };
  });
  return { score: (100 * full) / looks.length, moments };
}

/** Degrees of the compass that sweeps at this place, shortly before, have covered. */
function coveredDeg({ run }: Evidence, sweeps: readonly Piece[], atTick: number, at: MapPoint): number {
  const seen = new Uint8Array(360);
  for (const { fromTick, toTick } of sweeps) {
    if (fromTick > atTick || toTick < atTick - SHORTLY_S * TICKS_PER_S) continue;
    for (let tick = fromTick + 1; tick <= Math.min(toTick, atTick); tick++) {
      const [before, now] = [run.states[tick - 1]!, run.states[tick]!];
      if (distanceM(now.at, at) <= SAME_PLACE_M) markArc(seen, before.hold.headingDeg, now.hold.headingDeg);
    }
  }
  return seen.reduce((sum, on) => sum + on, 0);
}

function markArc(seen: Uint8Array, fromDeg: number, toDeg: number): void {
  const turn = ((toDeg - fromDeg + 540) % 360) - 180;
  const steps = Math.ceil(Math.abs(turn));
  for (let i = 0; i <= steps; i++) seen[(Math.round(fromDeg + (turn * i) / Math.max(1, steps)) + 360) % 360] = 1;
}
