import { useId } from 'preact/hooks';
import { faultsAt } from '../../core/desk/draft';
import { fieldOf } from '../../core/desk/field';
import { Slide } from '../controls/Slide';
import { draft, faults, setField } from './deskState';
import { verdict } from './rehearsals';

type Field = { readonly path: string; readonly label: string };
const inField = (path: string): unknown => (draft.value ? fieldOf(draft.value, path) : undefined);

/** What is wrong with a field and all that lies in it, and the mend, beside it; `alone` leaves what lies in it to its own fields. */
export function FieldFaults({ path, id, alone = false }: { readonly path: string; readonly id?: string; readonly alone?: boolean }) {
  const here = faultsAt(faults.value, path).filter((fault) => !alone || fault.path === path);
  const unfair = faultsAt(verdict.value?.unfair ?? [], path).filter((one) => !alone || one.path === path);
  if (here.length + unfair.length === 0) return null;
  return (
    <ul class="desk-faults" id={id} data-field={path}>
      {here.map(({ path: at, found, mend }) => (
        <li key={`${at}${found}`}>
          {found}. <span class="quiet">Mend: {mend}.</span>
        </li>
      ))}
      {unfair.map(({ found, mend }) => (
        <li key={found}>
          Unfair: {found}. <span class="quiet">Mend: {mend}.</span>
        </li>
      ))}
    </ul>
  );
}

const wrong = (path: string, id: string) =>
  faultsAt(faults.value, path).length > 0 ? { 'aria-invalid': true, 'aria-describedby': `${id}-faults` } : {};

export function WordsField({ path, label, long = false }: Field & { readonly long?: boolean }) {
  const id = useId();
  const props = {
    id,
    value: String(inField(path) ?? ''),
    onInput: (event: { readonly currentTarget: { readonly value: string } }) =>
      setField(path, event.currentTarget.value, `change ${label.toLowerCase()}`, path),
    ...wrong(path, id),
  };
  return (
    <div class="desk-field desk-field-wide">
      <label for={id}>{label}</label>
      {long ? <textarea rows={3} {...props} /> : <input type="text" {...props} />}
      <FieldFaults path={path} id={`${id}-faults`} />
    </div>
  );
}

/** A number as it is typed; an empty field is a fault like any other until a number stands there. */
export function NumberField({
  path,
  label,
  unit,
  step = 1,
  optional = false,
}: Field & { readonly unit: string; readonly step?: number; readonly optional?: boolean }) {
  const id = useId();
  const value = inField(path);
  const shown = typeof value === 'number' && !Number.isNaN(value) ? String(value) : '';
  return (
    <div class="desk-field">
      <label for={id}>
        {label} <span class="unit">{unit}</span>
      </label>
      <input
        id={id}
        type="number"
        class="number"
        step={step}
        value={shown}
        onInput={({ currentTarget: { valueAsNumber, value: typed } }) => {
          const given = optional && typed === '' ? undefined : valueAsNumber;
          setField(path, given, `change ${label.toLowerCase()}`, path);
        }}
        {...wrong(path, id)}
      />
      <FieldFaults path={path} id={`${id}-faults`} />
    </div>
  );
}

/** East and north of a place, one beside the other. */
export function PlaceFields({ path, name }: { readonly path: string; readonly name: string }) {
  const id = useId();
  const at = inField(path) as readonly [number, number];
  const input = (axis: 0 | 1, label: string) => (
    <div class="desk-field">
      <label for={`${id}-${axis}`}>
        {label} <span class="unit">m</span>
      </label>
      <input
        id={`${id}-${axis}`}
        type="number"
        class="number"
        value={Number.isNaN(at[axis]) ? '' : String(at[axis])}
        onInput={({ currentTarget: { valueAsNumber } }) =>
          setField(path, axis === 0 ? [valueAsNumber, at[1]] : [at[0], valueAsNumber], `move ${name}`, path)
        }
        {...wrong(path, id)}
      />
    </div>
  );
  return (
    <div class="desk-pair">
      {input(0, 'East')}
      {input(1, 'North')}
      <FieldFaults path={path} id={`${id}-faults`} />
    </div>
  );
}

export function SlideField({
  path,
  label,
  unit = '',
  least = 0,
  most,
  step,
  per = 1,
}: Field & {
  readonly unit?: string;
  readonly least?: number;
  readonly most: number;
  readonly step: number;
  /** The slider counts in this: 0.01 shows a share as a percentage. */
  readonly per?: number;
}) {
  const value = Number(inField(path) ?? least);
  const shown = Math.round(value / per);
  const held = Math.min(most, Math.max(least, Number.isNaN(shown) ? least : shown));
  return (
    <div class="desk-field desk-slide">
      <span class="desk-slide-name">
        {label}
        <output class="number">
          {shown}
          <span class="unit"> {unit}</span>
        </output>
      </span>
      <Slide
        name={label}
        value={held}
        least={least}
        most={most}
        step={step}
        marks={[]}
        keys="arrows"
        said={`${shown} ${unit}`}
        onSet={(to) => setField(path, Math.round(to * per * 1e6) / 1e6, `change ${label.toLowerCase()}`, path)}
      />
      <FieldFaults path={path} />
    </div>
  );
}

/** One of a few words, in a list that opens. */
export function ChoiceField<V extends string>({
  path,
  label,
  words,
  chosen = String(inField(path) ?? 'none'),
  onChoose = (value) => setField(path, value, `change ${label.toLowerCase()}`),
}: Field & { readonly words: Readonly<Record<V, string>>; readonly chosen?: string; readonly onChoose?: (value: V) => void }) {
  const id = useId();
  return (
    <div class="desk-field">
      <label for={id}>{label}</label>
      <select id={id} value={chosen} onChange={({ currentTarget: { value } }) => onChoose(value as V)} {...wrong(path, id)}>
        {(Object.entries(words) as [V, string][]).map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
      <FieldFaults path={path} id={`${id}-faults`} />
    </div>
  );
}

/** A tick; `orNone` takes the field away where there is none, as the format wants it of fields that may be left out. */
export function TickField({ path, label, orNone = false }: Field & { readonly orNone?: boolean }) {
  return (
    <label class="desk-tick">
      <input
        type="checkbox"
        checked={inField(path) === true}
        onChange={({ currentTarget: { checked } }) =>
          setField(path, checked || !orNone ? checked : undefined, `change ${label.toLowerCase()}`)
        }
      />
      {label}
    </label>
  );
}

/** Which of a list belong to it: cautions, antennas. */
export function TickList<V extends string>({ path, label, words }: Field & { readonly words: Readonly<Record<V, string>> }) {
  const listed = inField(path) as readonly V[];
  const all = Object.keys(words) as V[];
  return (
    <fieldset class="desk-field desk-field-wide desk-ticks">
      <legend>{label}</legend>
      {all.map((one) => (
        <label key={one} class="desk-tick">
          <input
            type="checkbox"
            checked={listed.includes(one)}
            onChange={({ currentTarget: { checked } }) =>
              setField(
                path,
                all.filter((other) => (other === one ? checked : listed.includes(other))),
                `change ${label.toLowerCase()}`,
              )
            }
          />
          {words[one]}
        </label>
      ))}
      <FieldFaults path={path} />
    </fieldset>
  );
}
