import { useRef } from 'preact/hooks';
import type { Picture } from '../../core/listening/picture';
import { PictureView } from '../soundRing/PictureView';
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
      { kind: 'words', at: [x + arm * 0.5, y + arm * 0.5], text: 'pin' },
    ],
  };
}

function PinBoard({ plan }: { readonly plan: Picture }) {
  const board = useRef<HTMLDivElement>(null);
  const placeAt = (event: PointerEvent) => {
    const svg = board.current!.querySelector('svg');
    if (!svg || !pin.peek()) return;
    const box = svg.getBoundingClientRect();
    const [width, height] = [plan.to[0] - plan.from[0], plan.to[1] - plan.from[1]];
    // The plan keeps its shape inside the drawing: the smaller side fills it.
    const metres = Math.max(width / box.width, height / box.height);
    pin.value = [
      Math.round((plan.from[0] + plan.to[0]) / 2 + (event.clientX - (box.left + box.width / 2)) * metres),
      Math.round((plan.from[1] + plan.to[1]) / 2 - (event.clientY - (box.top + box.height / 2)) * metres),
    ];
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
