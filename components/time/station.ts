/** The link of the sending station, from the few choices of its form. */
import { lineByLine } from '../../src/core/verdict/index.ts';
import { CIRCUITS, makeJack, makeLead } from '../../src/core/wiring/index.ts';
import type { CircuitKind, Conductor, Jack, Link, Part } from '../../src/core/wiring/index.ts';

/** Circuits of an output that the station offers. */
export const OUTPUTS = CIRCUITS.filter(
  (kind) => kind === 'driver-5v' || kind === 'driver-3v3' || kind === 'driver-3v3-push-pull',
);

/** How the lead can be wired, in words. */
export const WIRINGS = ['line to line', 'source and sink swapped', 'source missing'] as const;
export type Wiring = (typeof WIRINGS)[number];

/** Pin of a DIN jack with the source, and with the sink (MIDI 1.0 Detailed Specification, hardware). */
const [SOURCE, SINK] = ['4', '5'] as const;

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
  const conductors = wired(lineByLine(output, input), wiring);
  return { output, branches: [{ input, leads: [makeLead('din5', 'din5', conductors, { lengthMetres })] }] };
}

function wired(right: readonly Conductor[], wiring: Wiring): readonly Conductor[] {
  switch (wiring) {
    case 'line to line':
      return right;
    case 'source missing':
      return right.filter(({ from }) => from !== SOURCE);
    case 'source and sink swapped':
      return right.map(({ from, to }) => ({ from, to: to === SOURCE ? SINK : to === SINK ? SOURCE : to }));
  }
}
