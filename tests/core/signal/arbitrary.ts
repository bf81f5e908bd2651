import fc from 'fast-check';
import { CHANNEL_MODES, REAL_TIME_BYTES } from '../../../src/core/signal/messages.ts';
import type { Message, RealTimeSignal } from '../../../src/core/signal/messages.ts';
import { waveform } from './lines.ts';
import type { Waveform } from '../../../src/core/signal/waveform.ts';

// One seed for all: a run can be repeated, here and on any other machine.
fc.configureGlobal({ seed: 31250 });

const seven = fc.integer({ min: 0, max: 127 });
const fourteen = fc.integer({ min: 0, max: 16383 });
const channel = fc.integer({ min: 0, max: 15 });
const signals = Object.keys(REAL_TIME_BYTES) as RealTimeSignal[];

/** Any byte. */
export const anyByte = fc.integer({ min: 0, max: 255 });

/** Any message that can be sent, every kind and every field over its whole range. */
export const anyMessage: fc.Arbitrary<Message> = fc.oneof(
  fc.record({ kind: fc.constant('note off' as const), channel, note: seven, velocity: seven }),
  fc.record({ kind: fc.constant('note on' as const), channel, note: seven, velocity: seven }),
  fc.record({ kind: fc.constant('key pressure' as const), channel, note: seven, pressure: seven }),
  fc.record({
    kind: fc.constant('control change' as const),
    channel,
    controller: fc.integer({ min: 0, max: 119 }),
    value: seven,
  }),
  fc.record({
    kind: fc.constant('channel mode' as const),
    channel,
    mode: fc.constantFrom(...CHANNEL_MODES),
    value: seven,
  }),
  fc.record({ kind: fc.constant('program change' as const), channel, program: seven }),
  fc.record({ kind: fc.constant('channel pressure' as const), channel, pressure: seven }),
  fc.record({ kind: fc.constant('pitch bend' as const), channel, bend: fourteen }),
  fc.record({ kind: fc.constant('quarter frame' as const), value: seven }),
  fc.record({ kind: fc.constant('song position' as const), sixteenths: fourteen }),
  fc.record({ kind: fc.constant('song select' as const), song: seven }),
  fc.constant<Message>({ kind: 'tune request' }),
  fc.record({ kind: fc.constant('exclusive' as const), data: fc.array(seven, { maxLength: 12 }) }),
  fc.record({ kind: fc.constant('real-time' as const), signal: fc.constantFrom(...signals) }),
);

/** Edges within a few bytes' time, as dense as a sample or far apart, in any order. */
export const anyWave: fc.Arbitrary<Waveform> = fc
  .tuple(
    fc.array(
      fc.record({
        seconds: fc.oneof(
          fc.double({ min: -1e-3, max: 5e-3, noNaN: true }),
          fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        ),
        level: fc.boolean(),
      }),
      { maxLength: 200 },
    ),
    fc.boolean(),
  )
  .map(([edges, before]) => waveform(edges, before));
