import { expect, test } from 'vitest';
import { begin } from '../../../src/core/run/begin';
import { step } from '../../../src/core/run/step';
import { ANTENNA_IDS } from '../../../src/core/scenario/schema';
import { plainScenario } from '../world/fixtureScenario';

const scenario = plainScenario({ kit: { ...plainScenario().kit, antennas: [...ANTENNA_IDS] } });

test.each(ANTENNA_IDS)('%s is in the hand at the start as it is taken up: loop and whip standing, rods level', (startAntenna) => {
  const { hold } = begin({ ...scenario, kit: { ...scenario.kit, startAntenna } });
  expect(hold.rollDeg).toBe(startAntenna === 'loop' || startAntenna === 'whip' ? 90 : 0);
});

test('changing to the whip stands it up for half a minute of work, changing back lays the rods level', () => {
  const whip = step(scenario, begin(scenario), { type: 'changeAntenna', antenna: 'whip' });
  expect(whip.hold).toMatchObject({ antenna: 'whip', rollDeg: 90 });
  expect(whip.busyUntilTick).toBe(600);
  const back = step(scenario, whip, { type: 'changeAntenna', antenna: 'yagi3' });
  expect(back.hold).toMatchObject({ antenna: 'yagi3', rollDeg: 0 });
});
