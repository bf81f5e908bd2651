/** What is sent round a real lead: short groups of messages, each of which puts the edges of the signal to another test. */
import { seededChance } from '../verdict/index.ts';

/** Messages that leave one after another, with what they try. A browser takes whole messages only. */
interface LoopGroup {
  readonly tries: string;
  readonly messages: readonly (readonly number[])[];
}

/** Data bytes whose bits strain a line: all 0, all 1, in turn, one alone at either end, and in pairs. */
const STRAINS = [0x00, 0x7f, 0x55, 0x2a, 0x01, 0x40, 0x33, 0x4c] as const;
/** Messages of the long run: 600 bytes, 0.2 s on the wire, below what a plain interface holds back (our choice). */
const LONG_RUN = 200;
const RUN = 24;
const CHANNEL = 15;

const controlChange = (controller: number, value: number): readonly number[] => [
  0xb0 | CHANNEL,
  controller,
  value,
];

/** A controller without a meaning of its own, so that whatever hears it by mistake does nothing. Source: MIDI 1.0 4.2.1, table III (from memory). */
const IDLE_CONTROLLERS = [102, 103, 104, 105, 106, 107, 108, 109] as const;

/** Every group of the test, the same for the same seed; no two messages that follow each other are alike, so that a lost one shows. */
export function loopGroups(seed: number): readonly LoopGroup[] {
  const chance = seededChance(seed);
  const below = (count: number): number => Math.floor(chance() * count);
  const idle = (at: number): number => IDLE_CONTROLLERS[at % IDLE_CONTROLLERS.length]!;
  const pairs = STRAINS.flatMap((one) => STRAINS.map((other) => [one, other] as const));
  return [
    {
      tries: 'single 0s and 1s in data',
      messages: STRAINS.map((value, at) => controlChange(idle(at), value)),
    },
    {
      tries: 'every strained byte after every other',
      messages: pairs.map(([low, high]) => [0xe0 | CHANNEL, low, high]),
    },
    {
      tries: 'short messages',
      messages: STRAINS.map((program) => [0xc0 | CHANNEL, program]),
    },
    {
      tries: 'a run of one kind, where an interface may leave status bytes out',
      messages: Array.from({ length: RUN }, (_, at) => controlChange(idle(at), (at * 5) % 128)),
    },
    {
      tries: 'kinds in turn',
      messages: Array.from({ length: RUN }, (_, at) =>
        at % 2 === 0 ? [0xe0 | CHANNEL, below(128), at] : controlChange(idle(at), below(128)),
      ),
    },
    {
      tries: 'a long run without a pause',
      messages: Array.from({ length: LONG_RUN }, (_, at) => controlChange(idle(at), (at + below(2)) % 128)),
    },
  ];
}

/** The message of the wiggle mode with its number, 0 to 127 and round again. */
export function wiggleMessage(number: number): readonly number[] {
  return controlChange(IDLE_CONTROLLERS[0], number % 128);
}
