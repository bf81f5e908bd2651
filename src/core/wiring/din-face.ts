/**
 * How the pins of a DIN connector lie, by where the eye is. Angles: worked out from an encyclopedia text, an open symbol library
 * and a build guide, all agreeing (status c).
 */
import { contactsOf, words } from './connectors.ts';
import type { Connector, Contact, Form } from './connectors.ts';

/** Where the eye is: before the mating face, or behind it where the soldering is done. */
export type View = 'mating' | 'solder';

/** A connector as it is looked at. */
export interface FaceInput {
  readonly connector: Connector;
  readonly form: Form;
  readonly view: View;
}

/** How a DIN connector is looked at; `turned` turns the page half round, so that the key is at the top. */
export interface DinView extends FaceInput {
  readonly turned?: boolean;
}

/** Degrees, counter-clockwise from the right, key at the bottom: socket seen from its mating face, and plug from its solder side. */
const ANGLES: Readonly<Partial<Record<Contact, number>>> = {
  '1': 180,
  '2': 90,
  '3': 0,
  '4': 135,
  '5': 45,
  '6': 225,
  '7': 315,
};

/** True when the view is the mirror image of the socket's mating face: its solder side, and the plug's pins. */
function mirrored({ form, view }: FaceInput): boolean {
  return (form === 'plug') === (view === 'mating');
}

/**
 * The angle of a pin, degrees counter-clockwise from the right.
 * @throws for a contact that is no pin of the connector.
 */
export function dinAngle(input: DinView, contact: Contact): number {
  const angle = ANGLES[contact];
  if (angle === undefined || !contactsOf(input.connector).includes(contact)) {
    throw new RangeError(
      `a ${words(input.connector)} connector: contact must be one of its pins, got '${contact}'`,
    );
  }
  const seen = mirrored(input) ? 180 - angle : angle;
  return (seen + (input.turned === true ? 180 : 0) + 360) % 360;
}

/** The pins of a connector, without its shell. */
export function pinsOf(connector: Connector): readonly Contact[] {
  return contactsOf(connector).filter((contact) => contact !== 'shell');
}

/** Pins from left to right as the eye meets them, those level with one another from the top down. */
export function dinReadingOrder(input: DinView): readonly Contact[] {
  const turn = Math.PI / 180;
  return pinsOf(input.connector)
    .map((contact) => ({ contact, radians: dinAngle(input, contact) * turn }))
    .sort((a, b) => Math.cos(a.radians) - Math.cos(b.radians) || Math.sin(b.radians) - Math.sin(a.radians))
    .map(({ contact }) => contact);
}
