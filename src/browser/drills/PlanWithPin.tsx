import { useRef } from 'preact/hooks';
import type { Picture } from '../../core/listening/picture';
import { PictureView, spotAt } from '../soundRing/PictureView';
import { lines, pin, settings, stage, trial } from './drillState';

/** The ground as a walker knows it while it is asked, the truth afterwards; a pin can be put on it. */
export function PlanWithPin() {
  const given = trial.value;
  if (!given) return null;
  if (stage.value !== 'trial' && stage.value !== 'waiting') return <PictureView picture={withPin(given.truth.picture)} />;
  if (!given.plan) return null;
  const plan = given.plan(settings.value, lines.value);
  return <PinBoard plan={withPin(plan)} />;
}

/** The learner's own lines and pin, over whatever is drawn. */
function withPin(picture: Picture): Picture {
  const at = pin.value;
  if (!at) return picture;
  const arm = (picture.to[0] - picture.from[0]) / 28;
  const [x, y] = at;
  return {
    ...picture,
    marks: [
      ...picture.marks,
      {
        kind: 'edge',
        points: [
          [x - arm, y],
          [x + arm, y],
        ],
      },
      {
        kind: 'edge',
        points: [
          [x, y - arm],
          [x, y + arm],
        ],
      },
      { kind: 'words', at: [x + arm * 0.6, y + arm * 0.6], text: 'pin' },
    ],
  };
}

function PinBoard({ plan }: { readonly plan: Picture }) {
  const board = useRef<HTMLDivElement>(null);
  const placeAt = (event: PointerEvent) => {
    const svg = board.current!.querySelector('svg');
    if (!svg || !pin.peek()) return;
    const box = svg.getBoundingClientRect();
    const [x, y] = spotAt(plan, box, [event.clientX - box.left, event.clientY - box.top]);
    pin.value = [Math.round(x), Math.round(y)];
  };
  return (
    <div
      ref={board}
      class={pin.value ? 'pin-board pin-board-open' : 'pin-board'}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        placeAt(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) placeAt(event);
      }}
    >
      <PictureView picture={plan} />
    </div>
  );
}
