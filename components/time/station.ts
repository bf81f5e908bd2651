/** The link to send through: two jacks and the ways in which the lead between them can be wired. */
import { lineByLine } from '../../src/core/verdict/index.ts';
import { CIRCUITS, makeJack, makeLead, styleEntry } from '../../src/core/wiring/index.ts';
import type { CircuitKind, Conductor, Jack, Link, Part } from '../../src/core/wiring/index.ts';

/** Circuits of an output that the station offers. */
export const OUTPUTS = CIRCUITS.filter(
  (kind) => kind === 'driver-5v' || kind === 'driver-3v3' || kind === 'driver-3v3-push-pull',
);

/** How the lead can be wired, in words. */
export const WIRINGS = ['line to line', 'source and sink swapped', 'source missing'] as const;

/** One of these ways. */
export type Wiring = (typeof WIRINGS)[number];

/** What the reader chose. */
export interface Station {
  readonly circuit: CircuitKind;
  readonly part: Part;
  readonly lengthMetres: number;
  readonly wiring: Wiring;
  /** Values of the input's circuit that are not the usual ones. */
  readonly values?: Jack['values'];
}

/** Two DIN jacks with a lead between them. */
export function stationLink({ circuit, part, lengthMetres, wiring, values = {} }: Station): Link {
  const output = makeJack('out', 'din5', 'din', { circuit });
  const input = makeJack('in', 'din5', 'din', { part, values });
  const conductors = wiredAs(output, input, wiring);
  return { output, branches: [{ input, leads: [makeLead('din5', 'din5', conductors, { lengthMetres })] }] };
}

/** The conductors of a lead between two jacks that is wired in this way. */
export function wiredAs(output: Jack, input: Jack, wiring: Wiring): readonly Conductor[] {
  const right = lineByLine(output, input);
  const { source, sink } = styleEntry(input.style).lines;
  switch (wiring) {
    case 'line to line':
      return right;
    case 'source missing':
      return right.filter(({ from }) => from !== styleEntry(output.style).lines.source);
    case 'source and sink swapped':
      return right.map(({ from, to }) => ({
        from,
        to: (to === source ? sink : to === sink ? source : to) ?? to,
      }));
  }
}

/** The way in which a lead is wired, or undefined where it is none of these. */
export function wiringOf(output: Jack, input: Jack, conductors: readonly Conductor[]): Wiring | undefined {
  const spelt = (all: readonly Conductor[]): string =>
    all
      .map(({ from, to }) => `${from}-${to}`)
      .sort()
      .join();
  return WIRINGS.find((wiring) => spelt(wiredAs(output, input, wiring)) === spelt(conductors));
}
