/**
 * Reading of a SPICE deck, as far as our reference decks go: resistors, diodes, capacitors, sources, one analysis.
 * Lines that go on with `+` are joined.
 * It is read here only to know what the engine must give back.
 */

/** The kinds of part that a deck may hold, by first letter. */
const LETTERS = ['r', 'd', 'c', 'v', 'i', 'b'] as const;
type Letter = (typeof LETTERS)[number];

/** One part line of a deck; name and nodes in lower case, since the engine gives them back so. */
export interface DeckPart {
  readonly letter: Letter;
  readonly name: string;
  readonly nodes: readonly [string, string];
}

/** A deck taken apart. */
interface Deck {
  readonly title: string;
  /** Every line after the title that says something, `.end` left out. */
  readonly lines: readonly string[];
  readonly parts: readonly DeckPart[];
  /** Every node but node 0. */
  readonly nodes: readonly string[];
  readonly analysis: 'op' | 'tran';
}

/**
 * Take a deck apart. The first line is the title.
 * Throws on a part that it does not know, a second part of the same name, options (the runner sets those), no or two analyses,
 * or a transient without a maximum step.
 */
export function readDeck(text: string): Deck {
  const [title = '', ...rest] = text
    .replace(/\n\+/g, ' ')
    .split('\n')
    .map((line) => line.trim());
  const lines = rest.filter((line) => line !== '' && !line.startsWith('*') && line.toLowerCase() !== '.end');
  const parts = lines.filter((line) => !line.startsWith('.')).map(readPart);
  const names = new Set(parts.map(({ name }) => name));
  if (names.size !== parts.length) throw new Error(`SPICE deck '${title}': two parts have the same name`);
  const nodes = new Set(parts.flatMap((part) => part.nodes));
  nodes.delete('0');

  const commands = lines
    .filter((line) => line.startsWith('.'))
    .map((line) => line.toLowerCase().split(/\s+/));
  const unknown = commands.find(([word]) => word !== '.model' && word !== '.op' && word !== '.tran');
  if (unknown) throw new Error(`SPICE deck '${title}': needs .model, .op or .tran, got ${unknown.join(' ')}`);
  const analyses = commands.filter(([word]) => word === '.op' || word === '.tran');
  if (analyses.length !== 1)
    throw new Error(`SPICE deck '${title}': needs one analysis, got ${analyses.length}`);
  const analysis = analyses[0]?.[0] === '.op' ? 'op' : 'tran';
  if (analysis === 'tran' && analyses[0]?.length !== 5) {
    throw new Error(
      `SPICE deck '${title}': .tran needs step, stop, start and maximum step, got ${analyses[0]?.join(' ')}`,
    );
  }
  return { title, lines, parts, nodes: [...nodes], analysis };
}

function readPart(line: string): DeckPart {
  const [name = '', from, to] = line.toLowerCase().split(/\s+/);
  const letter = LETTERS.find((known) => name.startsWith(known));
  if (letter === undefined || from === undefined || to === undefined) {
    throw new Error(`SPICE deck: needs a part (${LETTERS.join(', ')}) and two nodes, got '${line}'`);
  }
  return { letter, name, nodes: [from, to] };
}

/** The two states of an output that a link deck describes. */
export const DECK_STATES = ['idle', 'active'] as const;

/** One state of an output. */
export type DeckState = (typeof DECK_STATES)[number];

/**
 * The deck of one state: a line that begins with `*idle*` or `*active*` counts in that state alone, every other line in both.
 * A deck without such lines is the same in both states.
 */
export function deckIn(state: DeckState, text: string): string {
  return text
    .split('\n')
    .map((line) => (line.startsWith(`*${state}*`) ? line.slice(state.length + 2).trim() : line))
    .join('\n');
}

/** A current that the header of a deck derives by hand. */
interface DeckClaim {
  readonly state: DeckState;
  /** The part, in lower case. */
  readonly part: string;
  readonly amperes: number;
  /** Half a unit of the last digit written, amperes. */
  readonly tolerance: number;
}

/**
 * The hand-derived currents of a deck: its lines `* expect idle|active PART NUMBER mA`.
 * Throws when there is none, or when a line that begins so cannot be read.
 */
export function claimsOf(text: string): readonly DeckClaim[] {
  const claims = text
    .split('\n')
    .filter((line) => line.startsWith('* expect'))
    .map((line): DeckClaim => {
      const [, word, part, number] = /^\* expect (idle|active) (\S+) (-?\d+\.\d+) mA$/.exec(line) ?? [];
      const state = DECK_STATES.find((known) => known === word);
      if (state === undefined || part === undefined || number === undefined) {
        throw new Error(`SPICE deck: needs '* expect idle|active PART NUMBER mA', got '${line}'`);
      }
      const places = number.length - number.indexOf('.') - 1;
      return { state, part, amperes: Number(number) * 1e-3, tolerance: 0.5e-3 * 10 ** -places };
    });
  if (claims.length === 0)
    throw new Error(`SPICE deck '${text.split('\n')[0]}': needs a current derived by hand`);
  return claims;
}
