/** The whole circuit of a link, ready to be compiled, with all that is needed to speak of it. */
import type { Circuit, Element } from '../circuit/index.ts';
import type { Collector, LinkPart, Owner, Spread } from './build.ts';
import { OUTPUT_GROUND, collector, inputGround, inputNode } from './build.ts';
import type { State, Switching } from './driver-circuit.ts';
import { addDriver } from './driver-circuit.ts';
import { hasExtra, linesInside } from './extras.ts';
import type { Misfit } from './lead-circuit.ts';
import { addLeadSpreads, addLeads } from './lead-circuit.ts';
import type { Jack, Link, Rival } from './link.ts';
import type { Sense } from './receiver-circuit.ts';
import { addReceiver, hasGround, isIsolated } from './receiver-circuit.ts';
import type { Timing } from './timing.ts';

/** Whether the devices' grounds meet only through the lead, or elsewhere too (audio leads, a shared supply). */
export const GROUNDINGS = ['separate', 'joined'] as const;
/** How the grounds of a link meet. */
export type Grounding = (typeof GROUNDINGS)[number];

/** A link as a circuit. `senses` has one entry an input; `switching` tells the two states. */
export interface LinkCircuit {
  readonly circuit: Circuit;
  readonly parts: readonly LinkPart[];
  readonly spreads: readonly Spread[];
  readonly switching: Switching;
  /** How each rival output switches. */
  readonly rivals: readonly Switching[];
  readonly senses: readonly Sense[];
  readonly misfits: readonly Misfit[];
  /** Whether any input, or a second output, has a ground of its own, so that the grounding can matter. */
  readonly groundMatters: boolean;
}

/**
 * Put the circuit of a link together. Values must be in range (see `linkProblem`).
 * @param timing given for a solution in time: adds the capacitance of the leads and a stage that has edges.
 */
export function linkCircuit(link: Link, grounding: Grounding, timing?: Timing): LinkCircuit {
  return (link.rivals ?? []).reduce(
    (whole, rival, at) => addRival(whole, rival, oneOutput(rival, grounding, timing), at + 2, grounding),
    oneOutput(link, grounding, timing),
  );
}

function oneOutput(
  link: Pick<Link, 'output' | 'branches'>,
  grounding: Grounding,
  timing?: Timing,
): LinkCircuit {
  const into = collector();
  const switching = addDriver(into, link.output, timing !== undefined);
  const senses = link.branches.map(({ input }, branch) => addReceiver(into, input, branch));
  const misfits = link.branches.flatMap((branch, number) =>
    addLeads(into, link.output, branch, number, timing !== undefined),
  );
  addLeadSpreads(into);
  const grounded = link.branches.map(({ input }) => hasGround(input));
  const pin2 = link.branches.map(({ input }, branch) => addPin2(into, input, branch, timing));
  if (grounding === 'joined') {
    grounded.forEach((has, branch) => {
      if (!has && !pin2[branch]) return;
      into.at({ place: 'world' }).tie(`grounds joined ${branch}`, OUTPUT_GROUND, inputGround(branch));
    });
  }
  return {
    circuit: { ground: OUTPUT_GROUND, elements: into.parts.map(({ element }) => element) },
    parts: into.parts,
    spreads: into.spreads,
    switching,
    rivals: [],
    senses,
    misfits,
    groundMatters: grounded.includes(true),
  };
}

/** Add the capacitor from an isolated input's shield contact to its device's ground, if there is one. */
function addPin2(into: Collector, input: Jack, branch: number, timing: Timing | undefined): boolean {
  const { shield } = linesInside(input);
  const open = isIsolated(input) && !hasExtra(input, 'shield-tied');
  if (!timing || timing.pin2Farads === 0 || !open || shield === undefined) return false;
  into.at({ place: 'input', branch }).add('capacitance', {
    kind: 'capacitor',
    name: `in${branch} shield capacitor`,
    a: inputNode(branch, shield),
    b: inputGround(branch),
    farads: timing.pin2Farads,
  });
  return true;
}

/** Put the circuit of a rival beside the others: its parts get numbers of their own, the inputs it shares are there already. */
function addRival(
  whole: LinkCircuit,
  { branches }: Rival,
  own: LinkCircuit,
  number: number,
  grounding: Grounding,
): LinkCircuit {
  let inputs = whole.senses.length;
  const inputAt = branches.map(({ shares }) => shares ?? inputs++);
  const isNew = (branch: number): boolean => branches[branch]?.shares === undefined;
  const rename = (name: string): string =>
    name
      .replace(/^out /, `out${number} `)
      .replace(/^in(\d+)(?= )/, (_, branch: string) => `in${inputAt[Number(branch)] ?? 0}`)
      .replace(/^(lead|wire|touch|short|joint|between)(\d+)(?=[. ])/, `$1${number}00$2`)
      .replace(/^grounds joined /, `grounds joined ${number} `);
  const parts = own.parts
    .filter(({ owner }) => owner.place !== 'input' || isNew(owner.branch))
    .map((part): LinkPart => ({
      ...part,
      element: renamed(part.element, rename),
      owner: ownerBeside(part.owner, number, inputAt),
    }));
  const tie: LinkPart = {
    element: {
      kind: 'switch',
      name: `ground of output ${number}`,
      a: OUTPUT_GROUND,
      b: rename(OUTPUT_GROUND),
      closed: true,
    },
    owner: { place: 'world' },
    role: 'grounds',
    rating: {},
  };
  const all = [...whole.parts, ...parts, ...(grounding === 'joined' ? [tie] : [])];
  const kept = new Set(parts.map(({ element }) => element.name));
  const spreads = own.spreads
    .map((spread) => ({ ...spread, parts: spread.parts.map(rename) }))
    .filter((spread) => spread.parts.every((part) => kept.has(part)))
    .map((spread) =>
      spread.parts.some((part) => part.startsWith('in'))
        ? spread
        : { ...spread, name: `${spread.name} of output ${number}` },
    );
  const switching = (state: State): Switching[State] =>
    own.switching[state].map(([name, value]) => [rename(name), value]);
  return {
    ...whole,
    circuit: { ...whole.circuit, elements: all.map(({ element }) => element) },
    parts: all,
    spreads: [...whole.spreads, ...spreads],
    rivals: [...whole.rivals, { idle: switching('idle'), active: switching('active') }],
    senses: [
      ...whole.senses,
      ...own.senses.filter((_, at) => isNew(at)).map((sense) => renamed(sense, rename)),
    ],
    groundMatters: true,
  };
}

/** A part or a sense with every name and node in it renamed. */
function renamed<One extends Element | Sense>(one: One, rename: (name: string) => string): One {
  const fields = Object.entries(one).map(([field, value]: [string, unknown]) =>
    field !== 'kind' && typeof value === 'string' ? [field, rename(value)] : [field, value],
  );
  return Object.fromEntries(fields) as One;
}

function ownerBeside(owner: Owner, number: number, inputAt: readonly number[]): Owner {
  switch (owner.place) {
    case 'output':
      return { place: 'output', rival: number };
    case 'input':
      return { place: 'input', branch: inputAt[owner.branch] ?? 0 };
    case 'lead':
      return { ...owner, branch: Number(`${number}00${owner.branch}`) };
    case 'world':
      return owner;
  }
}
