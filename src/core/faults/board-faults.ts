/** Everything that may be wrong with a board of the fault bench, and what it is called. */

/** Boards of the bench: one pedal, or two in a chain. */
export const BENCH_BOARDS = ['link', 'chain'] as const;

/** One of the boards of the bench. */
export type BenchBoard = (typeof BENCH_BOARDS)[number];

/** Everything that may be wrong. */
export const BOARD_FAULTS = [
  'open',
  'short',
  'swapped',
  'mirrored',
  'ts-lead',
  'cold-joint',
  'wrong-style',
  'outlet-set-wrong',
  'out-into-out',
  'dead-thru',
  'soft-thru-off',
  'supply-off',
  'wrong-channel',
  'program-off-by-one',
  'bank-missing',
  'message-filtered',
  'not-listening',
  'bad-joint',
  'half-in',
  'odd-jack',
  'output-part',
  'input-part',
  'supply-low',
] as const;

/** What one fault is. */
export type BoardFaultKind = (typeof BOARD_FAULTS)[number];

/** Where a fault can be: the sender, a lead (1 is nearest the sender), or a pedal. */
export type BoardPlace = 'sender' | 'lead 1' | 'pedal 1' | 'lead 2' | 'pedal 2';

/**
 * One fault in one place; `variant` tells ways that have the same name apart: which conductor at which plug, which contacts,
 * which channel. What each number stands for is laid down where the fault is put in.
 */
export interface BoardFault {
  readonly kind: BoardFaultKind;
  readonly place: BoardPlace;
  readonly variant: number;
}

/** Every fault that a board may have. */
export function boardFaults(board: BenchBoard): readonly BoardFault[] {
  const one = (kind: BoardFaultKind, place: BoardPlace, variants = 1): readonly BoardFault[] =>
    Array.from({ length: variants }, (_, variant) => ({ kind, place, variant }));
  const pedals = board === 'link' ? (['pedal 1'] as const) : (['pedal 1', 'pedal 2'] as const);
  const leads = board === 'link' ? (['lead 1'] as const) : (['lead 1', 'lead 2'] as const);
  return [
    ...leads.flatMap((place) => [
      ...one('open', place, 4),
      ...one('short', place, 6),
      ...one('swapped', place, 3),
      ...one('ts-lead', place, board === 'link' ? 3 : 1),
      ...one('cold-joint', place, 4),
      ...one('bad-joint', place, 8),
      ...one('half-in', place, board === 'link' ? 2 : 1),
      ...(board === 'chain' ? one('mirrored', place) : []),
    ]),
    ...one('wrong-style', board === 'link' ? 'pedal 1' : 'pedal 2'),
    ...one('odd-jack', board === 'link' ? 'pedal 1' : 'pedal 2', 3),
    ...one('outlet-set-wrong', 'sender', 5),
    ...one('output-part', 'sender', 4),
    ...(board === 'chain' ? [...one('dead-thru', 'pedal 1'), ...one('soft-thru-off', 'pedal 1')] : []),
    ...one('supply-off', 'sender'),
    ...one('supply-low', 'sender', 2),
    ...pedals.flatMap((place) => [
      ...one('out-into-out', place),
      ...one('supply-off', place),
      ...one('wrong-channel', place, WRONG_CHANNELS.length),
      ...one('not-listening', place),
      ...one('input-part', place, 3),
    ]),
    ...one('program-off-by-one', 'sender', 2),
    ...one('bank-missing', 'sender'),
    ...one('message-filtered', 'sender'),
  ];
}

/** The channel that the sender uses for every pedal. */
export const SENDER_CHANNEL = 1;

/** Channels that a pedal may be set to by mistake: next to the right one, one button or knob step away, and the last. Invented. */
export const WRONG_CHANNELS = [2, 3, 4, 9, 10, 16] as const;

/** Kinds that the lesson on a silent board leaves to the bench: they take a meter, or an eye for a plug. */
const BENCH_ONLY: readonly BoardFaultKind[] = [
  'bad-joint',
  'half-in',
  'odd-jack',
  'output-part',
  'input-part',
  'supply-low',
];

/** Whether lessons and tasks speak of a fault: the plain way of each plain kind, and either line where it is of one line. */
export function isTaught({ kind, variant }: BoardFault): boolean {
  return !BENCH_ONLY.includes(kind) && variant < (kind === 'open' || kind === 'cold-joint' ? 2 : 1);
}

const KIND_WORDS: Readonly<Record<BoardFaultKind, string>> = {
  open: 'a conductor is open',
  short: 'two conductors touch',
  swapped: 'two wires are swapped',
  mirrored: 'the DIN plug is wired mirrored',
  'ts-lead': 'it is a TS lead where a TRS lead is needed',
  'cold-joint': 'a joint is cold',
  'wrong-style': 'its jack is Type B, not Type A',
  'outlet-set-wrong': 'the output is set to the wrong type',
  'out-into-out': 'the lead is in its OUT, not in its IN',
  'dead-thru': 'its THRU is dead',
  'soft-thru-off': 'its software THRU is switched off',
  'supply-off': 'its supply is off',
  'wrong-channel': 'it listens on another channel',
  'program-off-by-one': 'it counts programs from another number',
  'bank-missing': 'it sends no bank before the program',
  'message-filtered': 'it filters program changes out',
  'not-listening': 'it is set not to listen',
  'bad-joint': 'a joint has too many ohms',
  'half-in': 'a plug is not pushed home',
  'odd-jack': 'its jack is neither Type A nor Type B',
  'output-part': 'a resistor in its output is wrong',
  'input-part': 'a part in its input is wrong',
  'supply-low': 'its output has too few volts',
};

/** What is wrong, in words, wherever it is: 'a conductor is open'. */
export function sayFaultKind(kind: BoardFaultKind): string {
  return KIND_WORDS[kind];
}

/** What a fault is called when it is named: kind and place. Variants share a name. */
export function faultName({ kind, place }: Pick<BoardFault, 'kind' | 'place'>): string {
  return `${place}: ${kind}`;
}

/** A fault in words: 'lead 1: a conductor is open'. */
export function sayBoardFault({ kind, place }: Pick<BoardFault, 'kind' | 'place'>): string {
  return `${place}: ${KIND_WORDS[kind]}`;
}
