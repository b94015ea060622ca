import type { NoiseSource } from '../radio/gapNoise';
import { toRad } from '../units/angles';
import { toDb, toPowerRatio } from '../units/decibels';
import type { MapPoint } from '../units/frames';
import type { Exercise } from './exercise';
import type { Hold } from './state';

/** What an antenna makes of the sparking supports round a place: buzz at its terminal by how it is held, dBm. */
export type BuzzHere = (hold: Pick<Hold, 'antenna' | 'headingDeg' | 'rollDeg' | 'raised'>) => number;

const NONE: BuzzHere = () => Number.NEGATIVE_INFINITY;

/** Sources have every polarization: half of each one's power meets the antenna upright, half level, and sources add in power. */
export function buzzHere(exercise: Exercise, tag: number, tagAt: MapPoint, at: MapPoint, heightM: number): BuzzHere {
  const sources = sourcesAt(exercise, tag, tagAt, at, heightM);
  if (sources.length === 0) return NONE;
  const fans = sources.flatMap((source) => [unitWave(source, 'up'), unitWave(source, 'level')].map((wave) => ({ source, wave })));
  return ({ antenna, headingDeg, rollDeg, raised }) => {
    const receiving = exercise.antenna(antenna, tag);
    const watts = fans.reduce(
      (sum, { source, wave }) => sum + (toPowerRatio(source.powerDbm) * receiving.fan([wave])(headingDeg, rollDeg, raised)) / 2,
      0,
    );
    return toDb(watts) + exercise.lineNoiseRaisedDb;
  };
}

/** The sources at the last place asked for: a shell asks at every frame, a walker seldom moves a metre between two. */
const lastAsked = new WeakMap<Exercise, { readonly key: string; readonly sources: readonly NoiseSource[] }>();

function sourcesAt(exercise: Exercise, tag: number, tagAt: MapPoint, at: MapPoint, heightM: number): readonly NoiseSource[] {
  if (exercise.world.powerLines.length === 0) return [];
  const place = { eM: Math.round(at.eM), nM: Math.round(at.nM) };
  const key = `${place.eM}/${place.nM}/${heightM}/${exercise.scenario.tags[tag]!.frequencyMHz}`;
  const kept = lastAsked.get(exercise);
  if (kept?.key === key) return kept.sources;
  const sources = exercise.airspace(tag, tagAt).lineNoiseAt(place, heightM);
  lastAsked.set(exercise, { key, sources });
  return sources;
}

/** A wave of 1 V/m from a source, its field upright or level across the direction. */
function unitWave({ azimuthDeg, elevationDeg }: NoiseSource, field: 'up' | 'level') {
  const [azimuth, elevation] = [toRad(azimuthDeg), toRad(elevationDeg)];
  const direction = { azimuthDeg, elevationDeg, eastIm: 0, northIm: 0, upIm: 0 };
  if (field === 'level') return { ...direction, eastRe: Math.cos(azimuth), northRe: -Math.sin(azimuth), upRe: 0 };
  const back = -Math.sin(elevation);
  return { ...direction, eastRe: back * Math.sin(azimuth), northRe: back * Math.cos(azimuth), upRe: Math.cos(elevation) };
}
