/**
 * Each deck written by hand, and the link of ours that it describes. The link is built by the core from jacks and leads; the deck
 * was written from the published circuits. So agreement speaks for the model, not for the solver alone.
 */
import type { Connector, Contact } from '../../src/core/wiring/connectors.ts';
import type { CircuitKind } from '../../src/core/wiring/circuits.ts';
import type { Branch, Jack, Link } from '../../src/core/wiring/link.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/link.ts';
import { linesInside } from '../../src/core/wiring/extras.ts';
import type { Extra } from '../../src/core/wiring/extras.ts';
import type { Grounding } from '../../src/core/wiring/link-circuit.ts';
import type { Style } from '../../src/core/wiring/styles.ts';

/** A link, and the core's names for the nodes and parts of the deck (lower case). A part whose current counts the other way has a '-'. */
export interface DeckLink {
  readonly link: Link;
  readonly grounding: Grounding;
  readonly nodes: Readonly<Record<string, string>>;
  readonly parts: Readonly<Record<string, string>>;
  /** Nodes of the deck that hang on nothing but a diode in idle: no current fixes their voltage there. */
  readonly hanging?: readonly string[];
}

const output = (circuit: CircuitKind, style: Style = 'type-a', connector: Connector = 'trs-3.5'): Jack =>
  makeJack('out', connector, style, { circuit });
const input = (circuit: CircuitKind, style: Style, more: Partial<Jack> = {}): Jack =>
  makeJack('in', more.connector ?? 'trs-3.5', style, { ...more, circuit });
const lead = (jack: Jack, pairs: readonly string[], lengthMetres = 1): Branch => ({
  input: jack,
  leads: [makeLead(jack.connector, jack.connector, wires(...pairs), { lengthMetres })],
});

const STRAIGHT = ['ring-ring', 'tip-tip', 'sleeve-sleeve'];
const isolated = (part: Jack['part'] = '6N138', style: Style = 'type-a'): Jack =>
  input('receiver-isolated', style, { part });

/** What every deck calls the same thing, whatever stands behind the jacks. */
const OUTPUT_NODES = { rail: 'out rail', out: 'out stage', shine: 'out activity anode' };
const OUTPUT_PARTS = {
  rsource: 'out source resistor',
  rsink: '-out sink resistor',
  rsignal: '-out sink resistor',
  roff: 'out rail load',
  rtap: 'out tap',
  dshine: 'out activity LED',
  dup: 'out clamp to rail',
  ddown: 'out clamp to ground',
};

function inputNodes(branch: number, mark: string): Readonly<Record<string, string>> {
  const at = (name: string): string => `in${branch} ${name}`;
  return {
    [`anode${mark}`]: at('entry'),
    [`logic${mark}`]: at('gate'),
    [`own${mark}`]: at('rail'),
    [`ignd${mark}`]: at('ground'),
    [`glow${mark}`]: at('activity anode'),
    [`lit${mark}`]: at('lit'),
    [`entry2${mark}`]: at('second entry'),
    [`between${mark}`]: at('between'),
  };
}

function inputParts(branch: number, mark: string): Readonly<Record<string, string>> {
  const at = (name: string): string => `in${branch} ${name}`;
  return {
    [`rin${mark}`]: at('resistor'),
    [`ractivity${mark}`]: at('activity resistor'),
    [`dactivity${mark}`]: at('activity LED'),
    [`dseries${mark}`]: at('series LED'),
    [`rsecond${mark}`]: at('second resistor'),
    [`dsecond${mark}`]: at('second LED'),
    [`dprotsecond${mark}`]: at('second protection diode'),
    [`rled${mark}`]: at('resistor'),
    [`rlogic${mark}`]: at('resistor'),
    [`rpullup${mark}`]: at('pull-up'),
    [`dled${mark}`]: at('LED'),
    [`dprot${mark}`]: at('protection diode'),
    [`dhigh${mark}`]: at('clamp to rail'),
    [`dlow${mark}`]: at('clamp to ground'),
    [`vown${mark}`]: at('supply'),
    [`dbridge1${mark}`]: at('bridge diode 1'),
    [`dbridge2${mark}`]: at('bridge diode 2'),
    [`dbridge3${mark}`]: at('bridge diode 3'),
    [`dbridge4${mark}`]: at('bridge diode 4'),
  };
}

/** Contacts of a jack in the words of the decks: `osrc`, `isnk2`, `ishd`; the signal of a ground-referenced jack is its sink. */
function contacts(jack: Jack, letter: string, place: string, mark: string): Readonly<Record<string, string>> {
  const { source, sink, shield } = linesInside(jack);
  const named: Record<string, string> = {};
  const name = (word: string, contact: Contact | undefined): void => {
    if (contact !== undefined) named[`${letter}${word}${mark}`] = `${place} ${contact}`;
  };
  name('src', source);
  name('snk', sink);
  name('sig', sink);
  name('shd', shield);
  return named;
}

/** A second output on the input of a link; its parts and nodes end in 2 in the decks. */
function beside(one: DeckLink, second: Jack, branch: Branch): DeckLink {
  const [first] = branch.leads;
  const wires = first?.conductors.map(({ from, to }, at) => [`rlead2${at + 1}`, `wire2000.0 ${from} ${to}`]);
  return {
    ...one,
    link: { ...one.link, rivals: [{ output: second, branches: [{ ...branch, shares: 0 }] }] },
    nodes: {
      ...one.nodes,
      ...contacts(second, 'o', 'out2', '2'),
      rail2: 'out2 rail',
      out2: 'out2 stage',
      ognd2: 'out2 ground',
    },
    parts: {
      ...one.parts,
      ...Object.fromEntries(wires ?? []),
      rsource2: 'out2 source resistor',
      rsink2: '-out2 sink resistor',
    },
  };
}

/** A link whose decks name their parts in the usual way: conductors are `rlead` and a number, in the order they are laid. */
function usual(out: Jack, branches: readonly Branch[], grounding: Grounding = 'separate'): DeckLink {
  const nodes: Record<string, string> = { ...OUTPUT_NODES, ...contacts(out, 'o', 'out', '') };
  const parts: Record<string, string> = { ...OUTPUT_PARTS };
  branches.forEach(({ input: jack, leads }, branch) => {
    const mark = branches.length === 1 ? '' : String(branch + 1);
    Object.assign(nodes, contacts(jack, 'i', `in${branch}`, mark), inputNodes(branch, mark));
    Object.assign(parts, inputParts(branch, mark));
    leads[0]?.conductors.forEach(({ from, to }, index) => {
      parts[`rlead${mark}${index + 1}`] = `wire${branch}.0 ${from} ${to}`;
    });
    if (jack.circuit === 'receiver-both-ways') {
      Object.assign(nodes, {
        bridge: `in${branch} entry`,
        anode: `in${branch} anode`,
        cathode: `in${branch} cathode`,
      });
    }
    if (jack.circuit === 'receiver-led') nodes[`anode${mark}`] = `in${branch} anode`;
  });
  return { link: { output: out, branches }, grounding, nodes, parts };
}

const straight = (circuit: CircuitKind, jack: Jack, metres = 1): DeckLink =>
  usual(output(circuit), [lead(jack, STRAIGHT, metres)]);
const toGroundReferenced = (circuit: CircuitKind, receiver: 'receiver-logic' | 'receiver-led'): DeckLink =>
  usual(output(circuit), [lead(input(receiver, 'tip-signal'), ['tip-tip', 'sleeve-sleeve'])]);
const bothWays = input('receiver-both-ways', 'both-ways');
const din = { connector: 'din5' } as const;

const tsLead: Branch = {
  input: isolated(),
  leads: [makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'))],
};

/** A straight lead into an isolated input that has something inside. */
const withExtras = (extras: readonly Extra[], part: Jack['part'] = '6N138'): DeckLink =>
  straight('driver-5v', { ...isolated(part), extras });
/** The lines exchanged on the way, so that the current meets the input's diode. */
const opposite = (extras: readonly Extra[]): DeckLink =>
  usual(output('driver-5v'), [lead({ ...isolated('6N138', 'type-b'), extras }, STRAIGHT)]);

/** A foreign supply on a jack, as the core names it. */
function foreign(one: DeckLink, name: string): DeckLink {
  return {
    ...one,
    nodes: { ...one.nodes, feed: `${name} feed` },
    parts: { ...one.parts, vforeign: name, rforeign: `${name} resistor` },
  };
}

/** By name of the deck, without its ending. */
export const DECK_LINKS: Readonly<Record<string, DeckLink>> = {
  '5v-into-6n138': straight('driver-5v', isolated()),
  '5v-into-h11l1': straight('driver-5v', isolated('H11L1')),
  '5v-into-pc900v': straight('driver-5v', isolated('PC900V')),
  '3v3-into-6n138': straight('driver-3v3', isolated()),
  '3v3-into-h11l1': straight('driver-3v3', isolated('H11L1')),
  '3v3-into-pc900v': straight('driver-3v3', isolated('PC900V')),
  '3v3-push-pull-into-6n138': straight('driver-3v3-push-pull', isolated()),
  '5v-opposite-into-6n138': usual(output('driver-5v'), [lead(isolated('6N138', 'type-b'), STRAIGHT)]),
  '3v3-opposite-into-6n138': usual(output('driver-3v3'), [lead(isolated('6N138', 'type-b'), STRAIGHT)]),
  '5v-into-6n138-15m': usual(output('driver-5v', 'din', 'din5'), [
    lead(input('receiver-isolated', 'din', din), ['4-4', '5-5', '2-2'], 15),
  ]),
  '5v-into-both-ways': straight('driver-5v', bothWays),
  '3v3-into-both-ways': straight('driver-3v3', bothWays),
  '3v3-push-pull-into-both-ways': straight('driver-3v3-push-pull', bothWays),
  '5v-opposite-into-both-ways': usual(output('driver-5v', 'type-b'), [
    lead(bothWays, ['tip-tip', 'ring-ring', 'sleeve-sleeve']),
  ]),
  'off-into-6n138': straight('driver-off', isolated()),
  'off-into-both-ways': straight('driver-off', bothWays),
  'off-into-led': toGroundReferenced('driver-off', 'receiver-led'),
  'off-into-logic': toGroundReferenced('driver-off', 'receiver-logic'),
  '5v-into-led': usual(
    output('driver-5v'),
    [lead(input('receiver-led', 'tip-signal'), ['tip-tip', 'sleeve-sleeve'])],
    'joined',
  ),
  '3v3-into-led': { ...toGroundReferenced('driver-3v3', 'receiver-led'), hanging: ['isig', 'osnk', 'out'] },
  '3v3-push-pull-into-led': toGroundReferenced('driver-3v3-push-pull', 'receiver-led'),
  '5v-into-logic': toGroundReferenced('driver-5v', 'receiver-logic'),
  '3v3-into-logic': toGroundReferenced('driver-3v3', 'receiver-logic'),
  '3v3-push-pull-into-logic': toGroundReferenced('driver-3v3-push-pull', 'receiver-logic'),
  'ground-referenced-into-logic': usual(output('driver-ground', 'ring-signal'), [
    lead(input('receiver-logic', 'ring-signal'), ['ring-ring', 'sleeve-sleeve']),
  ]),
  'ground-referenced-into-led': usual(output('driver-ground', 'tip-signal'), [
    lead(input('receiver-led', 'tip-signal'), ['tip-tip', 'sleeve-sleeve']),
  ]),
  'ground-referenced-into-6n138': usual(output('driver-ground', 'tip-signal'), [
    lead(isolated(), ['tip-tip', 'sleeve-ring']),
  ]),
  'ground-referenced-into-both-ways': usual(output('driver-ground', 'tip-signal'), [
    lead(bothWays, ['tip-tip', 'sleeve-ring']),
  ]),
  '5v-stage-at-3v3-into-6n138': usual({ ...output('driver-5v'), values: { stageVolts: 3.3 } }, [
    lead(isolated(), STRAIGHT),
  ]),
  '3v3-47-ohm-into-h11l1-with-activity-led': usual(
    { ...output('driver-3v3-push-pull'), values: { sourceOhms: 47, sinkOhms: 47 } },
    [lead({ ...isolated('H11L1'), values: { activityOhms: 220 } }, STRAIGHT)],
  ),
  '5v-into-6n138-with-load-on-pin-4': usual({ ...output('driver-5v'), values: { tapOhms: 1000 } }, [
    lead(isolated(), STRAIGHT),
  ]),
  '5v-into-h11l1-with-activity-led-in-series': withExtras(['activity-in-series'], 'H11L1'),
  '5v-with-activity-led-in-series-into-6n138': usual(
    { ...output('driver-5v'), extras: ['activity-in-series'] },
    [lead(isolated(), STRAIGHT)],
  ),
  '5v-into-6n138-with-second-in-series': withExtras(['second-in-series']),
  '5v-into-6n138-with-turned-diode': withExtras(['turned-diode']),
  '5v-opposite-into-6n138-without-diode': opposite(['no-diode']),
  '5v-opposite-into-6n138-with-rectifier': opposite(['rectifier-diode']),
  '5v-opposite-into-6n138-with-schottky': opposite(['schottky-diode']),
  '12v-across-6n138': foreign(
    usual(output('driver-5v'), [
      lead({ ...isolated(), values: { foreignAcrossVolts: 12, foreignOhms: 1 } }, [
        'tip-tip',
        'sleeve-sleeve',
      ]),
    ]),
    'in0 foreign supply source sink',
  ),
  'minus-12v-on-5v-output': foreign(
    usual({ ...output('driver-5v'), values: { foreignSourceVolts: -12 } }, [lead(isolated(), STRAIGHT)]),
    'out foreign supply source ground',
  ),
  '48v-on-source-line-of-6n138': foreign(
    usual(
      output('driver-5v'),
      [lead({ ...isolated(), values: { foreignSourceVolts: 48, foreignOhms: 6810 } }, STRAIGHT)],
      'joined',
    ),
    'in0 foreign supply source ground',
  ),
  '5v-din-with-pins-4-and-5-exchanged': usual(
    { ...output('driver-5v', 'din', 'din5'), extras: ['crossed-inside'] },
    [lead(input('receiver-isolated', 'din', din), ['4-4', '5-5', '2-2'])],
  ),
  '5v-type-a-with-ring-and-sleeve-exchanged': usual({ ...output('driver-5v'), extras: ['crossed-inside'] }, [
    lead(isolated(), STRAIGHT),
  ]),
  '5v-source-on-tied-sleeve': {
    ...usual(
      output('driver-5v'),
      [lead({ ...isolated(), extras: ['shield-tied'] }, ['tip-tip', 'ring-sleeve'])],
      'joined',
    ),
    hanging: ['isrc', 'anode'],
  },
  '5v-split-to-two': usual(output('driver-5v'), [lead(isolated(), STRAIGHT), lead(isolated(), STRAIGHT)]),
  '5v-split-to-three': usual(output('driver-5v'), [
    lead(isolated(), STRAIGHT),
    lead(isolated('H11L1'), STRAIGHT),
    lead(isolated('PC900V'), STRAIGHT),
  ]),
  '5v-two-outputs-on-one-input': beside(
    usual(output('driver-5v'), [lead(isolated(), STRAIGHT)]),
    output('driver-5v'),
    lead(isolated(), STRAIGHT),
  ),
  '5v-ts-lead-between-type-a': {
    link: { output: output('driver-5v'), branches: [tsLead] },
    grounding: 'separate',
    nodes: {
      ...OUTPUT_NODES,
      anode: 'in0 entry',
      otip: 'out tip',
      oring: 'out ring',
      ptip: 'lead0.0 from tip',
      psleeve: 'lead0.0 from sleeve',
      qtip: 'lead0.0 to tip',
      qsleeve: 'lead0.0 to sleeve',
      itip: 'in0 tip',
      iring: 'in0 ring',
      isleeve: 'in0 sleeve',
    },
    parts: {
      ...OUTPUT_PARTS,
      ...inputParts(0, ''),
      rtip1: '-touch0.0 tip tip',
      rtip2: 'wire0.0 tip tip',
      rtip3: 'touch0.1 tip tip',
      rring1: '-touch0.0 sleeve ring',
      rsleeve1: '-touch0.0 sleeve sleeve',
      rsleeve2: 'wire0.0 sleeve sleeve',
      rring3: 'touch0.1 sleeve ring',
      rsleeve3: 'touch0.1 sleeve sleeve',
    },
  },
};
