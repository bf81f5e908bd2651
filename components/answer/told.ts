/** What the front page has been told, as one plain value: each field is what the reader pressed or typed last. */
import { IN_AND_OUT_TYPES, SOCKETS, readManual } from '../../src/core/answer/index.ts';
import type { ManualReading, Socket, ToldJack } from '../../src/core/answer/index.ts';
import { CIRCUITS, DRAWER, PARTS, stylesFor } from '../../src/core/wiring/index.ts';
import type { CircuitKind, Direction, Jack, Part, Style } from '../../src/core/wiring/index.ts';

/** What a reader says of a manual: a type by name, that one jack does both, nothing, or its own words. */
export type Says = Style | 'in-and-out' | 'nothing' | 'words';

/** One jack as far as it is told. `circuit` and `part` only where the reader knows more. */
export interface JackEntry {
  readonly socket: Socket | undefined;
  readonly says: Says | undefined;
  readonly words: string;
  readonly circuit: CircuitKind | undefined;
  readonly part: Part | undefined;
}

/** Everything that is told. `drawer` holds names of goods. */
export interface Told {
  readonly out: JackEntry;
  readonly in: JackEntry;
  readonly drawer: readonly string[];
}

/** Most characters of a manual's words that the address keeps: a page of a manual (our choice). */
export const MOST_WORDS = 2000;

/** Everything that may be said of the manual of a jack. */
export function saysFor(direction: Direction, socket: Socket): readonly Says[] {
  const types = stylesFor(direction, socket);
  return [...types, ...(types.length > 1 ? (['in-and-out'] as const) : []), 'nothing', 'words'];
}

const UNTOLD: JackEntry = {
  socket: undefined,
  says: undefined,
  words: '',
  circuit: undefined,
  part: undefined,
};
/** Nothing told yet. */
export const NOTHING_TOLD: Told = { out: UNTOLD, in: UNTOLD, drawer: [] };

/** What the manual's words mean; undefined where none are typed. */
function readingOf({ says, words }: JackEntry, direction: Direction): ManualReading | undefined {
  return says === 'words' && words.trim() !== '' ? readManual(words, direction) : undefined;
}

/** The jack for the core, or undefined while something is still to be told. A DIN jack needs no manual. */
export function toldJack(entry: JackEntry, direction: Direction): ToldJack | undefined {
  const { socket, says, circuit, part } = entry;
  if (socket === undefined) return undefined;
  const jack = { direction, socket, type: undefined, circuit, part };
  if (socket === 'din5') return { ...jack, type: 'din' };
  if (says === undefined) return undefined;
  if (says === 'nothing') return jack;
  if (says === 'in-and-out') return { ...jack, could: IN_AND_OUT_TYPES, inAndOut: true };
  if (says !== 'words') return { ...jack, type: says };
  const reading = readingOf(entry, direction);
  if (!reading) return undefined;
  const inAndOut = reading.inAndOut === true;
  if (
    reading.state === 'said' &&
    reading.type !== undefined &&
    stylesFor(direction, socket).includes(reading.type)
  )
    return { ...jack, type: reading.type, inAndOut };
  return { ...jack, could: reading.could, inAndOut };
}

/** Two jacks that are in hand, as if they had been told; undefined where one is of a kind that the page does not show. */
export function tellJacks(output: Jack, input: Jack): Told | undefined {
  const entry = ({ direction, connector, style }: Jack): JackEntry | undefined => {
    const socket = SOCKETS.find((one) => one === connector);
    return socket && stylesFor(direction, socket).includes(style)
      ? { ...UNTOLD, socket, says: socket === 'din5' ? undefined : style }
      : undefined;
  };
  const [out, into] = [entry(output), entry(input)];
  return out && into && { ...NOTHING_TOLD, out, in: into };
}

/** What is told as the end of an address, from '#' on; empty when nothing is told. */
export function writeTold({ out, in: into, drawer }: Told): string {
  const fields = new URLSearchParams();
  for (const [name, entry] of [
    ['out', out],
    ['in', into],
  ] as const)
    for (const [field, value] of Object.entries(entry))
      if (value !== undefined && value !== '') fields.set(`${name}-${field}`, value);
  if (drawer.length > 0) fields.set('drawer', drawer.join(' '));
  const text = fields.toString();
  return text === '' ? location.pathname : `#${text}`;
}

/** Who has a jack, in words. */
const WHOSE: Readonly<Record<Direction, string>> = { out: 'sender', in: 'listener' };

/** What an address says that cannot be, each with the field, what it may be and what came; none where it says nothing of this page. */
export function problemsInAddress(hash: string): readonly string[] {
  const fields = new URLSearchParams(hash.slice(1));
  const refuse = (what: string, list: readonly string[], given: string | null): readonly string[] =>
    given === null || list.includes(given)
      ? []
      : [`${what}: expected one of ${list.join(', ')}, got '${given}'`];
  const ofJack = (name: Direction): readonly string[] => {
    const given = (field: string): string | null => fields.get(`${name}-${field}`);
    const socket = SOCKETS.find((one) => one === given('socket'));
    const words = given('words') ?? '';
    return [
      ...refuse(`Jack on the ${WHOSE[name]}`, SOCKETS, given('socket')),
      ...(socket ? refuse(`Manual of the ${WHOSE[name]}`, saysFor(name, socket), given('says')) : []),
      ...refuse(`Circuit of the ${WHOSE[name]}`, CIRCUITS, given('circuit')),
      ...refuse(`Optocoupler of the ${WHOSE[name]}`, PARTS, given('part')),
      ...(words.length > MOST_WORDS ? [tooLong(words)] : []),
    ];
  };
  const things = DRAWER.map(({ id }) => id);
  const drawer = (fields.get('drawer') ?? '').split(' ').filter((one) => one !== '');
  return [...ofJack('out'), ...ofJack('in'), ...drawer.flatMap((one) => refuse('Drawer', things, one))];
}

/** What is said of more words than the address keeps. */
export function tooLong(words: string): string {
  return `Words of the manual: expected at most ${MOST_WORDS} characters, got ${words.length}`;
}

/** What an address tells; what it says that cannot be is left out. Undefined where it tells nothing. */
export function readTold(hash: string): Told | undefined {
  const fields = new URLSearchParams(hash.slice(1));
  const among = <T extends string>(list: readonly T[], name: string): T | undefined =>
    list.find((one) => one === fields.get(name));
  const entry = (name: Direction): JackEntry => {
    const socket = among(SOCKETS, `${name}-socket`);
    const types: readonly Says[] = socket === undefined ? [] : saysFor(name, socket);
    return {
      socket,
      says: among(types, `${name}-says`),
      words: (fields.get(`${name}-words`) ?? '').slice(0, MOST_WORDS),
      circuit: among(CIRCUITS, `${name}-circuit`),
      part: among(PARTS, `${name}-part`),
    };
  };
  const named = (fields.get('drawer') ?? '').split(' ');
  const told = {
    out: entry('out'),
    in: entry('in'),
    drawer: DRAWER.map(({ id }) => id).filter((id) => named.includes(id)),
  };
  return (told.out.socket ?? told.in.socket ?? told.drawer[0]) ? told : undefined;
}
