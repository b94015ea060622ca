import type { ScreenPoint } from './screenFrame';

type Looks = {
  readonly pan: (dxPx: number, dyPx: number) => void;
  readonly zoom: (factor: number, anchor: ScreenPoint) => void;
  readonly tapped: (at: ScreenPoint) => void;
  /** Takes up what lies under a finger: from then on the finger carries it instead of the map. */
  readonly grab?: (at: ScreenPoint) => ((to: ScreenPoint) => void) | null;
  /** On a map within a page the wheel zooms only with Ctrl held, so that the page still scrolls. */
  readonly withinPage?: boolean;
};

/** A finger or button that has moved less than this was a tap. */
const TAP_PX = 6;

/** Drag to look about, wheel or two fingers to zoom, tap for `tapped`. @returns lets go of the element */
export function mapGestures(element: HTMLElement, { pan, zoom, tapped, grab, withinPage = false }: Looks): () => void {
  const fingers = new Map<number, ScreenPoint>();
  let movedPx = 0;
  let carry: ((to: ScreenPoint) => void) | null = null;
  const place = (event: MouseEvent): ScreenPoint => {
    const box = element.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    if (fingers.size === 0) {
      movedPx = 0;
      carry = grab?.(place(event)) ?? null;
    }
    fingers.set(event.pointerId, place(event));
    if (fingers.size > 1) {
      movedPx = TAP_PX * 2;
      carry = null;
    }
  };
  const move = (event: PointerEvent) => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const now = place(event);
    movedPx += Math.hypot(now.x - before.x, now.y - before.y);
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    fingers.set(event.pointerId, now);
    if (other) {
      const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
      pan((now.x - before.x) / 2, (now.y - before.y) / 2);
      zoom(apart(now, other) / Math.max(1, apart(before, other)), middle);
    } else if (movedPx <= TAP_PX) return;
    else if (carry) carry(now);
    else pan(now.x - before.x, now.y - before.y);
  };
  const up = (event: PointerEvent) => {
    const held = fingers.delete(event.pointerId);
    if (held && event.type === 'pointerup' && movedPx <= TAP_PX) tapped(place(event));
  };
  const wheel = (event: WheelEvent) => {
    if (withinPage && !event.ctrlKey && !event.metaKey) return;
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
