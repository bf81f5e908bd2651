/** A path of current, told contact by contact. */
import { contactWords } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import { partName } from './part-words.ts';
import type { CurrentPath, Hop } from './path.ts';
import { nodeOf } from './readings.ts';
import type { ContactReading, Spot, StateReading } from './readings.ts';
import { capital, sayAmperes, sayContact, sayInput, sayVolts } from './speak.ts';

/** One step of the explanation; `spot` is the contact it ends at, for the figure. */
export interface Step {
  readonly text: string;
  readonly spot: Spot | undefined;
  readonly amperes: number;
}

/** Tell a path: one step for each stretch inside a device, for each lead, and for the way back. */
export function stepsAlong(link: Link, path: CurrentPath, reading: StateReading): readonly Step[] {
  const { hops } = path;
  const last = hops.at(-1);
  if (!last) return [];
  // A stretch ends where the path leaves a device or a lead. The touch of a plug belongs to its lead.
  const stretches: Hop[][] = [];
  hops.forEach((hop, at) => {
    const same = at > 0 && JSON.stringify(hop.part.owner) === JSON.stringify(hops[at - 1]?.part.owner);
    if (same) stretches.at(-1)?.push(hop);
    else stretches.push([hop]);
  });
  return [
    ...stretches.map((stretch, at) => stepOf(link, stretch, reading, at === 0)),
    {
      text: path.returned
        ? hops[0]?.part.role === 'foreign-resistor'
          ? 'That is the other side of the foreign supply: the loop is closed.'
          : 'That is the ground of the supply it came from: the loop is closed.'
        : 'Here it splits into smaller currents, all of them almost nothing.',
      spot: undefined,
      amperes: path.returned ? last.amperes : 0,
    },
  ];
}

function stepOf(link: Link, stretch: readonly Hop[], reading: StateReading, first: boolean): Step {
  const opening = stretch[0] as Hop;
  const closing = stretch[stretch.length - 1] as Hop;
  const { owner } = opening.part;
  const contact = contactAt(reading, closing.to);
  const spot = contact?.spot;
  const left = typeof contact?.volts === 'number' ? `, at ${sayVolts(contact.volts)}` : '';
  const text =
    owner.place === 'lead'
      ? leadText(link, stretch, reading, owner, left)
      : deviceText(link, stretch, first, spot && `${contactName(link, spot)}${left}`);
  return { text, spot, amperes: closing.amperes };
}

function leadText(
  link: Link,
  stretch: readonly Hop[],
  reading: StateReading,
  owner: { readonly branch: number; readonly lead: number },
  left: string,
): string {
  const opening = stretch[0] as Hop;
  const closing = stretch[stretch.length - 1] as Hop;
  const from = contactAt(reading, opening.from)?.spot;
  const to = contactAt(reading, closing.to)?.spot;
  const turned = from && to && from.place === to.place && from.place !== 'lead';
  const how = stretch.some(({ part }) => part.role === 'short')
    ? ', over a solder bridge'
    : turned
      ? ', inside the plug: one metal part touches both'
      : '';
  const place = (spot: Spot | undefined): string =>
    spot?.place === 'lead'
      ? `${contactWords(spot.contact)} (where it meets ${leadWords(link, owner.branch, spot.lead === owner.lead ? spot.lead + (spot.side === 'to' ? 1 : -1) : spot.lead)})`
      : spot
        ? `${contactName(link, spot)} of ${deviceWords(link, spot)}`
        : 'a joint';
  const words = leadWords(link, owner.branch, owner.lead);
  return `${capital(words)} carries ${sayAmperes(closing.amperes)} from ${place(from)} to ${place(to)}${left}${how}.`;
}

function deviceText(link: Link, stretch: readonly Hop[], first: boolean, out: string | undefined): string {
  const { owner } = (stretch[0] as Hop).part;
  const carried = sayAmperes((stretch[stretch.length - 1] as Hop).amperes);
  const place =
    owner.place === 'input'
      ? sayInput(owner.branch, link.branches.length)
      : owner.place === 'output'
        ? owner.rival === undefined
          ? 'the output'
          : `output ${owner.rival}`
        : undefined;
  if (!place) return `The devices' joined grounds carry ${carried}.`;
  const through = stretch.filter(({ part }) => part.role !== 'grounds').map(({ part }) => partName(part));
  const foreign = stretch[0]?.part.role === 'foreign-resistor' ? 'foreign supply' : 'supply';
  const start = first ? `${carried} leaves the ${foreign} of ${place}` : `In ${place}, ${carried}`;
  const way =
    through.length === 0
      ? ''
      : `${first ? ', passes through' : ' passes through'} ${through.join(', then ')}`;
  const end = out === undefined ? 'reaches ground' : `comes out at ${out}`;
  const wrongWay = stretch.some(({ part }) => part.role === 'protection')
    ? ' That is the wrong way for the LED, which stays dark.'
    : stretch.some(({ part }) => part.role === 'turned-diode')
      ? ' It goes past the LED, which stays dark.'
      : '';
  return `${start}${way}${way === '' && !first ? ' ' : ' and '}${end}.${wrongWay}`;
}

/** 'the lead', 'the adapter', or 'lead 2' where several leads have no name of their own. */
function leadWords(link: Link, branch: number, at: number): string {
  const leads = link.branches[branch]?.leads ?? [];
  if (link.branches.length === 1 && leads.length === 1) return 'the lead';
  const name = leads[at]?.name;
  if (name === undefined || name === 'lead') return leads.length > 1 ? `lead ${at + 1}` : 'the lead';
  return /^(lead|adapter) \d+$/.test(name) ? name : `the lead '${name}'`;
}

/** The contact a node belongs to, of a jack or of one end of a lead, if it is one. */
function contactAt(reading: StateReading, node: string): ContactReading | undefined {
  return reading.contacts.find(({ spot }) => nodeOf(spot) === node);
}

/** A contact of a jack of a link, with its line: 'pin 4 (source)'; one of a lead without. */
export function contactName(link: Link, spot: Spot): string {
  const jack =
    spot.place === 'output'
      ? link.output
      : spot.place === 'input'
        ? link.branches[spot.branch]?.input
        : undefined;
  return jack ? sayContact(jack, spot) : contactWords(spot.contact);
}

function deviceWords(link: Link, spot: Spot): string {
  return spot.place === 'input' ? sayInput(spot.branch, link.branches.length) : 'the output';
}
