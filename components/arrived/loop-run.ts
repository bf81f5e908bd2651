/** Sending groups round a lead, one after another, and hearing what comes back. */
import { judgeGroup, loopGroups } from '../../src/core/arrived/index.ts';
import type { GroupOutcome, TimedMessage } from '../../src/core/arrived/index.ts';
import { secondsNow } from './midi.svelte.ts';
import type { MidiInterfaces } from './midi.svelte.ts';

/** Between which jacks a test runs. */
interface Jacks {
  readonly output: string;
  readonly input: string;
}

/** Silence after which no more is to be expected, and the longest that a group is waited for, seconds (our choice). */
const [SILENCE_SECONDS, MOST_SECONDS] = [0.3, 5];
/** The first message of a group leaves so much later than it is handed over, so that all of them are in time, seconds. */
const AHEAD_SECONDS = 0.01;
const BYTE_SECONDS = 320e-6;
/** First byte of real time: the test sends none, so that it answers nothing. */
const FIRST_REAL_TIME = 0xf8;
/** How often is looked whether all came, milliseconds. */
const LOOK_EVERY = 15;

/** What a run is told while it goes on. */
interface Watch {
  /** Groups that are done, of how many. */
  readonly ondone: (done: number, of: number) => void;
  /** Whether to go on: false once it was stopped, or an interface is gone. */
  readonly goOn: () => boolean;
}

/** Done when `wanted` messages have come, nothing came for a while after the last was due, or it has taken too long. */
function answered(
  came: () => { readonly count: number; readonly last: number },
  due: number,
  wanted: number,
) {
  return new Promise<void>((done) => {
    const look = (): void => {
      const { count, last } = came();
      const now = secondsNow();
      const silent = now - Math.max(last, due) > SILENCE_SECONDS;
      if (count >= wanted || silent || now - due > MOST_SECONDS) done();
      else setTimeout(look, LOOK_EVERY);
    };
    look();
  });
}

/** Send one group at the speed of the wire, and wait for what comes back. */
async function sendGroup(
  midi: MidiInterfaces,
  { output, input }: Jacks,
  messages: readonly (readonly number[])[],
): Promise<GroupOutcome> {
  const sent: TimedMessage[] = [];
  const got: TimedMessage[] = [];
  const came = { count: 0, last: 0 };
  const stop = midi.listen(input, (message) => {
    got.push(message);
    if ((message.bytes[0] ?? 0) >= FIRST_REAL_TIME) return;
    came.count += 1;
    came.last = secondsNow();
  });
  let seconds = secondsNow() + AHEAD_SECONDS;
  for (const bytes of messages) {
    sent.push({ bytes, seconds });
    midi.send(output, bytes, seconds);
    seconds += bytes.length * BYTE_SECONDS;
  }
  await answered(() => came, seconds, messages.length);
  stop();
  return judgeGroup(sent, got);
}

/** Run every group of the test; what was done until it was stopped. */
export async function runLoop(
  midi: MidiInterfaces,
  jacks: Jacks,
  seed: number,
  { ondone, goOn }: Watch,
): Promise<readonly GroupOutcome[]> {
  const groups = loopGroups(seed);
  const outcomes: GroupOutcome[] = [];
  for (const { messages } of groups) {
    if (!goOn()) break;
    outcomes.push(await sendGroup(midi, jacks, messages));
    ondone(outcomes.length, groups.length);
  }
  return outcomes;
}
