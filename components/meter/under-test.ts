/** What is put under the meter, from the few choices of its form. */
import {
  OTHER_JACKS,
  familyOf,
  makeJack,
  makeLead,
  otherJackSuits,
  settleJack,
} from '../../src/core/wiring/index.ts';
import { lineByLine } from '../../src/core/verdict/index.ts';
import type { Connector, Fault, Grounding, Jack, Lead, OtherJackKind } from '../../src/core/wiring/index.ts';
import type { UnderTest } from '../../src/core/readings/index.ts';

/** Kinds of thing, in words. */
export const THINGS = {
  jack: 'a jack alone',
  lead: 'a lead alone',
  link: 'two devices and a lead',
} as const;
type Thing = keyof typeof THINGS;

/** What can be wrong with the lead, in words. */
export const LEADS = {
  hand: 'as it is in hand',
  right: 'right',
  swapped: 'two conductors swapped',
  open: 'one joint open at the input plug',
  joint: 'one joint of 500 ohm at the input plug',
  short: 'two contacts bridged at the input plug',
} as const;
type LeadState = keyof typeof LEADS;

/** Resistance of the bad joint, ohms (invented for the demonstration). */
const JOINT_OHMS = 500;

/** What a jack alone can be: a direction, or one of the jacks that are no control jacks. */
export type JackSort = 'out' | 'in' | OtherJackKind;

/** Every choice of the form; those that do not matter now are kept. */
export interface Choices {
  readonly thing: Thing;
  readonly sort: JackSort;
  readonly jack: Jack;
  readonly otherConnector: Connector;
  readonly output: Jack;
  readonly input: Jack;
  readonly lead: LeadState;
  /** The leads in hand, in series from the output; empty where there are none. */
  readonly hand: readonly Lead[];
  readonly grounding: Grounding;
}

/** What the page starts with: a Type A output, and a DIN output with a lead to a Type A input. */
export const FIRST_CHOICES: Choices = {
  thing: 'jack',
  sort: 'out',
  jack: makeJack('out', 'trs-3.5', 'type-a'),
  otherConnector: 'trs-6.35',
  output: makeJack('out', 'din5', 'din'),
  input: makeJack('in', 'trs-3.5', 'type-a'),
  lead: 'right',
  hand: [],
  grounding: 'separate',
};

/** What can be said of the lead: that it is the one in hand only as long as the jacks are those it was made for. */
export function leadStates({ hand }: Choices): readonly LeadState[] {
  const all = Object.keys(LEADS) as LeadState[];
  return hand.length > 0 ? all : all.filter((state) => state !== 'hand');
}

/** The choices with the jacks and the leads in hand. A lead without a wire is none. */
export function withHand(choices: Choices, output: Jack, input: Jack, leads: readonly Lead[]): Choices {
  const hand = leads.some(({ conductors }) => conductors.length > 0) ? leads : [];
  return {
    ...choices,
    thing: 'link',
    jack: output,
    sort: 'out',
    output,
    input,
    hand,
    lead: hand.length > 0 ? 'hand' : 'right',
  };
}

/** The choices with another output or input; the leads in hand were made for other jacks then. */
export function withEnd(choices: Choices, side: 'output' | 'input', changes: Partial<Jack>): Choices {
  const before = choices[side];
  const jack = settleJack({ ...before, ...changes });
  const same = jack.connector === before.connector && jack.style === before.style;
  const lead = same || choices.lead !== 'hand' ? choices.lead : 'right';
  return { ...choices, [side]: jack, lead, hand: same ? choices.hand : [] };
}

/** Connectors that a jack of this kind can have. */
export function suits(kind: OtherJackKind, connector: Connector): boolean {
  return familyOf(connector) !== 'din' && otherJackSuits(kind, connector);
}

/** The choices with another sort of jack, its connector changed where it does not suit. */
export function withSort(choices: Choices, sort: JackSort): Choices {
  if (sort === 'out' || sort === 'in')
    return { ...choices, sort, jack: settleJack({ ...choices.jack, direction: sort }) };
  const otherConnector = suits(sort, choices.otherConnector) ? choices.otherConnector : 'trs-6.35';
  return { ...choices, sort, otherConnector };
}

/** What the choices put under the meter. */
export function underTest(choices: Choices): UnderTest {
  const { thing, sort, jack, otherConnector, output, input, grounding } = choices;
  if (thing === 'jack') {
    const other = OTHER_JACKS.find((kind) => kind === sort);
    return {
      kind: 'jack',
      jack: other ? { kind: 'other', other, connector: otherConnector } : { kind: 'control', jack },
    };
  }
  const leads = leadsOf(choices);
  const [lead] = leads;
  return thing === 'lead'
    ? { kind: 'lead', lead }
    : { kind: 'link', link: { output, branches: [{ input, leads }] }, grounding };
}

function leadsOf(choices: Choices): readonly [Lead, ...Lead[]] {
  const [first, ...others] = choices.hand;
  return choices.lead === 'hand' && first ? [first, ...others] : [madeLead(choices)];
}

function madeLead({ output, input, lead }: Choices): Lead {
  const right = lineByLine(output, input);
  const [first, second] = right;
  const conductors =
    lead === 'swapped' && first && second
      ? [{ ...first, to: second.to }, { ...second, to: first.to }, ...right.slice(2)]
      : right;
  const faults: Fault[] = [];
  if (first && lead === 'open') faults.push({ kind: 'open', side: 'to', contact: first.to });
  if (first && lead === 'joint')
    faults.push({ kind: 'joint', side: 'to', contact: first.to, ohms: JOINT_OHMS });
  if (first && second && first.to !== second.to && lead === 'short')
    faults.push({ kind: 'short', side: 'to', between: [first.to, second.to] });
  return makeLead(output.connector, input.connector, conductors, { faults });
}
