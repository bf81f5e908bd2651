/** What the widget of an opened input sends: a sender, an input and the bytes through one or more of them. */
import {
  PLAIN_JOURNEY,
  outputFacts,
  receivedBytes,
  sayMicroseconds,
  sayReceived,
} from '../../src/core/signal/index.ts';
import { sendOnJourney } from '../../src/core/signal/index.ts';
import type { Sent } from '../../src/core/signal/index.ts';
import { sayAmperesFinely, sayVolts } from '../../src/core/verdict/index.ts';
import { STRAIGHT_DIN, makeJack, makeLead, valuesOf } from '../../src/core/wiring/index.ts';
import type { Jack, Part } from '../../src/core/wiring/index.ts';

/** The senders to choose from: the two of the standard, and one of 3.3 V that was left with the resistors of 5 V. */
export const SENDERS = ['5 V', '3.3 V', '3.3 V, weak'] as const;
/** A sender. */
type Sender = (typeof SENDERS)[number];

/** Each sender in words. */
export const SENDER_WORDS: Readonly<Record<Sender, string>> = {
  '5 V': '5 V, 220 and 220 ohm',
  '3.3 V': '3.3 V, 33 and 10 ohm',
  '3.3 V, weak': '3.3 V, left with 220 and 220 ohm',
};

const OUTPUTS: Readonly<Record<Sender, Partial<Jack>>> = {
  '5 V': {},
  '3.3 V': { circuit: 'driver-3v3' },
  '3.3 V, weak': { circuit: 'driver-3v3', values: { sourceOhms: 220, sinkOhms: 220 } },
};

/** Pull-ups to choose from, ohms: a row of usual values. */
export const PULL_UPS = [220, 270, 360, 470, 680, 1000, 1500, 2200, 2700, 3300, 4700, 6800, 10e3] as const;
/** Base resistors to choose from, ohms; 0 for none. */
export const BASE_RESISTORS = [0, 4700, 10e3, 47e3, 470e3] as const;
/** Parts to choose from: one of each kind. */
export const INSIDE_PARTS = [
  '6N138',
  '4N35',
  '4N25',
  'CNY17-1',
  'CNY17-3',
  'PC817',
  '6N136',
  'H11L1',
] as const satisfies readonly Part[];
/** Links in a row to choose from. */
export const STAGES = [1, 2, 3, 4] as const;

/** An input that is opened, with what is sent to it. */
export interface Opened {
  readonly part: (typeof INSIDE_PARTS)[number];
  readonly pullUpOhms: number;
  readonly baseOhms: number;
  readonly sender: Sender;
  readonly stages: number;
}

/** Whether a part has a pin for a base resistor. */
export function takesBase(part: Part): boolean {
  return valuesOf('receiver-isolated', part).some(({ name }) => name === 'baseOhms');
}

/** Send bytes through inputs like this one, each but the last with a THRU. */
export function sendInside(
  { part, pullUpOhms, baseOhms, sender, stages }: Opened,
  bytes: readonly number[],
): Sent {
  const values = { loadOhms: pullUpOhms, ...(takesBase(part) ? { baseOhms } : {}) };
  const link = {
    output: makeJack('out', 'din5', 'din', OUTPUTS[sender]),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', { part, values }),
        leads: [makeLead('din5', 'din5', STRAIGHT_DIN)],
      },
    ],
  };
  return sendOnJourney(link, undefined, bytes, { ...PLAIN_JOURNEY, hops: stages });
}

/** What is heard, and what the output does, in words. */
export function sayInside({ time, sending }: Sent): { readonly heard: string; readonly output: string } {
  const { litAmperes, lowVolts, riseSeconds, fallSeconds } = outputFacts(time);
  const edges =
    riseSeconds > 0
      ? `, ${sayMicroseconds(fallSeconds)} on its way down and ${sayMicroseconds(riseSeconds)} on its way up`
      : ', with edges of its own';
  return {
    heard: sayReceived(receivedBytes(sending.reception.heard)),
    output: `${sayAmperesFinely(litAmperes)} light the LED. The output comes down to ${sayVolts(lowVolts)}${edges}.`,
  };
}
