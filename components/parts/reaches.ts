/** What a reader does first to a part of a page: heard on the way to it, it finds the part ready. */
const REACHES = ['pointerdown', 'keydown', 'focusin', 'click', 'input', 'change'] as const;

/** Calls `act` before anything inside `element` hears that it is reached for; gives what ends this. */
export function beforeReach(element: Element, act: () => void): () => void {
  for (const reach of REACHES) element.addEventListener(reach, act, true);
  return () => {
    for (const reach of REACHES) element.removeEventListener(reach, act, true);
  };
}
