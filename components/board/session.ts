/** What the reader has in hand on the board page, besides the plan. */
import type { JackPlace } from '../../src/core/plan/index.ts';

/** What is chosen, to be looked at and changed. */
export type Chosen =
  | { readonly kind: 'device'; readonly name: string }
  | { readonly kind: 'link'; readonly name: string };

/** What is shown in the drawing: by name, and the link that a message is just going along. */
export interface Shown {
  readonly devices: readonly string[];
  readonly links: readonly string[];
  readonly now?: string | undefined;
}

/** Nothing is shown in the drawing. */
export const NOTHING_SHOWN: Shown = { devices: [], links: [] };

/** A word to the reader, and whether it is bad news. */
export interface Word {
  readonly text: string;
  readonly bad: boolean;
}

/** Whether a place is this jack of this device; no place is none. */
export function isAt(place: JackPlace | undefined, device: string, jack: string): boolean {
  return place?.device === device && place.jack === jack;
}
