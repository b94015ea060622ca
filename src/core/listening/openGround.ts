import { wrapBearingDeg } from '../units/angles';
import { bearingDeg, type MapPoint } from '../units/frames';
import { type Air, makeAir } from './air';
import { madeOnce } from './madeOnce';
import { makeSmallScene } from './smallScene';

/** Open, level ground: the tag stands at the origin's north, the walk goes east. */
const SIZE_M = 2_400;
const HOME: MapPoint = { eM: 1_200, nM: 1_000 };

export type OpenGround = {
  /** Where the listener stands after `walkM` of the walk, metres east and north of where it began. */
  readonly at: (walkM: number) => readonly [number, number];
  readonly tag: readonly [number, number];
  readonly tagBearingDeg: (walkM: number) => number;
  readonly air: (walkM: number) => Air;
};

/** A tag in plain view `aheadM` north of the walk's beginning, with nothing else about. */
export function openGround({ aheadM, eirpDbm }: { readonly aheadM: number; readonly eirpDbm: number }): OpenGround {
  const tagAt = { eM: HOME.eM, nM: HOME.nM + aheadM };
  const scene = madeOnce(() => makeSmallScene({ sizeM: SIZE_M, tag: { at: tagAt } }));
  const kept = new Map<number, Air>();
  const place = (walkM: number): MapPoint => ({ eM: HOME.eM + walkM, nM: HOME.nM });
  return {
    at: (walkM) => [walkM, 0],
    tag: [0, aheadM],
    tagBearingDeg: (walkM) => wrapBearingDeg(bearingDeg(place(walkM), tagAt)),
    air(walkM) {
      const made = kept.get(walkM) ?? makeAir({ waves: [scene().direct(place(walkM))], eirpDbm });
      kept.set(walkM, made);
      return made;
    },
  };
}
