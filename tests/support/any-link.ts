/** Seeded links over everything that a page, a file or a shared link may hold: each value anywhere in its bounds, often at an end. */
import {
  CONNECTORS,
  CONTACT_FLOOR,
  CONTACT_RANGE,
  EXTRAS,
  FORMS,
  GAUGES,
  JOINT_OHMS,
  LENGTH_METRES,
  PARTS,
  SIDES,
  circuitsFor,
  contactsOf,
  hasLed,
  jackProblem,
  makeJack,
  makeLead,
  stylesFor,
  valuesOf,
} from '../../src/core/wiring/index.ts';
import type {
  Branch,
  Conductor,
  Connector,
  End,
  Fault,
  Jack,
  Lead,
  Link,
  DIRECTIONS,
} from '../../src/core/wiring/index.ts';
import type { Random } from './random.ts';

const MOST_INPUTS = 4;
const MOST_LEADS = 3;
const MOST_CONDUCTORS = 8;
const MOST_FAULTS = 4;

/** Where a value may be 0, decades begin here; what falls below its floor is drawn as the floor. */
const LEAST_DRAWN = 1e-18;

/** A value between two bounds: mostly at an end or just inside it, else even in value or in decades. */
function anyBetween(random: Random, [least, most]: readonly [number, number]): number {
  const draw = random.next();
  if (draw < 0.3) return least;
  if (draw < 0.6) return most;
  if (draw < 0.8 || least < 0) return least + (most - least) * random.next();
  return random.decades(Math.max(least, LEAST_DRAWN), most);
}

function aboveFloor(value: number, floor = 0): number {
  return value > 0 ? Math.max(value, floor) : value;
}

function anyJack(random: Random, direction: (typeof DIRECTIONS)[number], connector: Connector): Jack {
  for (;;) {
    const style = random.pick(stylesFor(direction, connector));
    const circuit = random.pick(circuitsFor(direction, style));
    const part = hasLed(circuit) ? random.pick(PARTS) : '6N138';
    const plain = random.chance(0.3);
    const values = Object.fromEntries(
      valuesOf(circuit, part)
        .filter(() => !plain && random.chance(0.5))
        .map(({ name, least, most, floor }) => [name, aboveFloor(anyBetween(random, [least, most]), floor)]),
    );
    const extras = EXTRAS.filter(() => random.chance(0.1));
    const jack = makeJack(direction, connector, style, {
      circuit,
      part,
      values,
      ...(extras.length > 0 && { extras }),
    });
    if (jackProblem(jack) === undefined) return jack;
  }
}

function anyConnector(random: Random, direction: (typeof DIRECTIONS)[number]): Connector {
  return random.pick(CONNECTORS.filter((one) => stylesFor(direction, one).length > 0));
}

function anyLead(random: Random, name: string, from: End, to: End): Lead {
  const conductors = Array.from({ length: random.integer(0, MOST_CONDUCTORS) }, (): Conductor => ({
    from: random.pick(contactsOf(from.connector)),
    to: random.pick(contactsOf(to.connector)),
  }));
  const distinct = conductors.filter(
    (one, at) => conductors.findIndex((other) => other.from === one.from && other.to === one.to) === at,
  );
  const faults = Array.from(
    { length: random.chance(0.5) ? 0 : random.integer(1, MOST_FAULTS) },
    (): Fault => {
      const side = random.pick(SIDES);
      const contacts = contactsOf((side === 'from' ? from : to).connector);
      const contact = random.pick(contacts);
      const draw = random.next();
      if (draw < 0.4) return { kind: 'open', side, contact };
      if (draw < 0.7) return { kind: 'joint', side, contact, ohms: anyBetween(random, JOINT_OHMS) };
      const other = random.pick(contacts.filter((one) => one !== contact));
      return { kind: 'short', side, between: [contact, other] };
    },
  );
  return {
    ...makeLead(from.connector, to.connector, distinct, {
      lengthMetres: anyBetween(random, LENGTH_METRES),
      gauge: random.pick(GAUGES),
      contactOhms: aboveFloor(anyBetween(random, CONTACT_RANGE), CONTACT_FLOOR),
      faults,
    }),
    name,
    from,
    to,
  };
}

/** An end that goes into the one given, or now and then any end at all. */
function endAgainst(random: Random, end: End): End {
  if (random.chance(0.05)) return { connector: random.pick(CONNECTORS), form: random.pick(FORMS) };
  return { connector: end.connector, form: end.form === 'plug' ? 'jack' : 'plug' };
}

function anyBranch(random: Random, output: Jack, name: string): Branch {
  const input = anyJack(random, 'in', anyConnector(random, 'in'));
  const count = random.chance(0.6) ? 1 : random.integer(0, MOST_LEADS);
  const leads: Lead[] = [];
  let before: End = { connector: output.connector, form: 'jack' };
  for (let at = 0; at < count; at++) {
    const to =
      at === count - 1
        ? endAgainst(random, { connector: input.connector, form: 'jack' })
        : { connector: random.pick(CONNECTORS), form: random.pick(FORMS) };
    leads.push(anyLead(random, `lead ${name}.${at}`, endAgainst(random, before), to));
    before = to;
  }
  return { input, leads };
}

/** A link: one output, up to four inputs, up to three leads to each, any conductors, any faults, any values; now and then a rival. */
export function anyLink(random: Random): Link {
  const output = anyJack(random, 'out', anyConnector(random, 'out'));
  const inputs = random.chance(0.7) ? 1 : random.integer(2, MOST_INPUTS);
  const branches = Array.from({ length: inputs }, (_, at) => anyBranch(random, output, `${at}`));
  if (!random.chance(0.1)) return { output, branches };
  const rival = anyJack(random, 'out', anyConnector(random, 'out'));
  const { leads } = anyBranch(random, rival, 'rival');
  const shares = random.integer(0, inputs - 1);
  const { input } = branches[shares] as Branch;
  return { output, branches, rivals: [{ output: rival, branches: [{ input, leads, shares }] }] };
}
