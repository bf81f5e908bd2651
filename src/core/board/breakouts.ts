/**
 * Breakout leads: where an in-and-out jack receives and sends at once, one TRS plug goes into its hole, and a jack for each of
 * the two links hangs on it. Each jack gets only the lines of its own link, so that a lead with all wires joins no more.
 */
import { MAKING_DEFAULTS, PLAN_LIMITS, wholeDevice } from '../plan/index.ts';
import type { MakingPrices, Plan } from '../plan/index.ts';
import { LINES, PIGTAIL_METRES, styleEntry, words } from '../wiring/index.ts';
import type { Connector, Style } from '../wiring/index.ts';

const TAILS = 2;
const ENDS = 3;

/** A breakout lead that a plan needs. */
interface Breakout {
  readonly name: string;
  readonly device: string;
  /** The two halves of the jack. */
  readonly into: string;
  readonly out: string;
  readonly connector: Connector;
  /** Which contacts are wired through to the jack of each link: 'tip to tip, sleeve to sleeve'. */
  readonly intoWires: string;
  readonly outWires: string;
  /** The leads that end in its two jacks. */
  readonly intoLead: string;
  readonly outLead: string;
  readonly links: readonly string[];
}

/** Every breakout lead that the links of a plan need, in the order of the devices. */
export function breakoutsOf(plan: Plan): readonly Breakout[] {
  const inputs = plan.links.flatMap((link) => link.inputs.map((input) => ({ link: link.name, ...input })));
  const found = plan.devices.map(wholeDevice).flatMap(({ name: device, jacks }) =>
    jacks.flatMap((into): Omit<Breakout, 'name'>[] => {
      const out = jacks.find(({ name }) => name === into.sharesHole);
      const comes = inputs.find((input) => input.device === device && input.jack === into.name);
      const goes = plan.links.find(({ output }) => output.device === device && output.jack === out?.name);
      if (!out || !comes || !goes) return [];
      return [
        {
          device,
          into: into.name,
          out: out.name,
          connector: into.connector,
          intoWires: wiresOf(into.style),
          outWires: wiresOf(out.style),
          intoLead: comes.leads.at(-1) ?? '',
          outLead: goes.inputs[0]?.leads[0] ?? '',
          links: [comes.link, goes.name],
        },
      ];
    }),
  );
  return found.map((one, at) => ({ name: `breakout ${at + 1}`, ...one }));
}

function wiresOf(style: Style): string {
  const { lines } = styleEntry(style);
  return LINES.flatMap((line) =>
    lines[line] === undefined ? [] : [`${lines[line]} to ${lines[line]}`],
  ).join(', ');
}

/** What a breakout lead costs at the reader's own figures: a plug and two jacks, counted alike, two tails, and all else. */
export function breakoutCost(making: MakingPrices | undefined, connector: Connector): number {
  const { plugs, plug, wirePerMetre, perLead } = making ?? MAKING_DEFAULTS;
  const sum = ENDS * (plugs[connector] ?? plug) + TAILS * PIGTAIL_METRES * wirePerMetre + perLead;
  return Math.min(sum, PLAN_LIMITS.price);
}

/** A breakout lead in the words of a shop. */
export function breakoutWords(connector: Connector): string {
  return `breakout lead: ${words(connector)} plug to two ${words(connector)} jacks`;
}
