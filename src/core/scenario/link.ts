import { type Fault, InputFaults } from './faults';
import { jsonFrom } from './jsonText';
import { scenarioFrom } from './load';
import { bytesOf, deflated, fromLetters, inflated, textOf, toLetters } from './packing';
import type { Scenario } from './schema';
import { canonicalText } from './seal';

/** A scenario in a link begins with this: the kind of packing, so that another may come beside it. */
const PACKING = 'd1.';
/** Longest packed text that is read. A scenario without own ground takes under 2,000. */
export const LONGEST_LINK = 60_000;
/** Most text that comes out of a link, and how many times longer than the link it may be: more is no scenario. */
const MOST_BYTES = 400_000;
const MOST_RATIO = 60;
/** Bytes that a QR code of a projector's size still carries for a phone across a room. */
export const QR_BYTES = 800;

/** Words that scenarios have in common: packing takes them from here. Part of the format, never changed. */
const COMMON = `{"aids":{"compass":true,"fix":true,"ownPosition":true,"sMeter":true,"soundRing":false},"author":"Harrowmere Tracking Club","brief":"","cautions":["wires","heights","water","roads","weather","alone","land","hearing"],"format":"faintward-scenario","ground":{"buildings":[{"alongDeg":0,"at":[],"heightM":6,"lengthM":20,"walls":"stone","widthM":12}],"cellM":10,"cover":{"rock":0.02,"scrub":0.06,"wet":0.04,"wood":0.2},"farms":0,"fieldWalls":true,"hamlets":0,"powerLines":[{"conductors":3,"route":[[],[]],"spanM":110,"supportHeightM":12,"voltage":"medium","wireHeightM":10}],"relief":{"baseHeightM":380,"roughness":0.3,"strengthM":60,"style":"smooth"},"sizeM":2000,"tracks":1,"water":{"lakes":0,"streams":3}},"kit":{"antennas":["yagi3"],"designMHz":150,"noiseFigureDb":4,"startAntenna":"yagi3","startAttenuatorDb":0,"startGainDb":80,"startOffsetHz":0},"lesson":"quiet-gain","level":1,"limits":{"findWithinM":12,"paceMPerS":1.6,"timeS":2700,"vehicle":false},"radio":{"groundClass":"medium-dry","lineNoiseDb":0,"mainsHz":50,"noise":"quiet-rural"},"seed":"","start":{"at":[],"facingDeg":0},"tags":[{"at":[],"decayDbPerHour":0,"driftHzPerHour":0,"eirpDbm":10,"frequencyMHz":150.1,"heightM":0.5,"movement":{"kind":"stays"},"name":"","pulseMs":20,"pulsesPerMinute":60,"whip":{"leanDeg":15,"towardDeg":40}}],"title":"","version":1,"weights":{"clearView":1,"quietGain":1,"setThenSweep":1,"walkAndListen":1}}`;

/** A scenario as text for the fragment of a link: letters, digits, `-`, `_` and `.` only. */
export const packedScenario = (scenario: Scenario): string =>
  PACKING + toLetters(deflated(bytesOf(canonicalText(scenario)), bytesOf(COMMON)));

/**
 * The scenario in a packed text.
 * @throws InputFaults for text that is too long, not packed so, or unpacks to more than a scenario can be; every schema fault
 */
export function unpackedScenario(packed: string, file = 'link'): Scenario {
  const fault = (found: string, mend: string): Fault => ({ file, path: '', found, mend });
  const refuse = (found: string, mend = 'copy the whole link again') => new InputFaults([fault(found, mend)]);
  if (packed.length > LONGEST_LINK)
    throw refuse(`${packed.length} characters, more than the ${LONGEST_LINK} that are read`, 'share it as a file');
  if (!packed.startsWith(PACKING))
    throw refuse('no exercise that this version can unpack', 'copy the whole link again, or update the program');
  const bytes = fromLetters(packed.slice(PACKING.length));
  if (!bytes) throw refuse('letters that no exercise is packed in');
  const unpacked = inflated(bytes, Math.min(MOST_BYTES, 4_000 + bytes.length * MOST_RATIO), bytesOf(COMMON));
  if (unpacked === null) throw refuse('a packed exercise that is cut off or changed');
  if (unpacked === 'too much') throw refuse('a link that unpacks to more than any exercise holds', 'do not use it');
  return scenarioFrom(file, jsonFrom(file, textOf(unpacked)));
}
