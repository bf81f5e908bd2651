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
import type { Connector, Fault, Grounding, Jack, OtherJackKind } from '../../src/core/wiring/index.ts';
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
  grounding: 'separate',
};

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
  const lead = leadOf(choices);
  return thing === 'lead'
    ? { kind: 'lead', lead }
    : { kind: 'link', link: { output, branches: [{ input, leads: [lead] }] }, grounding };
}

function leadOf({ output, input, lead }: Choices) {
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
