/** What to type instead, by the path in the file with numbers left out. Longest match wins. */
const MENDS: Readonly<Record<string, string>> = {
  format: 'write "faintward-scenario"',
  version: 'write 1, or open the file with a newer version of the program',
  title: 'give a title of 1 to 60 characters',
  brief: 'give a brief of 1 to 600 characters',
  author: 'give a name of 1 to 60 characters',
  lesson: 'choose one of the lessons in the scenario schema',
  level: 'give a whole number from 1 to 5',
  seed: 'give 1 to 40 characters',
  'ground.sizeM': 'give metres between 1000 and 10000',
  'ground.cellM': 'give metres between 5 and 20',
  'ground.relief.style': 'choose ridged, smooth, plateau, dale, coast or fen',
  'ground.relief.strengthM': 'give metres between 0 and 600',
  'ground.own': 'bring the elevation file in again at the Course desk, or leave it out for a drawn relief',
  'ground.cover': 'give shares of the ground between 0 and the bound, not more than 1 together',
  'ground.coverRules': 'give a cover with heights in metres from -500 to 9000 and slopes in percent from 0 to 400, or leave it out',
  'ground.patches': 'give a cover with an outline of 3 to 24 places inside the map, or leave it out',
  'ground.powerLines': 'give route, spans and heights in metres within the bounds of the scenario schema',
  'ground.buildings.climb': 'write true where its roof may be climbed, or leave it out',
  'radio.guidedDbPer100M': 'give decibels per 100 m of power line between 0.2 and 30, or leave it out for 3',
  tags: 'give one to eight tags',
  'tags.at': 'give [east, north] in metres inside the map',
  'tags.frequencyMHz': 'give megahertz between 30 and 500, for example 151.5',
  'tags.eirpDbm': 'give dBm between -40 and 30',
  'tags.pulseMs': 'give milliseconds between 8 and 60',
  'tags.pulsesPerMinute': 'give pulses a minute between 20 and 120',
  'tags.heightM': 'give metres above ground between 0.02 and 30',
  'tags.movement': 'give kind "stays", "path" or "wanders" with what the kind needs',
  'kit.antennas': 'list antennas among yagi3, yagi2, phased2, yagi5, loop and whip',
  'kit.startGainDb': 'give decibels between 0 and 90',
  'kit.startAttenuatorDb': 'give 0, 10, 20 or 30',
  start: 'give at as [east, north] in metres inside the map, and facingDeg from 0 to below 360',
  'limits.timeS': 'give seconds between 60 and 14400',
  task: 'give kind "find" or "fix" with the number of the tag that is asked for, or leave it out where any tag counts',
  'task.keepAwayM': 'give metres between 50 and 3000, or leave it out where one may come as near as one likes',
  'limits.vehicle': 'write true for a vehicle that stands at the start and drives along roads and tracks, else false',
  'limits.walkM': 'give metres between 100 and 40000, or leave it out where one may walk as far as one likes',
  parS: 'give the seconds that the steady walker needs, 1 to 14400, or leave it out',
  stages: 'give one to eight texts, each with what it waits for: bearings, pin, on-foot, reached, walked or time',
  companion: 'write "beside" or "afterwards", or leave it out for a steady walker that is sent on request',
  tagCheck: 'write true to ask for the tag check before leaving, or leave it out',
  weights: 'give weights between 0 and 4',
};

/** The mend for a path such as `tags.0.at.1`. */
export function mendFor(path: string): string {
  const parts = path.split('.').filter((part) => !/^\d+$/.test(part));
  for (let length = parts.length; length > 0; length--) {
    const mend = MENDS[parts.slice(0, length).join('.')];
    if (mend) return mend;
  }
  return 'see "Scenario files" in DEVELOPERS.md and the schema beside the scenarios';
}
