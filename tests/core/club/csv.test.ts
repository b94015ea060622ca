import { expect, test } from 'vitest';
import { csvCell, csvOf } from '../../../src/core/club/csv';
import { handmadeRow, reportOf } from './handmadeTable';

/** A reader by RFC 4180, written for this test: records of fields. */
function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let [record, field, quoted] = [[] as string[], '', false];
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    if (quoted && sign === '"' && text[i + 1] === '"') field += text[++i];
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === ',') [record, field] = [[...record, field], ''];
    else if (!quoted && sign === '\r' && text[i + 1] === '\n') {
      records.push([...record, field]);
      [record, field] = [[], ''];
      i++;
    } else field += sign;
  }
  expect([record, field, quoted]).toEqual([[], '', false]);
  return records;
}

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '=HYPERLINK("http://x","y")'])(
  'a name %j stays text in a spreadsheet',
  (name) => {
    const [record] = readCsv(`${csvCell(name)}\r\n`);
    expect(record).toEqual([`'${name}`]);
  },
);

test.each(['Rowan', 'O’Shea, Bryn', 'say "hello"', 'two\r\nlines', ' =1', ''])('a name %j is kept as it is', (name) => {
  expect(readCsv(`${csvCell(name)}\r\n`)).toEqual([[name]]);
});

test('every line has the fields of the header, whatever the names hold', () => {
  const rows = ['Rowan', '=cmd|x', 'a,b\r\nc"', ''].map((name, i) => handmadeRow(name, { technique: i === 2 ? null : 50 + i }));
  const records = readCsv(csvOf(reportOf(...rows)));
  expect(records.length).toBe(5);
  for (const record of records) expect(record.length).toBe(records[0]!.length);
  const column = (name: string) => records.slice(1).map((record) => record[records[0]!.indexOf(name)]);
  expect(column('place by technique')).toEqual(['1', '2', '3', '']);
  expect(column('name')).toEqual(['', "'=cmd|x", 'Rowan', 'a,b\r\nc"']);
  expect(column('replay')).toEqual(['checked', 'checked', 'checked', 'checked']);
});
