/** Where the metal of the leads takes each contact, by wires and touches alone. */
import { nodesOf } from '../circuit/index.ts';
import { LINES, SIDES, contactsOf, inputNode, leadNode, outputNode, styleEntry } from '../wiring/index.ts';
import type { Contact, Jack, Line, Link, LinkPart } from '../wiring/index.ts';

/** Joints of more than this count as broken when asking what a lead joins, ohms. */
const JOINED_BELOW_OHMS = 50;

const METAL: readonly LinkPart['role'][] = ['contact', 'conductor', 'joint', 'short'];

/** What one output contact is joined to by the leads. */
export interface Reach {
  readonly contact: Contact;
  readonly inputs: readonly { readonly branch: number; readonly contact: Contact }[];
  /** Other contacts of the same output jack: a short at the output. */
  readonly outputs: readonly Contact[];
}

/** Follow every contact of the output jack through the leads. */
export function reachOf(link: Link, parts: readonly LinkPart[]): readonly Reach[] {
  const groups = groupNodes(parts);
  return contactsOf(link.output.connector).map((contact) => {
    const group = groups(outputNode(contact));
    const same = (node: string): boolean => group !== undefined && groups(node) === group;
    return {
      contact,
      inputs: link.branches.flatMap(({ input }, branch) =>
        contactsOf(input.connector)
          .filter((one) => same(inputNode(branch, one)))
          .map((one) => ({ branch, contact: one })),
      ),
      outputs: contactsOf(link.output.connector).filter((one) => one !== contact && same(outputNode(one))),
    };
  });
}

/** Whether at any plug of the leads pin 2 and the shell are joined, by a wire or a touch, wherever they go from there. */
export function pin2MeetsShell({ branches }: Link, parts: readonly LinkPart[]): boolean {
  const groups = groupNodes(parts);
  const groupsOf = (contact: Contact): readonly string[] =>
    branches.flatMap(({ leads }, branch) =>
      leads.flatMap((_, at) => SIDES.flatMap((side) => groups(leadNode(branch, at, side, contact)) ?? [])),
    );
  const shells = new Set(groupsOf('shell'));
  return groupsOf('2').some((group) => shells.has(group));
}

/**
 * The line each conductor carries, by branch, lead and conductor: that of the output contact it is joined to, else that of
 * the input contact, else 'spare'.
 */
export function conductorLines(
  link: Link,
  parts: readonly LinkPart[],
): readonly (readonly (readonly (Line | 'spare')[])[])[] {
  const groups = groupNodes(parts);
  const lineOf = (jack: Jack, node: (contact: Contact) => string, group: string): Line | undefined => {
    const { lines } = styleEntry(jack.style);
    return LINES.find((line) => lines[line] !== undefined && groups(node(lines[line])) === group);
  };
  return link.branches.map(({ input, leads }, branch) =>
    leads.map((lead, at) =>
      lead.conductors.map(({ from, to }) => {
        const ends = [leadNode(branch, at, 'from', from), leadNode(branch, at, 'to', to)]
          .map(groups)
          .filter((group) => group !== undefined);
        const found = ends.map(
          (group) =>
            lineOf(link.output, outputNode, group) ??
            lineOf(input, (contact) => inputNode(branch, contact), group),
        );
        return found.find((line) => line !== undefined) ?? 'spare';
      }),
    ),
  );
}

/** Number the groups of nodes that metal joins; the answer maps a node to its group. */
function groupNodes(parts: readonly LinkPart[]): (node: string) => string | undefined {
  const parent = new Map<string, string>();
  const root = (node: string): string => {
    let here = node;
    for (let up = parent.get(here); up !== undefined && up !== here; up = parent.get(here)) here = up;
    return here;
  };
  for (const { element, role } of parts) {
    if (!METAL.includes(role)) continue;
    if (element.kind === 'resistor' && element.ohms > JOINED_BELOW_OHMS) continue;
    const [a, b] = nodesOf(element);
    for (const node of [a, b]) if (!parent.has(node)) parent.set(node, node);
    parent.set(root(a), root(b));
  }
  return (node) => (parent.has(node) ? root(node) : undefined);
}
