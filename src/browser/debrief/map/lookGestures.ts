import type { ScreenPoint } from '../../map/screenFrame';

type Looks = {
  readonly pan: (dxPx: number, dyPx: number) => void;
  readonly zoom: (factor: number, anchor: ScreenPoint) => void;
  readonly tapped: (at: ScreenPoint) => void;
};

const TAP_PX = 6;

/** Drag, pinch and wheel on a map that lies within a page: the wheel zooms only with Ctrl held, so that the page still scrolls. @returns stops */
export function lookGestures(element: HTMLElement, { pan, zoom, tapped }: Looks): () => void {
  const fingers = new Map<number, ScreenPoint>();
  let movedPx = 0;
  const place = (event: MouseEvent): ScreenPoint => {
    const { left, top } = element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const down = (event: PointerEvent) => {
    element.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, place(event));
    movedPx = 0;
  };
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const now = place(event);
    const other = [...fingers.entries()].find(([id]) => id !== event.pointerId)?.[1];
    fingers.set(event.pointerId, now);
    movedPx += apart(before, now);
    if (other) {
      const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
      zoom(apart(now, other) / Math.max(1, apart(before, other)), middle);
    } else if (movedPx > TAP_PX) pan(now.x - before.x, now.y - before.y);
  };
  const up = (event: PointerEvent) => {
    const held = fingers.delete(event.pointerId);
    if (held && event.type === 'pointerup' && movedPx <= TAP_PX) tapped(place(event));
  };
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    zoom(2 ** (-event.deltaY / (event.deltaMode === 1 ? 12 : 400)), place(event));
  };
  const listening = new AbortController();
  const { signal } = listening;
  element.addEventListener('pointerdown', down, { signal });
  element.addEventListener('pointermove', move, { signal });
  element.addEventListener('pointerup', up, { signal });
  element.addEventListener('pointercancel', up, { signal });
  element.addEventListener('wheel', wheel, { signal, passive: false });
  return () => listening.abort();
}

const apart = (a: ScreenPoint, b: ScreenPoint): number => Math.hypot(a.x - b.x, a.y - b.y);
