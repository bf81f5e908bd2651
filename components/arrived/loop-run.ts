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

/** The longest that a group is waited for, seconds (our choice). */
const MOST_SECONDS = 5;
/** The first message of a group leaves so much later than it is handed over, so that all of them are in time, seconds. */
const AHEAD_SECONDS = 0.01;
const BYTE_SECONDS = 320e-6;
/** First byte of real time: the test sends none, so that it answers nothing. */
const FIRST_REAL_TIME = 0xf8;
/** How often is looked whether all came, milliseconds. */
const LOOK_EVERY = 15;
/**
 * Looks in a row that find nothing new, after which no more is to be expected (our choice): 0.3 s. Looks are counted, not seconds,
 * since a page that is kept busy hears late what came in time.
 */
const SILENT_LOOKS = 20;

/** What a run is told while it goes on. */
interface Watch {
  /** Groups that are done, of how many. */
  readonly ondone: (done: number, of: number) => void;
  /** Whether to go on: false once it was stopped, or an interface is gone. */
  readonly goOn: () => boolean;
}

/** Done when `wanted` messages have come, nothing came for a while after the last was due, or it has taken too long. */
function answered(came: () => number, due: number, wanted: number) {
  return new Promise<void>((done) => {
    let [known, silent] = [0, 0];
    const look = (): void => {
      const count = came();
      const now = secondsNow();
      silent = count > known || now < due ? 0 : silent + 1;
      known = count;
      if (count >= wanted || silent > SILENT_LOOKS || now - due > MOST_SECONDS) done();
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
  let came = 0;
  const stop = midi.listen(input, (message) => {
    got.push(message);
    if ((message.bytes[0] ?? 0) >= FIRST_REAL_TIME) return;
    came += 1;
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
