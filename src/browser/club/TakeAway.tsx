import { clubReport } from '../../core/club/clubReport';
import { csvOf } from '../../core/club/csv';
import { geojsonOf } from '../../core/club/geojson';
import { gpxOf } from '../../core/club/gpx';
import { pageOf } from '../../core/club/page';
import { statementsOf } from '../../core/club/statements';
import { tableDocument } from '../../core/club/tableDocument';
import { saveFile } from '../saveFile';
import { anonymous, clubTable, report, taken, unsaved } from './clubTable';
import { keeping } from './keptTable';

const asLine = (value: unknown): string => `${JSON.stringify(value)}\n`;

/** The same functions as those of the command line: the same table gives the same bytes. */
const SHAPES = [
  { text: 'CSV', what: 'for a spreadsheet', name: 'club-table.csv', type: 'text/csv', make: () => csvOf(report.peek()) },
  { text: 'GPX', what: 'tracks', name: 'club-table.gpx', type: 'application/gpx+xml', make: () => gpxOf(report.peek()) },
  {
    text: 'GeoJSON',
    what: 'tracks',
    name: 'club-table.geojson',
    type: 'application/geo+json',
    make: () => asLine(geojsonOf(report.peek())),
  },
  {
    text: 'xAPI',
    what: 'statements',
    name: 'club-table-xapi.json',
    type: 'application/json',
    make: () => asLine(statementsOf(report.peek())),
  },
  { text: 'Page', what: 'to print or send', name: 'club-table.html', type: 'text/html', make: () => pageOf(report.peek()) },
] as const;

const NOT_SAVED = {
  kept: 'Not saved yet: until then this browser alone keeps it, from one visit to the next, and lets go of it by Clear. ',
  outgrown: 'Not saved, and too large for this browser to keep: what came last is gone when this page is closed. ',
  refused: 'Not saved, and this browser keeps nothing: it is gone when this page is closed. ',
} as const;

/** The table as files, on paper, and to go on with next week. */
export function TakeAway() {
  const save = () => {
    const table = clubTable.peek();
    const faults = taken.peek().flatMap(({ collected }) => collected?.faults ?? []);
    saveFile('club-table.json', asLine(tableDocument(table, clubReport(table), faults, false)));
    unsaved.value = false;
  };
  return (
    <section class="club-part club-away" aria-label="Take away">
      <h2>Take away</h2>
      <div class="club-deeds">
        <button type="button" class="primary" onClick={save}>
          Save the table
        </button>
        <button type="button" onClick={() => print()}>
          Print
        </button>
        {SHAPES.map(({ text, what, name, type, make }) => (
          <button key={text} type="button" onClick={() => saveFile(name, make(), type)}>
            {text} <span class="quiet">{what}</span>
          </button>
        ))}
      </div>
      <p class="quiet">
        {unsaved.value ? NOT_SAVED[keeping.value] : 'Saved. '}
        Give the saved table here next week, with the new runs, and the season goes on.
        {anonymous.value && ' The saved table keeps the names, for nobody could be told apart without; all else leaves them out.'} The
        ground is invented: tracks lie from 0° north 0° east on, in open sea.
      </p>
    </section>
  );
}
