import type { Scenario } from '../scenario/schema';
import { markBuilt, raiseBuildings } from './buildings';
import { coverOver } from './coverOver';
import { buildFieldWalls } from './fieldWalls';
import { coverLand } from './landCover';
import { buildPowerLines } from './powerLines';
import { roadLandOf } from './roadLand';
import { chooseSteads } from './steads';
import { runStreams } from './streams';
import { layTerrain } from './terrain';
import { maskTracks } from './trackMask';
import { layFarmTrack, layThroughWays } from './tracks';
import type { World } from './world';

/** The ground of a scenario: land, water, cover, ways, buildings, walls, lines, in this order. Same seed and plan, same bits, in every engine. */
export function generateWorld({ seed, ground: plan }: Pick<Scenario, 'seed' | 'ground'>): World {
  const land = layTerrain(seed, plan);
  const streams = runStreams(plan.water.streams, land);
  const { cells, cellM, sizeM } = land;
  const grid = { columns: cells, rows: cells, cellM };
  const groundM = { ...grid, values: new Float32Array(land.groundM) };
  const cover = { ...grid, values: coverLand(seed, plan, land) };
  coverOver(plan, land, cover.values);

  const roads = roadLandOf(land, cover.values);
  const tracks = layThroughWays(seed, plan, roads);
  const steads = chooseSteads(seed, plan, roads);
  for (const { at } of steads) {
    const track = layFarmTrack(roads, at, tracks);
    if (track) tracks.push(track);
  }
  const trackMask = { ...grid, values: maskTracks(tracks, cells, cellM) };

  const buildings = raiseBuildings(seed, plan, { groundM, cover, sizeM }, steads, tracks);
  markBuilt(cover, buildings);
  const fieldWalls = plan.fieldWalls ? buildFieldWalls(seed, { groundM, cover, trackMask, sizeM }, steads) : [];
  const powerLines = buildPowerLines(plan.powerLines, { groundM, sizeM });
  return Object.freeze({ sizeM, cellM, groundM, cover, tracks, trackMask, streams, fieldWalls, buildings, powerLines });
}
