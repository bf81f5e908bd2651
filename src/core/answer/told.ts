/** What a player tells of a jack: what it looks like, and what the manual says of it. Circuits are not asked for. */
import {
  CONNECTORS,
  circuitsFor,
  diameterOf,
  hasLed,
  makeJack,
  styleEntry,
  stylesFor,
} from '../wiring/index.ts';
import type { CircuitKind, Connector, Contact, Direction, Jack, Part, Style } from '../wiring/index.ts';

/** The jacks that a player tells apart by looking. */
export const SOCKETS = ['din5', 'trs-6.35', 'trs-3.5', 'trs-2.5'] as const satisfies readonly Connector[];
/** One of them. */
export type Socket = (typeof SOCKETS)[number];

/** A jack as it is told. `type` is undefined where the manual says nothing; `could` are the types that its words leave open. */
export interface ToldJack {
  readonly direction: Direction;
  readonly socket: Socket;
  readonly type: Style | undefined;
  readonly could?: readonly Style[];
  /** Whether the same jack also carries the other direction, on the contact that this one leaves free. */
  readonly inAndOut?: boolean;
  /** The circuit and part behind it, where the player knows more. */
  readonly circuit?: CircuitKind | undefined;
  readonly part?: Part | undefined;
}

/** Every type that the jack may be, after what is told of it. */
export function openTypes({ direction, socket, type, could = [] }: ToldJack): readonly Style[] {
  const all = stylesFor(direction, socket);
  if (type !== undefined && all.includes(type)) return [type];
  const left = all.filter((style) => could.includes(style));
  return left.length > 0 ? left : all;
}

/** The types of one direction of a jack that receives on one contact and sends on the other (common practice, no source). */
export const IN_AND_OUT_TYPES = ['tip-signal', 'ring-signal'] as const satisfies readonly Style[];

/** The contact of an in-and-out jack that carries the other direction; undefined for any other jack. */
export function otherHalf(told: ToldJack, style: Style): Contact | undefined {
  if (told.inAndOut !== true) return undefined;
  return styleEntry(style).lines.sink === 'tip' ? 'ring' : 'tip';
}

/** A two-contact type stands behind a jack with two contacts, where there is one of that size. */
function connectorFor(socket: Socket, style: Style): Connector {
  const two = CONNECTORS.find((one) => one === `ts-${diameterOf(socket)}`);
  return style.startsWith('two-contact') && two !== undefined ? two : socket;
}

/** The circuits that may stand behind a jack of a type: the one that is told, else every usual one. An output without supply is left out. */
export function circuitsOfType({ direction, circuit }: ToldJack, style: Style): readonly CircuitKind[] {
  const usual: readonly CircuitKind[] = circuitsFor(direction, style).filter((one) => one !== 'driver-off');
  return circuit !== undefined && usual.includes(circuit) ? [circuit] : usual;
}

/** Every jack that one type may stand for: its type with each circuit that may be behind it. The part is not known unless told. */
export function jacksOfType(told: ToldJack, style: Style): readonly Jack[] {
  const { direction, socket, part } = told;
  return circuitsOfType(told, style).map((circuit) =>
    makeJack(direction, connectorFor(socket, style), style, {
      circuit,
      ...(part && hasLed(circuit) ? { part } : {}),
    }),
  );
}

/** The jack that stands for a type in a drawing or a plan: with the first circuit that may be behind it. @throws when it has none. */
export function jackOfType(told: ToldJack, style: Style): Jack {
  const [jack] = jacksOfType(told, style);
  if (!jack) throw new Error(`jack: style '${style}' has no circuit for '${told.direction}'`);
  return jack;
}
