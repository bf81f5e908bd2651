/** How a drawing hears the reader: keys that press a part of it, the part that a pointer is on, and where on the drawing that is. */

/** Hears Enter and the space bar as a press, as a button does; every other key goes to `otherwise`. */
export function pressKeys(
  onpress: (() => void) | undefined,
  otherwise?: (event: KeyboardEvent) => void,
): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return otherwise?.(event);
    if (!onpress) return;
    event.preventDefault();
    onpress();
  };
}

/** Name of the contact that an event or a point of the page is on (`data-contact`), or undefined. */
export function contactAt(target: EventTarget | null): string | undefined {
  const named = target instanceof Element ? target.closest('[data-contact]') : null;
  return named?.getAttribute('data-contact') ?? undefined;
}

/** Where a pointer is on a drawing, in the drawing's own pixels; undefined for one that is not shown. */
export function pointOn(
  drawing: SVGSVGElement | undefined,
  { clientX, clientY }: PointerEvent,
): { readonly x: number; readonly y: number } | undefined {
  const matrix = drawing?.getScreenCTM()?.inverse();
  if (!matrix) return undefined;
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(matrix);
  return { x, y };
}
