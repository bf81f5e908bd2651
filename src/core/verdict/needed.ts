/** The conductors that join each line of an output to the same line of an input: a proposal, to be solved like any other. */
import { LINES, styleEntry } from '../wiring/index.ts';
import type { Conductor, Jack } from '../wiring/index.ts';

/**
 * Line by line: source to source, sink to sink, shield to shield, where both jacks have the line.
 * An input that listens against its own ground needs a way back; where the output has no shield to give, its source line is
 * the only steady one, and stands in for the shield.
 */
export function lineByLine(output: Jack, input: Jack): readonly Conductor[] {
  const out = styleEntry(output.style).lines;
  const into = styleEntry(input.style).lines;
  return LINES.flatMap((line) => {
    const from = line === 'shield' && into.source === undefined ? (out.shield ?? out.source) : out[line];
    const to = into[line];
    return from === undefined || to === undefined ? [] : [{ from, to }];
  });
}
