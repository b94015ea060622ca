import { wavePowerDbm } from '../core/radio/arrivals';
import { openExercise } from '../core/run/exercise';
import { tagHere } from '../core/run/sense';
import { numberFrom, placeFrom, scenarioOf, tagFrom } from './inputs';

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Every wave at a point, strongest first, as an isotropic antenna has it. */
export function arrivalsCommand(file: string, options: { at?: unknown; height?: unknown; tag?: unknown }): readonly object[] {
  const scenario = scenarioOf(file);
  const at = placeFrom('at', options.at, scenario.ground.sizeM);
  const heightM = options.height === undefined ? 1.7 : numberFrom('height', options.height, 0.3, 32);
  const here = tagHere(openExercise(scenario), tagFrom(options.tag, scenario), at, heightM, 0);
  for (const warning of here.arrivals.warnings) process.stderr.write(`${warning}\n`);
  const mhz = scenario.tags[here.tag]!.frequencyMHz;
  return here.arrivals.waves
    .map((wave) => ({
      azimuthDeg: rounded(wave.azimuthDeg, 2),
      elevationDeg: rounded(wave.elevationDeg, 2),
      powerDbm: rounded(wavePowerDbm(wave, here.eirpDbm, mhz), 2),
      kind: wave.kind,
      lossDb: Object.fromEntries(Object.entries(wave.lossDb).map(([cause, db]) => [cause, rounded(db as number, 2)])),
    }))
    .sort((a, b) => b.powerDbm - a.powerDbm);
}
