/**
 * Circuits as decks for a stock SPICE: operating point or time. Only parts of the original SPICE are used; a switch that moves is
 * a current source of the B kind (SPICE3), its conductance the exponential of a control voltage, as in `switchSiemens`.
 */
import { driveAt } from './drive.ts';
import type { Drive } from './drive.ts';
import { FLOATING_TIE_OHMS, SWITCH_OFF_SIEMENS, SWITCH_ON_OHMS, nodesOf } from './elements.ts';
import type { Circuit, Diode, Element } from './elements.ts';
import { compileCircuit } from './compile.ts';
import { topologyFor } from './topology.ts';

/** What to write besides the circuit. */
interface DeckOptions {
  readonly title: string;
  /** Lines for a reader, put under the title; without the asterisk. */
  readonly comments?: readonly string[];
  /** Given for a deck in time: drives from 0 s on, and how long and how finely to look, seconds. */
  readonly inTime?: {
    readonly drives: readonly Drive[];
    readonly toSeconds: number;
    readonly stepSeconds: number;
    readonly mostStepSeconds: number;
  };
}

/** A deck, and the deck's names for the circuit's nodes and parts. Names in lower case; ground is '0'. */
export interface SpiceDeck {
  readonly text: string;
  readonly nodes: ReadonlyMap<string, string>;
  /** Open switches that never move are left out. */
  readonly parts: ReadonlyMap<string, string>;
}

/** SPICE knows a part's kind by the first letter of its name. */
const LETTERS = {
  resistor: 'r',
  diode: 'd',
  voltage: 'v',
  current: 'i',
  switch: 'r',
  capacitor: 'c',
} as const;

/** Lines are broken before they pass this; old programs cut at 80 or 132. */
const LINE_WIDTH = 78;

/** A jump of a drive takes so long in the deck, seconds: SPICE wants every moment of a source to be later than the last. */
const JUMP_SECONDS = 1e-12;

/** Write a circuit as a deck. @throws when the circuit or a drive does not compile. */
export function spiceDeck(circuit: Circuit, options: DeckOptions): SpiceDeck {
  const compiled = compileCircuit(circuit);
  const names = namer();
  const nodes = new Map([[circuit.ground, '0']]);
  for (const node of compiled.nodeNames.slice(1)) nodes.set(node, names('', node));
  const node = (name: string): string => nodes.get(name) as string;
  const parts = new Map<string, string>();
  const lines: string[] = [];
  const { inTime } = options;
  const driveOf = (element: Element): Drive | undefined =>
    inTime?.drives.find(({ part }) => part === element.name);
  for (const element of circuit.elements) {
    const drive = driveOf(element);
    if (element.kind === 'switch' && !element.closed && !drive) continue;
    const moves = element.kind === 'switch' && drive !== undefined;
    const name = names(moves ? 'b' : LETTERS[element.kind], element.name);
    parts.set(element.name, name);
    const [from, to] = nodesOf(element).map(node) as [string, string];
    lines.push(`* ${element.name}: ${nodesOf(element).join(' to ')}`);
    if (moves) lines.push(...movingSwitch(name, from, to, drive));
    else lines.push(...partLines(element, name, from, to, drive));
  }
  for (const at of tiedNodes(circuit, options)) {
    const here = compiled.nodeNames[at] as string;
    lines.push(`* holds node '${here}', which has no way to ground`);
    lines.push(`${names('r', `tie ${here}`)} ${node(here)} 0 ${FLOATING_TIE_OHMS}`);
  }
  const models = circuit.elements
    .filter((element): element is Diode => element.kind === 'diode')
    .map((element) => modelLine(element, parts.get(element.name) as string));
  const analysis = inTime
    ? `.tran ${inTime.stepSeconds} ${inTime.toSeconds} 0 ${inTime.mostStepSeconds}`
    : '.op';
  const text = [
    options.title.replace(/\s+/g, ' '),
    ...(options.comments ?? []).map((line) => `* ${line}`),
    ...lines,
    ...models,
    analysis,
    '.end',
    '',
  ];
  return { text: text.flatMap(broken).join('\n'), nodes, parts };
}

/** Names that SPICE can read, each once whatever the case. */
function namer(): (letter: string, name: string) => string {
  const taken = new Set(['0']);
  return (letter, name) => {
    const plain = name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '_')
      .replace(/^_+|_+$/g, '');
    const base = letter === '' ? `n_${plain}` : `${letter}_${plain}`;
    let made = base;
    for (let count = 2; taken.has(made); count++) made = `${base}_${count}`;
    taken.add(made);
    return made;
  };
}

function partLines(
  element: Element,
  name: string,
  from: string,
  to: string,
  drive: Drive | undefined,
): string[] {
  const head = `${name} ${from} ${to}`;
  switch (element.kind) {
    case 'resistor':
      return [`${head} ${element.ohms}`];
    case 'switch':
      return [`${head} ${SWITCH_ON_OHMS}`];
    case 'capacitor':
      return [`${head} ${element.farads}`];
    case 'diode':
      return [`${head} m${name}`];
    case 'voltage':
      return [`${head} ${drive ? piecewise(drive, (value) => value) : element.volts}`];
    case 'current':
      return [`${head} ${drive ? piecewise(drive, (value) => value) : element.amperes}`];
  }
}

function modelLine(diode: Diode, name: string): string {
  const { saturationAmperes, emission, seriesOhms } = diode;
  const { junctionFarads = 0, junctionVolts = 1, grading = 0.5, transitSeconds = 0 } = diode;
  return (
    `.model m${name} d(is=${saturationAmperes} n=${emission} rs=${seriesOhms}` +
    ` cjo=${junctionFarads} vj=${junctionVolts} m=${grading} tt=${transitSeconds})`
  );
}

function movingSwitch(name: string, from: string, to: string, drive: Drive): string[] {
  const across = to === '0' ? `v(${from})` : from === '0' ? `(-v(${to}))` : `(v(${from})-v(${to}))`;
  const low = Math.log(SWITCH_OFF_SIEMENS);
  const high = Math.log(1 / SWITCH_ON_OHMS);
  return [
    `v${name} ${name}_ctl 0 ${piecewise(drive, (position) => low + (high - low) * position)}`,
    `${name} ${from} ${to} i=${across}*exp(v(${name}_ctl))`,
  ];
}

function piecewise(drive: Drive, valueOf: (value: number) => number): string {
  const first = Math.min(0, drive.points[0]?.seconds ?? 0);
  if (first < 0) throw new Error(`drive '${drive.part}': a deck starts at 0 s, got a point at ${first} s`);
  const words: string[] = [];
  let last = -1;
  const add = (seconds: number, value: number): void => {
    const at = Math.max(seconds, last + JUMP_SECONDS, 0);
    words.push(`${Number(at.toPrecision(15))} ${Number(valueOf(value).toPrecision(15))}`);
    last = at;
  };
  if ((drive.points[0]?.seconds ?? 0) > 0) add(0, driveAt(drive, 0, 'before'));
  for (const { seconds, value } of drive.points) add(seconds, value);
  return `pwl(${words.join(' ')})`;
}

/** Nodes that float at some position of the switches. */
function tiedNodes(circuit: Circuit, options: DeckOptions): readonly number[] {
  const tied = new Set(topologyFor(compileCircuit(circuit)).tied);
  const moving = new Set(options.inTime?.drives.map(({ part }) => part));
  const opened = circuit.elements.map((element) =>
    element.kind === 'switch' && moving.has(element.name) ? { ...element, closed: false } : element,
  );
  // A part that floats while every moving switch is open keeps its tie when one closes: a gigohm takes nothing that counts.
  for (const at of topologyFor(compileCircuit({ ...circuit, elements: opened })).tied) tied.add(at);
  return [...tied];
}

/** Break a long line at blanks, with the continuation mark of SPICE. */
function broken(line: string): string[] {
  if (line.length <= LINE_WIDTH || line.startsWith('*')) return [line];
  const lines: string[] = [];
  let here = '';
  for (const word of line.split(' ')) {
    if (here !== '' && here.length + word.length + 1 > LINE_WIDTH) {
      lines.push(here);
      here = '+';
    }
    here += here === '' ? word : ` ${word}`;
  }
  return [...lines, here];
}
