/**
 * A browser's MIDI interface that is not there: an output and an input whose wire is the workbook's own simulation of a lead. It goes by
 * the Web MIDI API (W3C working draft): whole messages only, no running status, state changes told, time stamps by the page's clock.
 */
import type { Page } from '@playwright/test';
import { allCandidates, foretell } from '../../src/core/arrived/fit.ts';
import type { Cause } from '../../src/core/arrived/causes.ts';
import { shownAs } from '../../src/core/arrived/log.ts';
import { decode } from '../../src/core/signal/decode.ts';
import { encode } from '../../src/core/signal/encode.ts';
import { sendBytes } from '../../src/core/signal/frames.ts';
import { seededChance } from '../../src/core/verdict/chance.ts';

/** What stands between output and input, and what the reader or the world does. */
export interface StandIn {
  /** A cause of the list with its amount; a good lead when left out, no lead at all for 'open'. */
  readonly wire?: readonly [cause: Cause, amount: number] | 'open';
  readonly refuses?: boolean;
  /** Somebody else's clock on the same input. */
  readonly clock?: boolean;
}

declare global {
  interface Window {
    /** The wire: messages in, what each of them arrives as. */
    roundTheLead?: (messages: number[][]) => Promise<number[][][]>;
    /** Pull the interface out. */
    pullOut?: () => void;
    /** Let the input hear a message, as a controller would send it. */
    hearMessage?: (bytes: number[]) => void;
  }
}

/** The wire of a stand-in: what the interface at the far end makes of a message. */
export function wireOf({ wire }: StandIn): (bytes: readonly number[]) => readonly (readonly number[])[] {
  const chance = seededChance(7);
  return (bytes) => {
    if (wire === 'open') return [];
    if (wire === undefined) return [bytes];
    const candidate = allCandidates().find(
      ({ cause, amount }) => cause === wire[0] && Math.abs(amount - wire[1]) < 1e-9,
    );
    if (!candidate) throw new Error(`stand-in: '${wire[0]}' has no candidate of ${wire[1]}`);
    const line = sendBytes(bytes).wave;
    const read =
      candidate.kind === 'chance' ? candidate.run(line, bytes, chance) : foretell(candidate, bytes, line);
    // An interface hands on whole messages and drops bytes without a stop bit.
    return decode(shownAs('good bytes only', read)).flatMap((event) =>
      event.kind === 'message' ? [encode([event.message])] : [],
    );
  };
}

/** Runs in the page before it loads. */
function install({ refuses, clock }: { refuses: boolean; clock: boolean }): void {
  interface Fake {
    readonly id: string;
    readonly name: string;
    state: 'connected' | 'disconnected';
    onmidimessage: ((event: { data: Uint8Array; timeStamp: number }) => void) | null;
    send?: (data: number[], timestamp?: number) => void;
  }
  const queue: { bytes: number[]; at: number }[] = [];
  const line: number[][][] = [];
  const input: Fake = {
    id: 'in-1',
    name: 'Invented interface, input',
    state: 'connected',
    onmidimessage: null,
  };
  const hear = (bytes: number[]): void => {
    if (input.state === 'connected')
      input.onmidimessage?.({ data: new Uint8Array(bytes), timeStamp: performance.now() });
  };
  const output: Fake = {
    id: 'out-1',
    name: 'Invented interface, output',
    state: 'connected',
    onmidimessage: null,
    send: (data, timestamp = 0) => {
      if ((data[0] ?? 0) < 0x80) throw new TypeError('send: running status is not allowed');
      queue.push({ bytes: [...data], at: timestamp });
      if (queue.length === 1) queueMicrotask(() => void leave());
    },
  };
  // The wire is worked out by another program: until it has answered the page's clock and timers stand still, however busy the computer is.
  const clockNow = performance.now.bind(performance);
  let onTheWire = 0;
  let [stoodFor, standsSince] = [0, 0];
  performance.now = () => (onTheWire > 0 ? standsSince : clockNow()) - stoodFor;
  const timer = window.setTimeout.bind(window);
  const held = (work: () => void): void => {
    if (onTheWire > 0) timer(held, 1, work);
    else work();
  };
  window.setTimeout = ((work: () => void, wait?: number) => timer(held, wait, work)) as typeof setTimeout;
  const every = window.setInterval.bind(window);
  window.setInterval = ((work: () => void, wait?: number) =>
    every(() => onTheWire === 0 && work(), wait)) as typeof setInterval;
  async function roundTheLead(messages: number[][]): Promise<number[][][]> {
    if (onTheWire === 0) standsSince = clockNow();
    onTheWire += 1;
    const arriving = await window.roundTheLead?.(messages);
    onTheWire -= 1;
    if (onTheWire === 0) stoodFor += clockNow() - standsSince;
    return arriving ?? [];
  }
  /** All that was handed over in one go leaves together, each message at its moment at the earliest. */
  async function leave(): Promise<void> {
    const going = queue.splice(0);
    const arriving = await roundTheLead(going.map(({ bytes }) => bytes));
    for (const [place, messages] of arriving.entries()) {
      line.push(messages);
      // Whichever comes first hands on what left first: on a line nothing overtakes.
      const arrive = (): void => line.shift()?.forEach(hear);
      const wait = (going[place]?.at ?? 0) - performance.now();
      if (wait > 0) setTimeout(arrive, wait);
      else arrive();
    }
  }
  const access = {
    inputs: new Map([[input.id, input]]),
    outputs: new Map([[output.id, output]]),
    onstatechange: null as (() => void) | null,
  };
  const asked = (): Promise<unknown> =>
    refuses ? Promise.reject(new DOMException('no', 'NotAllowedError')) : Promise.resolve(access);
  Object.defineProperty(navigator, 'requestMIDIAccess', { value: asked, configurable: true });
  window.hearMessage = hear;
  window.pullOut = () => {
    input.state = 'disconnected';
    output.state = 'disconnected';
    access.onstatechange?.();
  };
  if (clock) setInterval(() => hear([0xf8]), 20);
}

/** Give a page the stand-in; call it before the page is opened. */
export async function standIn(page: Page, what: StandIn = {}): Promise<void> {
  const wire = wireOf(what);
  await page.exposeFunction('roundTheLead', (messages: number[][]) => messages.map(wire));
  await page.addInitScript(install, { refuses: what.refuses === true, clock: what.clock === true });
}
