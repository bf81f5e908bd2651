/**
 * Room that a label takes. There is no DOM here to measure with, so widths are estimated on the generous side.
 */
import type { Box, Point } from './geometry.ts';

/** Text sizes of figures, pixels: contact names, labels of conductors, names of ends, captions. */
export const TEXT_SIZES = { contact: 12, label: 13, name: 14, caption: 12.5 } as const;

/** Which part of a text stands at its `x`, in the words of SVG. */
export type Anchor = 'start' | 'middle' | 'end';

/** A line of text: `y` is its baseline. */
export interface TextLine {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
  readonly size: number;
}

const NARROW = new Set("ijlt.,:;'|!()f1 ".split(''));
const WIDE = new Set('mwMWAΩ—'.split(''));

/** Estimated width of `text` in pixels at `size` pixels, a little more than Atkinson Hyperlegible Next sets it (measured in Chromium). */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const letter of text) ems += NARROW.has(letter) ? 0.36 : WIDE.has(letter) ? 0.88 : 0.6;
  return ems * size;
}

const DESCENDER = /[gjpqy,()]/;

/** The box a line of text takes: from its ascenders to its baseline, or to its descenders where it has any. */
export function textBox(line: TextLine): Box {
  const width = textWidth(line.text, line.size);
  const x = line.anchor === 'start' ? line.x : line.anchor === 'end' ? line.x - width : line.x - width / 2;
  const below = DESCENDER.test(line.text) ? 0.22 : 0.02;
  return { x, y: line.y - 0.78 * line.size, width, height: (0.78 + below) * line.size };
}

/** A line of text whose capitals are centred on `centre`. */
export function centredText(text: string, centre: Point, size: number): TextLine {
  return { text, x: centre.x, y: centre.y + 0.35 * size, anchor: 'middle', size };
}
