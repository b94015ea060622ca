import { antennaById } from '../antenna/catalogue';
import { makeReceivingAntenna, type ReceivingAntenna } from '../antenna/orientation';
import { type Airspace, makeAirspace } from '../radio/arrivals';
import type { Arrivals } from '../radio/wave';
import type { AntennaId, Scenario } from '../scenario/schema';
import { digestOf } from '../scenario/seal';
import type { MapPoint } from '../units/frames';
import { generateWorld } from '../world/generate';
import type { World } from '../world/world';
import { sendingPlace } from './sendingPlace';

/** An exercise that is open: its ground, and what the radio model keeps between pulses. */
export type Exercise = {
  readonly scenario: Scenario;
  readonly digest: string;
  readonly world: World;
  /** The waves of one tag when it is at a place; places of moving tags lie on a lattice of 10 m. */
  readonly airspace: (tag: number, tagAt: MapPoint) => Airspace;
  readonly antenna: (id: AntennaId, tag: number) => ReceivingAntenna;
  /** How much louder lines spark than the scenario says, dB: an instructor's doing, 0 as it is opened. */
  readonly lineNoiseRaisedDb: number;
};

/** Airspaces kept at a time: the last places of eight moving tags. */
const KEPT = 24;

/** Opens an exercise on its own ground; `world` may be given where it was generated elsewhere (a worker). */
export function openExercise(scenario: Scenario, world: World = generateWorld(scenario)): Exercise {
  const airspaces = new Map<string, Airspace>();
  const antennas = new Map<string, ReceivingAntenna>();
  return {
    scenario,
    digest: digestOf(scenario),
    world,
    lineNoiseRaisedDb: 0,
    airspace(tag, tagAt) {
      const at = sendingPlace(scenario, tag, tagAt);
      const key = `${tag}/${at.eM}/${at.nM}`;
      const kept = airspaces.get(key) ?? keepingLast(makeAirspace({ scenario, world, tagIndex: tag, tagAt: at }));
      airspaces.delete(key);
      airspaces.set(key, kept); // newest last
      if (airspaces.size > KEPT) airspaces.delete(airspaces.keys().next().value!);
      return kept;
    },
    antenna(id, tag) {
      const key = `${id}/${tag}`;
      const known = antennas.get(key);
      if (known) return known;
      const made = makeReceivingAntenna(antennaById(id).pattern(scenario.tags[tag]!.frequencyMHz, scenario.kit.designMHz));
      antennas.set(key, made);
      return made;
    },
  };
}

/** One who stands hears pulse after pulse of the same waves: those of the last place are kept. */
function keepingLast(airspace: Airspace): Airspace {
  let last: { readonly at: MapPoint; readonly heightM: number; readonly arrivals: Arrivals } | undefined;
  return {
    ...airspace,
    arrivalsAt(at, heightM) {
      if (last?.at.eM === at.eM && last.at.nM === at.nM && last.heightM === heightM) return last.arrivals;
      last = { at, heightM, arrivals: airspace.arrivalsAt(at, heightM) };
      return last.arrivals;
    },
  };
}
