/** Bring an element into view, at the top of the screen unless `block` says where, and give it the focus. */
export function goTo(element: HTMLElement | undefined, block: ScrollLogicalPosition = 'start'): void {
  element?.scrollIntoView({ block });
  element?.focus({ preventScroll: true });
}
