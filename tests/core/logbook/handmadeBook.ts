import { addDays, type Day, dayNumber } from '../../../src/core/logbook/day';
import type { BookRecord, RunRecord, SessionRecord } from '../../../src/core/logbook/record';
import { randomFor } from '../../../src/core/random/draw';

export const DAY_ONE: Day = '2031-03-03';
export const onDay = (offset: number): Day => addDays(DAY_ONE, offset);
const msOn = (day: Day, hour = 18) => (dayNumber(day) * 24 + hour) * 3_600_000;

let made = 0;
export function sessionOn(day: Day, drill: string, part: Partial<SessionRecord> = {}): SessionRecord {
  made++;
  return {
    kind: 'session',
    id: `s${String(made).padStart(6, '0')}`,
    atMs: msOn(day) + made,
    day,
    drill,
    as: 'practice',
    number: 3,
    rightShare: 0.8,
    level: 3,
    streak: 0,
    erred: true,
    seconds: 70,
    aided: false,
    ...part,
  };
}

export function runOn(day: Day, part: Partial<RunRecord> = {}): RunRecord {
  made++;
  return {
    kind: 'run',
    id: `r${String(made).padStart(6, '0')}`,
    atMs: msOn(day) + made,
    day,
    title: 'A walk',
    digest: 'ab'.repeat(32),
    technique: 71,
    habits: { quietGain: 80, clearView: null },
    found: true,
    minutes: 14,
    ...part,
  };
}

/** A book of many kinds of entry, from a seed. */
export function drawnBook(seed: string, size: number): BookRecord[] {
  const random = randomFor(seed, 'test');
  return Array.from({ length: size }, (_, i): BookRecord => {
    const day = onDay(Math.floor(60 * random()));
    const entry = { id: `${seed}-${i}`, atMs: msOn(day, Math.floor(20 * random())), day };
    const kind = Math.floor(5 * random());
    if (kind === 0) return { ...entry, kind: 'note', note: `n${Math.floor(4 * random())}`, text: random() < 0.2 ? '' : `words ${i}` };
    if (kind === 1) return { ...entry, kind: 'backup' };
    if (kind === 2) return { ...entry, kind: 'check', device: 'Headphones', volumeDb: -12, thresholdDb: Math.round(20 * random()) - 10 };
    if (kind === 3) return { ...runOn(day), ...entry };
    return { ...sessionOn(day, ['front-or-back', 'how-far', 'on-the-note'][Math.floor(3 * random())]!), ...entry };
  });
}
