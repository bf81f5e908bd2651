/** Leads in series: every way to reach from one jack to another with leads of a list, each turned either way. */
import { contactsOf, mate } from './connectors.ts';
import type { Connector } from './connectors.ts';
import type { End, Lead } from './link.ts';
import { turnLead } from './link.ts';

/** One lead of a series: its number in the list, and the lead as it lies, first end nearer the output. */
interface SeriesPiece {
  readonly number: number;
  readonly lead: Lead;
}

/** Whether two ends go into one another: a plug and a jack of one kind. */
function endsFit(one: End, other: End): boolean {
  if (one.form === other.form) return false;
  return one.form === 'plug'
    ? mate(one.connector, other.connector).fits
    : mate(other.connector, one.connector).fits;
}

/**
 * Every series of at most `most` leads whose plugs fit the two jacks and one another, shortest series first.
 * @param counts how often each lead of the list may be used; Infinity where it can be bought again.
 */
export function seriesBetween(
  leads: readonly Lead[],
  counts: readonly number[],
  output: Connector,
  input: Connector,
  most: number,
): readonly (readonly SeriesPiece[])[] {
  const pieces = leads.flatMap((lead, number): SeriesPiece[] => [
    { number, lead },
    { number, lead: turnLead(lead) },
  ]);
  const found: (readonly SeriesPiece[])[] = [];
  const grow = (series: readonly SeriesPiece[], open: End): void => {
    if (series.length > 0 && endsFit(open, { connector: input, form: 'jack' })) found.push(series);
    if (series.length === most) return;
    for (const piece of pieces) {
      const used = series.filter(({ number }) => number === piece.number).length;
      if (used < (counts[piece.number] ?? 0) && endsFit(open, piece.lead.from))
        grow([...series, piece], piece.lead.to);
    }
  };
  grow([], { connector: output, form: 'jack' });
  return found.toSorted((one, other) => one.length - other.length);
}

/** A node of the metal that a series joins: a contact of the output jack ('out'), of the input jack ('in'), or of a lead's end. */
type Metal = string;

/** Joins nodes and finds the one that stands for a group. */
class Groups {
  readonly #parent = new Map<Metal, Metal>();

  find(node: Metal): Metal {
    const above = this.#parent.get(node);
    return above === undefined || above === node ? node : this.find(above);
  }

  join(one: Metal, other: Metal): void {
    this.#parent.set(this.find(one), this.find(other));
  }
}

function touch(groups: Groups, one: End, other: End, at: readonly [string, string]): void {
  if (one.form === other.form) return;
  const plugFirst = one.form === 'plug';
  const mating = plugFirst ? mate(one.connector, other.connector) : mate(other.connector, one.connector);
  if (!mating.fits) return;
  for (const { plug, jack } of mating.touches)
    groups.join(`${at[0]} ${plugFirst ? plug : jack}`, `${at[1]} ${plugFirst ? jack : plug}`);
}

/**
 * Which contacts of two jacks a series of leads joins, wire resistance and faults left aside: groups such as 'in tip, out 5', in a fixed
 * order. Two series with the same groups are the same circuit but for the ohms of their wire.
 */
export function contactsJoined(
  output: Connector,
  leads: readonly Lead[],
  input: Connector,
): readonly string[] {
  const groups = new Groups();
  const ends = leads.map((_, at) => [`${at} from`, `${at} to`] as const);
  leads.forEach(({ from, to, conductors }, at) => {
    const [first, last] = ends[at] as readonly [string, string];
    const before = leads[at - 1];
    touch(groups, before?.to ?? { connector: output, form: 'jack' }, from, [
      ends[at - 1]?.[1] ?? 'out',
      first,
    ]);
    for (const wire of conductors) groups.join(`${first} ${wire.from}`, `${last} ${wire.to}`);
    if (at === leads.length - 1) touch(groups, to, { connector: input, form: 'jack' }, [last, 'in']);
  });
  const contacts = [
    ...contactsOf(output).map((one) => `out ${one}`),
    ...contactsOf(input).map((one) => `in ${one}`),
  ];
  const byGroup = Map.groupBy(contacts, (contact) => groups.find(contact));
  return [...byGroup.values()]
    .filter((group) => group.length > 1)
    .map((group) => group.sort().join(', '))
    .sort();
}
