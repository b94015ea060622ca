import { expect, test } from 'vitest';
import { killRounds, lostS } from '../faults/killRounds';

test('the browser is killed four times in the middle of runs: the next start has all but the last two seconds; `npm run kills` does it 1,000 times', async () => {
  const rounds = await killRounds(4, 'a few kills');
  expect(rounds).toHaveLength(4);
  expect(rounds.filter(({ shownS }) => shownS >= 2).length).toBeGreaterThan(1);
  for (const round of rounds) expect(lostS(round), JSON.stringify(round)).toBeLessThanOrEqual(2);
});
