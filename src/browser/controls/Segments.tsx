/** A few choices in one row, one of them on. */
export function Segments<V extends string | number | boolean>({
  name,
  choices,
  chosen,
  onChoose,
}: {
  readonly name: string;
  readonly choices: readonly { readonly value: V; readonly text: string; readonly said?: string }[];
  readonly chosen: V;
  readonly onChoose: (value: V) => void;
}) {
  return (
    <fieldset class="segments" aria-label={name}>
      {choices.map(({ value, text, said }) => (
        <button key={String(value)} type="button" aria-pressed={value === chosen} aria-label={said} onClick={() => onChoose(value)}>
          {text}
        </button>
      ))}
    </fieldset>
  );
}
