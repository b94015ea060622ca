import { antennaById } from '../../core/antenna/catalogue';
import { type Mark, onFootM, type RunState } from '../../core/run/state';
import { bearingDeg, distanceM, type MapPoint } from '../../core/units/frames';
import { lengthSaid } from './measures';
import { bearingText, blockedWords, windOf } from './words';

/** What an exercise lets a walker know without the ears: each is said only where it is granted. */
export type Known = { readonly compass: boolean; readonly ownPosition: boolean };

const axisOf = ({ hold }: RunState): string => (hold.rollDeg >= 45 ? 'upright' : 'flat');
const heightOf = ({ hold }: RunState): string => (hold.raised ? 'raised' : 'at the chest');

/** Where only so much may be walked, what is left of it is said here. */
const TOLD_LEFT_M = [1_000, 500, 200, 100, 50];

/** What became other between two states of a run, in words; nothing of it says where the tag is. */
export function changesInWords(
  before: RunState,
  now: RunState,
  { compass }: Pick<Known, 'compass'>,
  mostWalkM?: number,
): readonly string[] {
  const words: string[] = [];
  const say = (changed: boolean, text: string) => {
    if (changed) words.push(text);
  };
  say(before.controls.gainDb !== now.controls.gainDb, `gain ${Math.round(now.controls.gainDb)}`);
  say(before.controls.attenuatorDb !== now.controls.attenuatorDb, `attenuator ${now.controls.attenuatorDb}`);
  say(before.controls.tunedMHz !== now.controls.tunedMHz, `dial ${now.controls.tunedMHz.toFixed(5)} megahertz`);
  say(compass && before.hold.headingDeg !== now.hold.headingDeg, `antenna ${bearingText(now.hold.headingDeg)}`);
  say(axisOf(before) !== axisOf(now), `antenna ${axisOf(now)}`);
  say(before.hold.raised !== now.hold.raised, `antenna ${heightOf(now)}`);
  say(before.hold.antenna !== now.hold.antenna, antennaById(now.hold.antenna).name);
  const [walked, walks] = [before.legs.paceMPerS > 0, now.legs.paceMPerS > 0];
  say(
    walks && (!walked || before.legs.courseDeg !== now.legs.courseDeg),
    `${now.vehicle?.aboard ? 'driving' : 'walking'}${compass ? ` ${windOf(now.legs.courseDeg)}` : ''}`,
  );
  say(walked && !walks, 'standing');
  for (const leftM of mostWalkM === undefined ? [] : TOLD_LEFT_M) {
    say(mostWalkM! - onFootM(before) > leftM && mostWalkM! - onFootM(now) <= leftM, `${lengthSaid(leftM)} of walking left`);
  }
  say(!before.blocked && now.blocked, blockedWords(now));
  say(before.hold.aloftM !== now.hold.aloftM, now.hold.aloftM ? `climbing ${lengthSaid(now.hold.aloftM)}` : 'coming down');
  say(before.vehicle?.aboard !== now.vehicle?.aboard, now.vehicle?.aboard ? 'in the vehicle' : 'out of the vehicle');
  say(now.belief !== null && before.belief !== now.belief, 'own place set');
  words.push(...notebookWords(before.notebook, now.notebook, compass));
  say(before.guess !== now.guess, now.guess ? 'guess pin set' : 'guess pin taken away');
  say(before.rulings.length < now.rulings.length, 'ground ruled out');
  for (const { deed } of now.interventions.slice(before.interventions.length)) {
    if (deed.type === 'hint') words.push(`from the instructor: ${deed.text}`);
  }
  now.rulings.forEach(({ takenBack }, i) => {
    const was = before.rulings[i];
    say(was !== undefined && was.takenBack !== takenBack, takenBack ? 'ruling taken back' : 'ground ruled out again');
  });
  return words;
}

function notebookWords(before: readonly Mark[], now: readonly Mark[], compass: boolean): readonly string[] {
  return now.flatMap((mark, i) => {
    const was = before[i];
    if (!was) return [`bearing ${i + 1} marked${compass ? `, ${bearingText(mark.bearingDeg)}` : ''}`];
    if (was.struckOut === mark.struckOut) return [];
    return [`bearing ${i + 1} ${mark.struckOut ? 'struck out' : 'restored'}`];
  });
}

function vehicleWords({ vehicle, at }: RunState, ownPosition: boolean): string {
  if (!vehicle) return '';
  if (vehicle.aboard) return ' You sit in the vehicle.';
  return ownPosition ? ` The vehicle stands ${lengthSaid(distanceM(at, vehicle.at))} off, ${windOf(bearingDeg(at, vehicle.at))}.` : '';
}

/** Where one stands and how all is set, when it is asked for. */
export function hereInWords(state: RunState, start: MapPoint, { compass, ownPosition }: Known): string {
  const { controls, hold, walkedM, at, belief } = state;
  const heading = compass ? `${bearingText(hold.headingDeg)}, ` : '';
  const setting = `Antenna ${heading}${axisOf(state)}, ${heightOf(state)}. Gain ${Math.round(controls.gainDb)}, attenuator ${controls.attenuatorDb}.`;
  const walk = `Walked ${lengthSaid(onFootM(state))}.${vehicleWords(state, ownPosition)}`;
  if (!ownPosition && !belief) return `${setting} ${walk}`;
  const place = belief?.at ?? at;
  const away = (m: number, ahead: string, behind: string) => `${lengthSaid(Math.abs(m))} ${m < 0 ? behind : ahead}`;
  const stand = belief ? 'You said you stand' : 'You stand';
  const since = belief ? ` Walked since: ${lengthSaid(walkedM - belief.walkedM)}.` : '';
  return `${setting} ${walk} ${stand} ${away(place.eM - start.eM, 'east', 'west')} and ${away(place.nM - start.nM, 'north', 'south')} of the start.${since}`;
}
