import { hearingChance, loudnessDb } from '../core/ear/hear';
import { leastGainDb } from '../core/ear/leastGain';
import { USUAL_LISTENER } from '../core/ear/loudness';
import { receive } from '../core/receiver/receive';
import { clearestDialMHz } from '../core/receiver/tuning';
import { openExercise } from '../core/run/exercise';
import { atTerminal, bestAtPlace, bestHold, noiseDbm, tagHere } from '../core/run/sense';
import type { Hold } from '../core/run/state';
import { ANTENNA_IDS, type Scenario } from '../core/scenario/schema';
import { addPowersDb } from '../core/units/decibels';
import { bearingDeg } from '../core/units/frames';
import { numberFrom, oneOf, placeFrom, scenarioOf, tagFrom, UsageError } from './inputs';

type Options = { at?: unknown; gain?: unknown; attenuator?: unknown; roll?: unknown; antenna?: unknown; step?: unknown; tag?: unknown };

const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits));

/** What a turn of the antenna would bring at a place and setting, dial on the tag's clearest note. */
export function sweepCommand(file: string, options: Options): object {
  const scenario = scenarioOf(file);
  const at = placeFrom('at', options.at, scenario.ground.sizeM);
  const [tag, knobs, hold] = [tagFrom(options.tag, scenario), settingFrom(options), holdFrom(options, scenario)];
  const stepDeg = options.step === undefined ? 5 : numberFrom('step', options.step, 0.1, 180);
  const exercise = openExercise(scenario);
  const here = tagHere(exercise, tag, at, 1.7, 0);
  const setting = { ...knobs, tunedMHz: clearestDialMHz(here.carrierMHz) };
  const { pulseMs } = scenario.tags[here.tag]!;
  const { outsideNoiseDbm, ownNoiseDbm } = noiseDbm(exercise);
  const headings = [];
  for (let deg = 0; deg < 360 - 1e-9; deg += stepDeg) {
    const input = atTerminal(exercise, here, { ...hold, headingDeg: deg });
    const received = receive(input, setting);
    headings.push({
      deg: rounded(deg),
      powerDbm: rounded(input.powerDbm),
      noiseDbm: rounded(addPowersDb(addPowersDb(outsideNoiseDbm, ownNoiseDbm), input.buzzDbm)),
      levelDb: rounded(received.levelDb),
      loudnessDb: rounded(loudnessDb(received, pulseMs, USUAL_LISTENER)),
      pDetect: rounded(hearingChance(received, pulseMs, USUAL_LISTENER), 4),
    });
  }
  const best = bestHold(exercise, here, hold.antenna);
  return {
    leastGainDb: leastGainDb(bestAtPlace(exercise, here, best, hold.antenna), USUAL_LISTENER),
    trueBearingDeg: rounded(bearingDeg(at, here.tagAt)),
    headings,
  };
}

export function settingFrom(options: Pick<Options, 'gain' | 'attenuator'>): { readonly gainDb: number; readonly attenuatorDb: number } {
  const attenuatorDb = options.attenuator === undefined ? 0 : numberFrom('attenuator', options.attenuator, 0, 30);
  if (![0, 10, 20, 30].includes(attenuatorDb)) throw new UsageError(`--attenuator wants 0, 10, 20 or 30, found ${attenuatorDb}`);
  return { gainDb: numberFrom('gain', options.gain, 0, 90), attenuatorDb };
}

export function holdFrom(options: Pick<Options, 'roll' | 'antenna'>, { kit }: Scenario): Hold {
  return {
    headingDeg: 0,
    rollDeg: options.roll === undefined ? 0 : numberFrom('roll', options.roll, 0, 90),
    raised: false,
    antenna: options.antenna === undefined ? kit.startAntenna : oneOf('antenna', options.antenna, ANTENNA_IDS),
  };
}
