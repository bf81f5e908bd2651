/** Tasks on kinds of THRU: what each does to bits, and what it costs in time. */
import { LATENCY_SECONDS } from '../../../wiring/index.ts';
import { BITS_PER_FRAME, bitSecondsOf } from '../../../signal/index.ts';
import { ROUNDING, aNumber, inRows, plainNumber, whichOf } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Milliseconds in a second. */
const MILLI = 1e3;

/** What becomes of bits in each kind of box, and how it may be told. */
const BOXES = [
  {
    kind: 'hardware',
    told: ['Its THRU repeats each edge as it comes.', 'Behind its input a gate drives the THRU straight on.'],
    says: 'The shift of the link before goes on, and its own is added.',
  },
  {
    kind: 'software',
    told: [
      'It reads each byte whole and sends it again.',
      'A processor takes the bytes in and sends them out again.',
    ],
    says: 'Edges come out fresh, at least a byte later.',
  },
  {
    kind: 'split',
    told: [
      'Two inputs hang on one output by a plain Y lead.',
      'One lead goes to two boxes, with nothing but wire in it.',
    ],
    says: 'Both hear the same edges, and share one current.',
  },
] as const;

function kindOfThru(level: Level, chance: Chance): Drawn {
  const cases = BOXES.flatMap((box) => box.told.map((words) => ({ box, words })));
  const { box, words } = chance.turn(level === 3 ? cases.toReversed() : cases);
  return {
    ask: `${words} What becomes of the bits?`,
    ...whichOf<(typeof BOXES)[number]>(
      BOXES,
      box,
      ({ says }) => says,
      ({ kind, told }) => [
        `takes it for ${kind}`,
        `That would be so where ${told[0].charAt(0).toLowerCase()}${told[0].slice(1)}`,
      ],
      chance,
    ),
    hints: [
      'Ask what the box does with an edge: pass it on, or make a new one?',
      'Who waits for a whole byte, and who does not?',
      'Wire alone repeats nothing: it shares.',
    ],
    steps: [words, box.says],
  };
}

const LATER_BY_SAID = {
  'byte forgotten': 'Before it can send, each box has to have the whole byte.',
  'waiting forgotten': 'Each box waits a while before it sends: that counts too.',
  'one box': 'That is one box. Each of them does it again.',
};

function laterBy(level: Level, chance: Chance): Drawn {
  const boxes = chance.turn([1, 2, 3, 4, 5]);
  const latency = chance.pick(level === 3 ? [0.2, 0.5, 2, 1.5] : [LATENCY_SECONDS * MILLI, 0.5, 2]);
  const byte = BITS_PER_FRAME * bitSecondsOf({}) * MILLI;
  return {
    ask: `A byte goes through ${boxes} ${boxes === 1 ? 'box' : 'boxes'} with a software THRU. How much later does it leave the last one, in milliseconds, than by a plain wire?`,
    shows: inRows([
      ['each reads the whole byte', `${plainNumber(byte)} ms`],
      ['and then waits', `${plainNumber(latency)} ms`],
    ]),
    ...aNumber(boxes * (byte + latency), 'ms', ROUNDING, LATER_BY_SAID, {
      'byte forgotten': boxes * latency,
      'waiting forgotten': boxes * byte,
      'one box': byte + latency,
    }),
    hints: [
      'A software THRU reads first and sends then.',
      'Add up what one box takes: reading, then waiting.',
      'Take it as often as there are boxes.',
    ],
    steps: [
      `One box: ${plainNumber(byte)} ms and ${plainNumber(latency)} ms make ${plainNumber(byte + latency)} ms.`,
      `${boxes} of them: ${plainNumber(boxes * (byte + latency))} ms.`,
    ],
  };
}

/** The tasks on kinds of THRU. */
export const THRU_TASKS: readonly TaskKind[] = [
  { kind: 'kind-of-thru', title: 'Which kind of THRU?', draw: kindOfThru },
  { kind: 'later-by', title: 'How much later?', draw: laterBy },
];
