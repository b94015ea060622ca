import { useRef } from 'preact/hooks';

/** Which keys a slider keeps for itself while it has the focus; the screen has the others. */
const OWN_KEYS = {
  ends: ['Home', 'End'],
  pages: ['Home', 'End', 'PageUp', 'PageDown'],
  arrows: ['Home', 'End', 'PageUp', 'PageDown', 'ArrowUp', 'ArrowRight', 'ArrowDown', 'ArrowLeft'],
};

type Mark = readonly [at: number, text: string];

const evenMarks = (least: number, most: number, every: number): readonly Mark[] =>
  Array.from({ length: Math.floor((most - least) / every) + 1 }, (_, i) => [least + i * every, signed(least + i * every)]);

/** With a true minus, as numbers are set. */
const signed = (value: number): string => String(value).replace('-', '−');

/**
 * A slider of our own: lies or stands as its box is wide or high, has a mark every `markEvery` or at `marks`, and can be dragged from
 * anywhere along it. With the focus it is worked by the keys it keeps; on most screens the arrows mean gain and antenna wherever one is.
 */
export function Slide({
  name,
  value,
  least = 0,
  most,
  step,
  markEvery = most - least,
  marks = evenMarks(least, most, markEvery),
  said,
  keys = 'pages',
  onSet,
}: {
  readonly name: string;
  readonly value: number;
  readonly least?: number;
  readonly most: number;
  readonly step: number;
  readonly markEvery?: number;
  /** Where there is a mark, and its words: for scales that are not even. */
  readonly marks?: readonly Mark[];
  readonly said: string;
  readonly keys?: keyof typeof OWN_KEYS;
  readonly onSet: (value: number) => void;
}) {
  const groove = useRef<HTMLDivElement>(null);
  const toPointer = (event: PointerEvent) => {
    const box = groove.current!.getBoundingClientRect();
    const share = box.height > box.width ? (box.bottom - event.clientY) / box.height : (event.clientX - box.left) / box.width;
    onSet(least + Math.round((Math.min(1, Math.max(0, share)) * (most - least)) / step) * step);
  };
  const shareOf = (at: number) => String((at - least) / (most - least));
  return (
    <div
      class="slide"
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={value}
      aria-valuetext={said}
      style={{ '--share': shareOf(value) }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        toPointer(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) toPointer(event);
      }}
      onKeyDown={(event) => {
        if (!OWN_KEYS[keys].includes(event.key)) return;
        const by = {
          Home: least - most,
          End: most - least,
          PageUp: step * 10,
          PageDown: -step * 10,
          ArrowUp: step,
          ArrowRight: step,
          ArrowDown: -step,
          ArrowLeft: -step,
        }[event.key]!;
        event.preventDefault();
        event.stopPropagation(); // or the screen would do its own with the same key
        onSet(Math.min(most, Math.max(least, value + by)));
      }}
    >
      <div class="slide-groove" ref={groove}>
        <div class="slide-fill" />
        <div class="slide-knob" />
        {marks.map(([at, text]) => (
          <div key={at} class="slide-mark number" style={{ '--at': shareOf(at) }} aria-hidden="true">
            {text}
          </div>
        ))}
      </div>
    </div>
  );
}
