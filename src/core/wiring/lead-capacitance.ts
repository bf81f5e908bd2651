/** Capacitance between the wires of a lead, half of it at each end. */
import type { Bench } from './build.ts';
import type { Contact } from './connectors.ts';
import type { Conductor, Lead, Side } from './link.ts';

/** Core to core of a shielded pair, farads per metre (our choice: with the next, a pair of about 100 pF/m, a secondary page). */
const CORE_TO_CORE_FARADS = 40e-12;

/** Core to shield, farads per metre (our choice: a core to all else then has 160 pF/m, within the 150 to 220 from memory). */
const CORE_TO_SHIELD_FARADS = 120e-12;

/** Contacts that a cable's shield is soldered to (MMA CA-033, p. 3: pin 2; a phone plug's sleeve). */
const SHIELD_CONTACTS: readonly Contact[] = ['2', 'sleeve', 'shell'];

/** The conductor that is the cable's shield: the one on the most shield contacts, the first of equals; undefined if none is. */
function shieldOf(conductors: readonly Conductor[]): Conductor | undefined {
  const weight = ({ from, to }: Conductor): number =>
    Number(SHIELD_CONTACTS.includes(from)) + Number(SHIELD_CONTACTS.includes(to));
  const most = Math.max(0, ...conductors.map(weight));
  return most === 0 ? undefined : conductors.find((one) => weight(one) === most);
}

/** Add the capacitance of a lead. `solder` tells the node of a contact behind its joint. */
export function addLeadCapacitance(
  bench: Bench,
  lead: Lead,
  prefix: string,
  solder: (side: Side, contact: Contact) => string,
): void {
  const { conductors, lengthMetres } = lead;
  const shield = shieldOf(conductors);
  conductors.forEach((one, at) => {
    for (const other of conductors.slice(at + 1)) {
      const perMetre = one === shield || other === shield ? CORE_TO_SHIELD_FARADS : CORE_TO_CORE_FARADS;
      for (const side of ['from', 'to'] as const) {
        const a = solder(side, one[side]);
        const b = solder(side, other[side]);
        if (a === b) continue;
        bench.add('capacitance', {
          kind: 'capacitor',
          name: `${prefix} ${side} ${one.from}-${one.to} ${other.from}-${other.to}`,
          a,
          b,
          farads: (perMetre * lengthMetres) / 2,
        });
      }
    }
  });
}
