import type { Antenna } from './antenna';
import { patternCuts } from './cuts';

/** What one antenna is worth at a tag's frequency, in free space, without feed line and body, held as it is taken up. */
export type AntennaFigures = {
  readonly boomM: number;
  /** Forward gain over isotropic, lossless. */
  readonly gainDbi: number;
  /** Full half-power width in azimuth; null where the antenna hears all round. */
  readonly widthDeg: number | null;
  readonly frontToBackDb: number;
};

/** @param designMHz what the antenna was cut for; the pattern is solved at `frequencyMHz` */
export function antennaFigures(antenna: Antenna, frequencyMHz: number, designMHz: number): AntennaFigures {
  const { forwardDbi, widthDeg, frontToBackDb } = patternCuts(
    antenna.pattern(frequencyMHz, designMHz),
    antenna.takenUpRollDeg === 0 ? 'h' : 'v',
    90,
  );
  return { boomM: antenna.boomM(designMHz), gainDbi: forwardDbi, widthDeg, frontToBackDb };
}
