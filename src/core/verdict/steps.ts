/** A path of current, told contact by contact. */
import { contactWords } from '../wiring/connectors.ts';
import type { Contact } from '../wiring/connectors.ts';
import type { Link } from '../wiring/link.ts';
import { lineAt } from '../wiring/styles.ts';
import type { Step } from './explain.ts';
import { partWords } from './part-words.ts';
import type { CurrentPath, Hop } from './path.ts';
import type { Spot, StateReading } from './readings.ts';
import { sayAmperes, sayInput, sayVolts } from './speak.ts';

/** Tell a path: one step for each stretch inside a device, for each lead, and for the way back. */
export function stepsAlong(link: Link, path: CurrentPath, reading: StateReading): readonly Step[] {
  const steps: Step[] = [];
  const { hops } = path;
  let at = 0;
  while (at < hops.length) {
    const end = stretchEnd(hops, at);
    const stretch = hops.slice(at, end);
    steps.push(stepOf(link, stretch, reading, at === 0));
    at = end;
  }
  const last = hops[hops.length - 1];
  if (last) {
    steps.push(
      path.returned
        ? {
            text: 'It is back at the ground of the supply it came from: the loop is closed.',
            spot: undefined,
            amperes: last.amperes,
          }
        : {
            text: 'Here it parts into smaller currents, none of them to speak of.',
            spot: undefined,
            amperes: 0,
          },
    );
  }
  return steps;
}

/** A stretch ends where the path leaves a device or a lead. The touch of a plug belongs to its lead. */
function stretchEnd(hops: readonly Hop[], start: number): number {
  const key = (hop: Hop): string => {
    const { owner } = hop.part;
    return owner.place === 'lead'
      ? `lead ${owner.branch}.${owner.lead}`
      : owner.place === 'input'
        ? `input ${owner.branch}`
        : owner.place;
  };
  const first = key(hops[start] as Hop);
  let end = start + 1;
  while (end < hops.length && key(hops[end] as Hop) === first) end++;
  return end;
}

function stepOf(link: Link, stretch: readonly Hop[], reading: StateReading, first: boolean): Step {
  const opening = stretch[0] as Hop;
  const closing = stretch[stretch.length - 1] as Hop;
  const { owner } = opening.part;
  const amperes = closing.amperes;
  const spot = spotAt(closing.to);
  const volts = spot && reading.contacts.find((one) => sameSpot(one.spot, spot))?.volts;
  const left = volts === null || volts === undefined ? '' : ` (${sayVolts(volts)} left)`;
  const carried = sayAmperes(amperes);
  const through = stretch
    .filter(({ part }) => part.role !== 'grounds' && part.role !== 'contact')
    .map(({ part }) => partWords(part));
  if (owner.place === 'lead') {
    const lead = link.branches[owner.branch]?.leads[owner.lead];
    const from = spotAt(opening.from);
    const bridge = stretch.some(({ part }) => part.role === 'short');
    const turned = from && spot && from.place === spot.place;
    const how = bridge
      ? ' over a solder bridge'
      : turned
        ? ' inside the plug: one metal part touches both contacts'
        : '';
    return {
      text: `The lead${lead && lead.name !== 'lead' ? ` '${lead.name}'` : ''} carries ${carried} from ${spotWords(link, from)} to ${spotWords(link, spot)}${left}${how}.`,
      spot,
      amperes,
    };
  }
  const place =
    owner.place === 'output'
      ? 'the output'
      : owner.place === 'input'
        ? sayInput(owner.branch, link.branches.length)
        : 'the common ground';
  const wrongWay = stretch.some(({ part }) => part.role === 'protection')
    ? ' That is the wrong way for the LED, which stays dark.'
    : '';
  const start = first
    ? `${carried} leaves the supply of ${place} and passes`
    : `In ${place}, ${carried} passes`;
  const to = spot ? ` and comes to ${spotWords(link, spot)}${left}` : ' to ground';
  const middle = through.length === 0 ? ' its ground' : ` ${through.join(', then ')}`;
  return { text: `${start}${middle}${to}.${wrongWay}`, spot, amperes };
}

function sameSpot(a: Spot, b: Spot): boolean {
  return (
    a.place === b.place &&
    a.contact === b.contact &&
    (a.place !== 'input' || b.place !== 'input' || a.branch === b.branch)
  );
}

/** The jack contact a node belongs to, if it is one. */
function spotAt(node: string): Spot | undefined {
  const match = /^(out|in(\d+)) (\d|shell|tip|ring|sleeve)$/.exec(node);
  if (!match) return undefined;
  const contact = match[3] as Contact;
  return match[1] === 'out'
    ? { place: 'output', contact }
    : { place: 'input', branch: Number(match[2]), contact };
}

function spotWords(link: Link, spot: Spot | undefined): string {
  if (!spot) return 'a joint';
  if (spot.place === 'lead') return contactWords(spot.contact);
  const jack = spot.place === 'output' ? link.output : link.branches[spot.branch]?.input;
  const line = jack && lineAt(jack.style, spot.contact);
  const name = spot.place === 'output' ? 'the output' : sayInput(spot.branch, link.branches.length);
  return `${contactWords(spot.contact)} of ${name}${line ? ` (${line})` : ''}`;
}
