/**
 * A circuit of ours as a SPICE deck. Agreement of such a deck proves the solver, not the model: the decks written by hand do that.
 */
import { SWITCH_ON_OHMS } from '../../src/core/circuit/elements.ts';
import type { Circuit, Element } from '../../src/core/circuit/elements.ts';

/**
 * From a node of a floating part to ground, ohms. No current flows in it, so its size changes no answer; but with our solver's own
 * 1e9 ohm the engine's rounding, 1e-13 A, is worth more volts than it is told to settle to, and it goes on for ever.
 */
const TIE_OHMS = 1e6;

/** SPICE knows the kind of a part by the first letter of its name. */
const LETTER = {
  resistor: 'r',
  switch: 'r',
  diode: 'd',
  voltage: 'v',
  current: 'i',
  capacitor: 'c',
} as const;

/** A deck, and where each node and part of the circuit is found in the engine's answer. */
export interface CircuitDeck {
  readonly text: string;
  /** Engine's name of a node; node '0' is ground. */
  readonly nodes: ReadonlyMap<string, string>;
  /** Engine's name of a part; open switches are left out of the deck. */
  readonly parts: ReadonlyMap<string, string>;
}

/**
 * Write a circuit as a deck for its operating point.
 * `floating`: one node of the part without a way to ground, if there is such a part; the deck holds it at 0 V.
 */
export function deckOf(title: string, circuit: Circuit, floating?: string): CircuitDeck {
  const nodes = new Map([[circuit.ground, '0']]);
  const parts = new Map<string, string>();
  const node = (name: string): string => {
    const known = nodes.get(name) ?? `n${nodes.size}`;
    nodes.set(name, known);
    return known;
  };
  const models: string[] = [];
  const lines: string[] = [];
  for (const element of circuit.elements) {
    const name = `${LETTER[element.kind]}${parts.size}`;
    const line = lineOf(element, name, node);
    if (line === undefined) continue;
    parts.set(element.name, name);
    lines.push(line);
    if (element.kind === 'diode') {
      const { saturationAmperes, emission, seriesOhms } = element;
      models.push(`.model m${name} d is=${saturationAmperes} n=${emission} rs=${seriesOhms}`);
    }
  }
  if (floating !== undefined) lines.push(`rtie ${node(floating)} 0 ${TIE_OHMS}`);
  return { text: [title, ...lines, ...models, '.op', '.end'].join('\n'), nodes, parts };
}

function lineOf(element: Element, name: string, node: (name: string) => string): string | undefined {
  switch (element.kind) {
    case 'resistor':
      return `${name} ${node(element.a)} ${node(element.b)} ${element.ohms}`;
    case 'switch':
      return element.closed ? `${name} ${node(element.a)} ${node(element.b)} ${SWITCH_ON_OHMS}` : undefined;
    case 'capacitor':
      return `${name} ${node(element.a)} ${node(element.b)} ${element.farads}`;
    case 'diode':
      return `${name} ${node(element.anode)} ${node(element.cathode)} m${name}`;
    case 'voltage':
      return `${name} ${node(element.plus)} ${node(element.minus)} ${element.volts}`;
    case 'current':
      return `${name} ${node(element.from)} ${node(element.to)} ${element.amperes}`;
  }
}
