import type { Scenario } from '../scenario/schema';
import { distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import type { PowerLine, World } from '../world/world';
import { secondLegDb, spaceVector } from './echoLeg';
import { hashShare, textKey } from './integerHash';
import { wavelengthM } from './wavelength';
import { directionOf, minus } from './waveVector';

/** One source of line noise at a receiver: where it comes from and its isotropic power in 2.5 kHz. */
export type NoiseSource = { readonly azimuthDeg: number; readonly elevationDeg: number; readonly powerDbm: number; readonly kind: 'gap' };

/** Level 50 m from a source at 150 MHz in 2.5 kHz by voltage, dBm: our assumption. `lineNoiseDb` of the scenario is added. */
const LEVEL_DBM: { readonly [voltage in PowerLine['voltage']]: number } = { low: -128, medium: -118, high: -112 };
/** Share of supports on which something sparks: our assumption. */
const SPARKING_SHARE = 0.2;
/** Sources weaker than this at the receiver are left out, dBm. */
const LEAST_DBM = -165;

/** Gap noise of the lines: field falls as 1/f with frequency, with distance as two rays do, and behind ground by its worst edge. */
export function lineNoiseAt(
  scenario: Scenario,
  world: World,
  frequencyMHz: number,
  point: MapPoint,
  heightM: number,
): readonly NoiseSource[] {
  const receiver = spaceVector(point, valueAt(world.groundM, point.eM, point.nM) + heightM);
  const seed = textKey(scenario.seed);
  return world.powerLines.flatMap((line, lineIndex) =>
    line.supports.flatMap((support, index): NoiseSource[] => {
      const sparks = hashShare(seed, lineIndex, index, 71) < SPARKING_SHARE || index === Math.floor(line.supports.length / 2);
      if (!sparks) return [];
      const at = spaceVector(support.foot, support.foot.zM + support.heightM);
      const d = Math.max(3, distanceM(point, support.foot));
      const breakM = (4 * support.heightM * heightM) / wavelengthM(frequencyMHz);
      const spreadDb = 20 * Math.log10(d / 50) + 10 * Math.log10(1 + (d / breakM) ** 2) - 10 * Math.log10(1 + (50 / breakM) ** 2);
      const powerDbm =
        LEVEL_DBM[line.voltage] +
        scenario.radio.lineNoiseDb -
        20 * Math.log10(frequencyMHz / 150) -
        spreadDb -
        secondLegDb(world, at, receiver, frequencyMHz);
      return powerDbm < LEAST_DBM ? [] : [{ ...directionOf(minus(at, receiver)), powerDbm, kind: 'gap' }];
    }),
  );
}
