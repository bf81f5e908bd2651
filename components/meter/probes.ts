/** Where the two probes are. */
import { probePlaces, samePlace } from '../../src/core/readings/index.ts';
import type { LeadContact, UnderTest } from '../../src/core/readings/index.ts';
import type { Contact } from '../../src/core/wiring/index.ts';
import type { Probe } from '../../src/draw/index.ts';

/** A contact for each probe. */
export type Probes = Readonly<Record<Probe, LeadContact>>;

/** Where the probes are at first: on a loop's source line of Type A, and on its shield. */
export const FIRST_PROBES: Probes = {
  red: { side: 'from', contact: 'ring' },
  black: { side: 'from', contact: 'sleeve' },
};

/** The probes on what is under test: each where it is wanted, as far as there is such a contact and the other probe is not on it. */
export function probesOn(under: UnderTest, wanted: Probes): Probes {
  const places = probePlaces(under);
  const has = (place: LeadContact): boolean => places.some((one) => samePlace(one, place));
  /** The first of these contacts that is there and not taken, on the first plug that has it. */
  const among = (contacts: readonly Contact[], taken: LeadContact): LeadContact => {
    const free = places.filter((place) => !samePlace(place, taken));
    const found = contacts.flatMap((contact) => free.filter((place) => place.contact === contact))[0];
    return found ?? (free[0] as LeadContact);
  };
  const red = has(wanted.red) ? wanted.red : among(['ring', '4', 'tip'], wanted.black);
  const black =
    has(wanted.black) && !samePlace(wanted.black, red) ? wanted.black : among(['sleeve', '2', '5'], red);
  return { red, black };
}

/** A probe that is put on the contact of the other one changes places with it. */
export function putProbe(at: Probes, probe: Probe, place: LeadContact): Probes {
  const other = probe === 'red' ? 'black' : 'red';
  const moved = samePlace(at[other], place) ? at[probe] : at[other];
  return probe === 'red' ? { red: place, black: moved } : { red: moved, black: place };
}
