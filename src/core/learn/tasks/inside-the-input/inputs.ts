/** Inputs with their lid off, for tasks: what light each gets, how low its output comes, how much a 0 grows, and what is heard. All is solved, once for each. */
import {
  BITS_PER_FRAME,
  PLAIN_JOURNEY,
  bitSecondsOf,
  follow,
  outputFacts,
  ownHop,
  receivedBytes,
  sendOnJourney,
} from '../../../signal/index.ts';
import { collectorAmperes, outputStage } from '../../../wiring/index.ts';
import type { Jack, Part } from '../../../wiring/index.ts';
import { dinLink } from '../../links.ts';
import { remembered } from '../chance.ts';

/** Senders: the two of the standard, and one of 3.3 V that was left with the resistors of 5 V. */
const SENDERS = {
  usual: {},
  strong: { circuit: 'driver-3v3' },
  weak: { circuit: 'driver-3v3', values: { sourceOhms: 220, sinkOhms: 220 } },
} as const satisfies Readonly<Record<string, Partial<Jack>>>;
/** A sender. */
type Sender = keyof typeof SENDERS;

/** Each sender in words. */
export const SENDER_WORDS: Readonly<Record<Sender, string>> = {
  usual: 'a 5 V sender',
  strong: 'a strong 3.3 V sender',
  weak: 'a weak 3.3 V sender',
};

/** An input with its pull-up, and what is plugged into it. */
export interface Opened {
  readonly part: Part;
  readonly pullUpOhms: number;
  readonly sender: Sender;
}

/** An input with a part and a pull-up, at the 5 V sender unless another is named. */
export const opened = (part: Part, pullUpOhms: number, sender: Sender = 'usual'): Opened => ({
  part,
  pullUpOhms,
  sender,
});

/** What an opened input does. Amperes of its LED and those that its transistor can take, volts, seconds by which a 0 grows. */
interface Found {
  readonly litAmperes: number;
  readonly takesAmperes: number;
  readonly lowVolts: number;
  readonly readVolts: number;
  readonly supplyVolts: number;
  /** Undefined where nothing comes out. */
  readonly growsSeconds: number | undefined;
  readonly heard: 'right' | 'wrong' | 'nothing';
}

/** What is sent to find out: a note with short and long runs of zeros. */
const NOTE = [0x90, 0x3c, 0x40] as const;

/** What an opened input does. */
export const findOut = remembered(({ part, pullUpOhms, sender }: Opened): Found => {
  const link = dinLink(SENDERS[sender], { part, values: { loadOhms: pullUpOhms, baseOhms: 0 } });
  const { time, sending } = sendOnJourney(link, undefined, NOTE, PLAIN_JOURNEY);
  const { litAmperes, lowVolts, readVolts, supplyVolts } = outputFacts(time);
  const heard = receivedBytes(sending.reception.heard);
  const right =
    heard.map(({ value, kind }) => `${kind} ${value}`).join() === NOTE.map((one) => `byte ${one}`).join();
  const stage = outputStage(link.branches[0]!.input);
  return {
    litAmperes,
    takesAmperes: 'model' in stage ? collectorAmperes(stage, litAmperes) : NaN,
    lowVolts,
    readVolts,
    supplyVolts,
    growsSeconds: growth(ownHop(time)),
    heard: right ? 'right' : heard.length > 0 ? 'wrong' : 'nothing',
  };
});

/** By how much nine bits of light grow on their way through, seconds. */
function growth(hop: ReturnType<typeof ownHop>): number | undefined {
  const litSeconds = (BITS_PER_FRAME - 1) * bitSecondsOf({});
  const led = {
    before: true,
    edges: [
      { seconds: 0, level: false },
      { seconds: litSeconds, level: true },
    ],
  };
  const [on, off] = 'latencySeconds' in hop ? [] : follow(led, hop).edges;
  return on && off ? off.seconds - on.seconds - litSeconds : undefined;
}

/** '2.2 kilohm', as the lesson says it. */
export const sayPullUp = (ohms: number): string => (ohms < 1000 ? `${ohms} ohm` : `${ohms / 1000} kilohm`);
/** Milliamperes with two decimals. */
export const sayMilli = (amperes: number): string => `${(amperes * 1e3).toFixed(2)} mA`;
/** Microseconds without decimals. */
export const sayMicro = (seconds: number): string => `${Math.round(seconds * 1e6)} µs`;

/** What stands before the colon: 'too small'. */
export const shortly = (words: string): string => words.replace(/:.*/, '').toLowerCase();

/** By how much a 0 grows, in a sentence. */
export function growthWords(one: Opened): string {
  const { growsSeconds } = findOut(one);
  if (growsSeconds === undefined) return 'So no 0 comes out at all.';
  const half = sayMicro(bitSecondsOf({}) / 2);
  return growsSeconds > 0
    ? `A 0 grows by ${sayMicro(growsSeconds)}. Half a bit is ${half}.`
    : `A 0 does not grow. It may grow by half a bit, ${half}.`;
}
