/** The width of a drawing that the build made already. */
import type { Attachment } from 'svelte/attachments';

/**
 * Tell the width of an element, in pixels, whenever it changes, each time in a turn of its own: waking asks the page for no layout, and what is drawn
 * anew for this width is no part of the same piece of work.
 */
export function tellWidth(told: (pixels: number) => void): Attachment<HTMLElement> {
  return (element) => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const observer = new ResizeObserver(() => {
      clearTimeout(timer);
      timer = setTimeout(() => told(element.clientWidth));
    });
    observer.observe(element);
    return () => {
      observer.disconnect();
      clearTimeout(timer);
    };
  };
}
