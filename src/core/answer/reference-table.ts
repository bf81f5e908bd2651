/** The lead between every two types, for a printed card: contact by contact, with the name to ask for. */
import type { Conductor, Direction, Style } from '../wiring/index.ts';
import { STYLES, circuitsFor } from '../wiring/index.ts';
import { talkMemory } from './grade.ts';
import type { TalkGrade } from './grade.ts';
import { sayThrough } from './say.ts';
import { madeFor, willTheyTalk } from './talk.ts';
import type { Socket, ToldJack } from './told.ts';

/** One cell: the plainest lead between two types, and what a shop calls it or two things that make it. */
interface ReferenceCell {
  readonly outputType: Style;
  readonly inputType: Style;
  /** Undefined where no passive lead can. */
  readonly conductors: readonly Conductor[] | undefined;
  readonly grade: TalkGrade;
  /** What to ask a shop for, between jacks of the usual size; undefined where it has to be made. */
  readonly ask: string | undefined;
}

/** The socket that stands for a type on the card: DIN, or the small phone jack. */
function usualSocket(style: Style): Socket {
  return style === 'din' ? 'din5' : 'trs-3.5';
}

function usualJack(direction: Direction, style: Style): ToldJack {
  return { direction, socket: usualSocket(style), type: style };
}

/** The types that an output, or an input, may have. */
export function typesOf(direction: Direction): readonly Style[] {
  return STYLES.filter((style) => circuitsFor(direction, style).length > 0);
}

/** Every pair of types, output by output, solved. */
export function referenceTable(memory = talkMemory()): readonly ReferenceCell[] {
  return typesOf('out').flatMap((outputType) =>
    typesOf('in').map((inputType): ReferenceCell => {
      const output = usualJack('out', outputType);
      const input = usualJack('in', inputType);
      const made = madeFor({ output, input, outputType, inputType }, memory);
      const [pair] = willTheyTalk(output, input, [], memory).pairs;
      return {
        outputType,
        inputType,
        conductors: made?.lead.conductors,
        grade: made?.grade ?? 'nothing',
        ask: pair?.ready && sayThrough(pair.ready, 'a'),
      };
    }),
  );
}

/** A conductor as short as a card wants it: '4-T' for pin 4 to tip. */
export function shortConductor({ from, to }: Conductor): string {
  const short = (contact: Conductor['from']): string =>
    /^\d$/.test(contact) ? contact : contact.charAt(0).toUpperCase();
  return `${short(from)}-${short(to)}`;
}

/** A type as short as a card wants it; a card says below what the shortest names mean. */
export function shortType(style: Style): string {
  switch (style) {
    case 'din':
      return 'DIN';
    case 'type-a':
      return 'A';
    case 'type-b':
      return 'B';
    case 'two-contact':
      return 'TS 4';
    case 'two-contact-turned':
      return 'TS 5';
    case 'both-ways':
      return 'A+B';
    case 'ring-signal':
      return 'ring';
    case 'tip-signal':
      return 'tip';
  }
}
