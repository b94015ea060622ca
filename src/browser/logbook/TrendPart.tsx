import { useSignal } from '@preact/signals';
import type { Book } from '../../core/logbook/book';
import { LEAST_NUMBERS } from '../../core/logbook/trend';
import { TrendChart } from '../debrief/charts/TrendChart';
import { type SkillRow, skillRows } from './skills';

/** How each habit and skill has gone, and whether it is more than chance. */
export function TrendPart({ book }: { readonly book: Book }) {
  const chosen = useSignal<string | null>(null);
  const rows = skillRows(book);
  const shown = rows.find(({ id }) => id === chosen.value) ?? rows.at(-1);
  return (
    <section class="book-part">
      <h2>Trends</h2>
      {!shown && <p class="quiet">Every drill and every run leaves a number here.</p>}
      {shown && (
        <>
          <p class="quiet">
            A change counts only beyond what chance makes of {LEAST_NUMBERS} numbers or more: the least change that can be told with 95 %. A
            press on a row draws it.
          </p>
          <TrendFigure row={shown} />
          <div class="book-table">
            <table>
              <thead>
                <tr>
                  <th scope="col">Skill</th>
                  <th scope="col" class="book-times">
                    Times
                  </th>
                  <th scope="col">First three</th>
                  <th scope="col">Last three</th>
                  <th scope="col">Least change</th>
                  <th scope="col">So far</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <TrendLine
                    key={row.id}
                    row={row}
                    shown={row === shown}
                    onShow={() => {
                      chosen.value = row.id;
                    }}
                  />
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
    </section>
  );
}

function TrendFigure({ row: { title, unit, numbers, trend, text, most } }: { readonly row: SkillRow }) {
  return (
    <figure class="book-figure">
      <figcaption>
        {title}
        {unit && `, ${unit}`}
      </figcaption>
      <TrendChart
        said={`${title}: ${numbers.length} numbers, the last ${text(numbers.at(-1)!)} ${unit}; the table has them`}
        numbers={numbers}
        chance={trend && { from: trend.first, within: trend.detectableOfMeans }}
        {...(most === undefined ? {} : { most })}
      />
      <details>
        <summary>The numbers</summary>
        <p class="number">{numbers.map(text).join(' · ')}</p>
      </details>
    </figure>
  );
}

function TrendLine({ row, shown, onShow }: { readonly row: SkillRow; readonly shown: boolean; readonly onShow: () => void }) {
  const { title, unit, numbers, text, trend } = row;
  return (
    <tr>
      <th scope="row">
        <button type="button" class="book-row" aria-pressed={shown} onClick={onShow}>
          {title}
        </button>
      </th>
      <td class="number book-times">{numbers.length}</td>
      <td class="number">{text(trend?.first ?? numbers[0]!)}</td>
      <td class="number">
        {text(trend?.last ?? numbers.at(-1)!)}
        {unit === '°' ? unit : <span class="unit"> {unit}</span>}
      </td>
      <td class="number">{trend ? text(trend.detectableOfMeans) : '–'}</td>
      <td>{trend ? trend.verdict : `${Math.max(0, LEAST_NUMBERS - numbers.length)} more to tell`}</td>
    </tr>
  );
}
