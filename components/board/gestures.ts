/** Pointer and finger on the drawn board: a press, a drag of a device or from a jack, a drag of the paper, a pinch. */

/** What lies under a pointer. */
type Grip =
  | { readonly kind: 'jack'; readonly device: string; readonly jack: string }
  | { readonly kind: 'device'; readonly device: string }
  | { readonly kind: 'paper' };

/** A drag in progress, from where it began to where the pointer is, client pixels. */
export interface Drag {
  readonly grip: Grip;
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

/** Movement below which a press is no drag, pixels. */
const STILL = 5;

/** Where each arrow key goes: right and down count up. */
export const MOVES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What the element under a pointer stands for, by its data attributes. */
export function gripAt(target: EventTarget | null): Grip {
  const held = target instanceof Element ? target.closest<SVGElement>('[data-device]') : null;
  const { device, jack } = held?.dataset ?? {};
  if (device === undefined) return { kind: 'paper' };
  return jack === undefined ? { kind: 'device', device } : { kind: 'jack', device, jack };
}

/** Whether a drag has gone far enough to be one. */
export function isDrag({ from, to }: Drag): boolean {
  return Math.hypot(to.x - from.x, to.y - from.y) > STILL;
}

/**
 * Let two fingers zoom the element: `hear` gets the factor since the last call and the point between the fingers. One finger
 * scrolls as always. Returns what takes the listeners off again.
 */
export function listenToPinch(
  element: HTMLElement,
  hear: (factor: number, middle: { readonly x: number; readonly y: number }) => void,
): () => void {
  let apart = 0;
  const measure = (touches: TouchList): number => {
    const [a, b] = [touches[0], touches[1]];
    return a && b ? Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY) : 0;
  };
  const start = (event: TouchEvent): void => {
    apart = event.touches.length === 2 ? measure(event.touches) : 0;
  };
  const move = (event: TouchEvent): void => {
    const [a, b] = [event.touches[0], event.touches[1]];
    if (event.touches.length !== 2 || apart === 0 || !a || !b) return;
    event.preventDefault();
    const now = measure(event.touches);
    hear(now / apart, { x: (a.clientX + b.clientX) / 2, y: (a.clientY + b.clientY) / 2 });
    apart = now;
  };
  element.addEventListener('touchstart', start, { passive: true });
  element.addEventListener('touchmove', move, { passive: false });
  return () => {
    element.removeEventListener('touchstart', start);
    element.removeEventListener('touchmove', move);
  };
}
