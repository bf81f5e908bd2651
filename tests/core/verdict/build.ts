/** Short ways to put links together for the tests of the verdict. */
import { checkLink, drawBuilds } from '../../../src/core/verdict/index.ts';
import type { LinkVerdict, NoteKind, ToleranceResult } from '../../../src/core/verdict/index.ts';
import {
  PARTS,
  circuitsFor,
  hasLed,
  makeJack,
  makeLead,
  stylesFor,
  wires,
} from '../../../src/core/wiring/index.ts';
import type { Connector, Jack, Lead, Link, Part } from '../../../src/core/wiring/index.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** The lead that a map stands for: 1 m of 26 AWG with plugs that match the jacks. */
export function leadFor(output: Jack, input: Jack, conductors: Lead['conductors']): Lead {
  return makeLead(output.connector, input.connector, conductors);
}

/** A link of one output and one input. */
export function oneLink(output: Jack, input: Jack, ...leads: readonly Lead[]): Link {
  return { output, branches: [{ input, leads }] };
}

/** A verdict on a lead between two jacks whose plugs match them. */
export function verdictFor(output: Jack, input: Jack, ...pairs: readonly string[]): LinkVerdict {
  return checkLink(oneLink(output, input, leadFor(output, input, wires(...pairs))));
}

export const notesIn = (verdict: LinkVerdict): readonly NoteKind[] => verdict.notes.map(({ kind }) => kind);

export const milliamperes = (amperes: number): number => amperes * 1e3;

/** A lead with no resistance to speak of: the circuits of the printed tables, which leave cable and contacts out. */
export const bare = (output: Jack, input: Jack, ...pairs: readonly string[]): Lead =>
  makeLead(output.connector, input.connector, wires(...pairs), {
    lengthMetres: 0.01,
    gauge: 20,
    contactOhms: 0,
  });

/** Every output on these connectors: each style with each of its circuits. */
export function outputsOn(connectors: readonly Connector[]): readonly Jack[] {
  return connectors.flatMap((connector) =>
    stylesFor('out', connector).flatMap((style) =>
      circuitsFor('out', style).map((circuit) => makeJack('out', connector, style, { circuit })),
    ),
  );
}

/** Every input on these connectors: each style with each of its circuits and, where it has an LED, each of the parts. */
export function inputsOn(connectors: readonly Connector[], parts: readonly Part[] = PARTS): readonly Jack[] {
  return connectors.flatMap((connector) =>
    stylesFor('in', connector).flatMap((style) =>
      circuitsFor('in', style).flatMap((circuit) =>
        (hasLed(circuit) ? parts : (['6N138'] as const)).map((part) =>
          makeJack('in', connector, style, { circuit, part }),
        ),
      ),
    ),
  );
}

/** Draw all builds at once. */
export function drawAllBuilds(...given: Parameters<typeof drawBuilds>): ToleranceResult {
  return runThrough(drawBuilds(...given));
}
