import { CLEAREST_NOTE_HZ, pitchHz } from '../../core/receiver/tuning';
import type { Pulse } from '../../core/run/pulse';
import { type RunState, timeS } from '../../core/run/state';
import { tagAt } from '../../core/run/tagMotion';
import type { Scenario } from '../../core/scenario/schema';
import { turnDeg } from '../../core/units/angles';
import { bearingDeg, distanceM } from '../../core/units/frames';
import { bearingText } from '../ground/words';

/** A name and what is so, with a remark where it tells an instructor something. */
export type TruthLine = { readonly name: string; readonly value: string; readonly remark?: string };

/** From here on a sweep cannot tell front from back (see the habit of quiet gain). */
const LOUD_EXCESS_DB = 12;
/** A place whose loudest side is this far off the tag misleads. */
const MISLEADS_DEG = 15;

/** The tag that the dial is nearest to. */
export function dialTagOf({ tags }: Pick<Scenario, 'tags'>, { controls }: RunState): number {
  const offHz = (i: number) => Math.abs(pitchHz(tags[i]!.frequencyMHz, controls.tunedMHz) - CLEAREST_NOTE_HZ);
  return tags.reduce((nearest, _, i) => (offHz(i) < offHz(nearest) ? i : nearest), 0);
}

const side = (deg: number): string =>
  Math.abs(deg) < 3 ? 'on the tag' : `${Math.abs(Math.round(deg))}° ${deg > 0 ? 'right' : 'left'} of the tag`;

/** How the run stands against the truth, for the tag that the dial is on. */
export function truthLines(scenario: Scenario, state: RunState, pulses: readonly Pulse[]): readonly TruthLine[] {
  const tag = dialTagOf(scenario, state);
  const place = tagAt(scenario, tag, timeS(state));
  const toTag = bearingDeg(state.at, place);
  const name = scenario.tags.length > 1 ? scenario.tags[tag]!.name : 'Tag';
  const turn = turnDeg(toTag, state.hold.headingDeg);
  const lines: TruthLine[] = [
    { name, value: `${Math.round(distanceM(state.at, place))} m, ${bearingText(toTag)}` },
    {
      name: 'Antenna',
      value: bearingText(state.hold.headingDeg),
      remark: Math.abs(turn) > 150 ? `${side(turn)}: the back looks at it` : side(turn),
    },
  ];
  const last = pulses.find(({ truth }) => truth.tag === tag);
  return last ? [...lines, ...pulseLines(state, last)] : [...lines, { name: 'Last beep', value: 'none yet' }];
}

function pulseLines({ controls }: RunState, { heard, truth }: Pulse): readonly TruthLine[] {
  const off = turnDeg(truth.trueBearingDeg, truth.bestHeadingDeg);
  const misleads = Math.abs(off) > MISLEADS_DEG;
  const net = Math.round(controls.gainDb - controls.attenuatorDb);
  return [
    {
      name: 'Loudest side here',
      value: bearingText(truth.bestHeadingDeg),
      remark: misleads ? `${side(off)}: this place misleads` : side(off),
    },
    truth.leastGainDb === null
      ? { name: 'Gain', value: `${net}`, remark: 'no gain makes it heard here' }
      : { name: 'Gain', value: `${net}, least here ${Math.round(truth.leastGainDb)}`, ...excessRemark(net - truth.leastGainDb) },
    { name: 'Last beep', value: heard.flatOut ? 'flat out' : heard.audible ? 'heard' : 'not heard' },
  ];
}

function excessRemark(excessDb: number): Pick<TruthLine, 'remark'> {
  const over = Math.round(excessDb);
  if (over < -3) return { remark: 'too little on the loudest side' };
  if (over > LOUD_EXCESS_DB) return { remark: `${over} more than the ear needs: front and back sound alike` };
  return { remark: over <= 0 ? 'as little as can be heard' : `${over} more than the ear needs` };
}
