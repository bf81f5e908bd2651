import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { delayEdges, throughChain } from '../../../src/core/signal/hop.ts';
import type { Hop } from '../../../src/core/signal/hop.ts';
import { resend } from '../../../src/core/signal/software-thru.ts';
import { receive } from '../../../src/core/signal/receiver.ts';
import { pulsesOf } from '../../../src/core/signal/waveform.ts';
import { waveform } from './lines.ts';
import { anyByte, anyWave } from './arbitrary.ts';

const US = 1e-6;
const line = (...times: readonly number[]) =>
  waveform(times.map((us, index) => ({ seconds: us * US, level: index % 2 === 1 })));
const timesOf = (wave: ReturnType<typeof line>): readonly number[] =>
  wave.edges.map(({ seconds }) => Math.round(seconds / US / 1e-3) * 1e-3);

const delay = fc.double({ min: 0, max: 20e-6, noNaN: true });

describe('an optocoupler as a hop', () => {
  it('stretches the 0s and shrinks the 1s by the difference of its delays', () => {
    // 2 us to on, 7 us to off: falls move by 2, rises by 7. Low 0 to 32 becomes 2 to 39, high 32 to 64 becomes 39 to 66.
    const out = delayEdges(line(0, 32, 64, 96), { toOnSeconds: 2 * US, toOffSeconds: 7 * US });
    expect(timesOf(out)).toEqual([2, 39, 66, 103]);
  });

  it('loses a 1 no longer than the difference, and keeps one just longer', () => {
    const delays = { toOnSeconds: 2 * US, toOffSeconds: 7 * US };
    expect(timesOf(delayEdges(line(0, 32, 36.9, 64), delays))).toEqual([2, 71]);
    expect(timesOf(delayEdges(line(0, 32, 37.1, 64), delays))).toHaveLength(4);
  });

  it('loses a short 0 when it is slower to on than to off', () => {
    const delays = { toOnSeconds: 7 * US, toOffSeconds: 2 * US };
    expect(delayEdges(line(0, 4.9), delays).edges).toEqual([]);
    expect(delayEdges(line(0, 5.1), delays).edges).toHaveLength(2);
  });

  it('puts out real changes only, in order, for any line and any delays', () => {
    fc.assert(
      fc.property(anyWave, delay, delay, (wave, toOnSeconds, toOffSeconds) => {
        const out = delayEdges(wave, { toOnSeconds, toOffSeconds });
        expect(waveform(out.edges, out.before)).toEqual(out);
      }),
    );
  });

  it('shifts a line and nothing else when both delays are equal', () => {
    // Times in whole sixteenths of a second add without rounding, so the shift can be compared exactly.
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: -1000, max: 1000 })), fc.nat(1000), (places, later) => {
        const at = (shift: number) =>
          waveform(
            places
              .toSorted((one, other) => one - other)
              .map((place, index) => ({ seconds: (place + shift) / 16, level: index % 2 === 1 })),
          );
        expect(delayEdges(at(0), { toOnSeconds: later / 16, toOffSeconds: later / 16 })).toEqual(at(later));
      }),
    );
  });

  it('refuses a negative delay', () => {
    expect(() => delayEdges(line(), { toOnSeconds: -1, toOffSeconds: 0 })).toThrow(
      'stage: delay to on must be 0 s or more, got -1 s',
    );
  });
});

describe('a chain of hops', () => {
  const thru: Hop = { kind: 'hardware thru', toOnSeconds: 1 * US, toOffSeconds: 3 * US };

  it('adds the difference once a hop to every 0', () => {
    // Start bit of FF: 32 us at the sender, 2 us more after each of four hops.
    const stages = throughChain(sendBytes([0xff]).wave, [thru, thru, thru, thru]);
    const widths = stages.map(({ output }) => {
      const low = pulsesOf(output).find(({ level }) => !level);
      return low ? (low.toSeconds - low.fromSeconds) / US : 0;
    });
    [34, 36, 38, 40].forEach((us, index) => expect(widths[index]).toBeCloseTo(us, 6));
  });

  it('passes each output to the next LED through the link it is given', () => {
    const seen: number[] = [];
    const stages = throughChain(line(0, 32), [thru, thru], (driven, index) => {
      seen.push(index);
      return delayEdges(driven, { toOnSeconds: 10 * US, toOffSeconds: 10 * US });
    });
    expect(seen).toEqual([0, 1]);
    expect(timesOf(stages[1]?.led ?? line())).toEqual([21, 55]);
    expect(timesOf(stages[1]?.output ?? line())).toEqual([22, 58]);
  });
});

describe('a software thru', () => {
  const thru = {
    kind: 'software thru',
    toOnSeconds: 1 * US,
    toOffSeconds: 3 * US,
    latencySeconds: 100 * US,
  } as const;

  it('adds a whole byte and its latency', () => {
    // Byte sent at 0; on at 1 us, seen by the sample at 2 us; byte over 320 us later; copy 100 us after that.
    const copy = resend(delayEdges(sendBytes([0xc0]).wave, thru), thru);
    expect((copy.bytes[0]?.startSeconds ?? 0) / US).toBeCloseTo(422, 6);
  });

  it('passes any bytes on unchanged and never sooner than a byte by its own clock', () => {
    fc.assert(
      fc.property(fc.array(anyByte, { minLength: 1, maxLength: 12 }), (bytes) => {
        const sent = sendBytes(bytes);
        const copy = resend(delayEdges(sent.wave, thru), thru);
        expect(copy.bytes.map(({ value }) => value)).toEqual(bytes);
        copy.bytes.forEach(({ startSeconds }, index) => {
          expect(startSeconds - (sent.bytes[index]?.startSeconds ?? 0)).toBeGreaterThanOrEqual(320 * US);
        });
        const last = throughChain(sent.wave, [thru, thru, thru]).at(-1)?.output ?? sent.wave;
        expect(receive(last).bytes).toEqual(bytes);
      }),
    );
  });

  it('keeps order when it sends more slowly than it receives', () => {
    const slow = { ...thru, sender: { clockError: -0.05 } };
    const copy = resend(sendBytes([1, 2, 3]).wave, slow);
    expect(copy.bytes.map(({ value }) => value)).toEqual([1, 2, 3]);
  });

  it('does not pass on a byte without its stop bit', () => {
    expect(resend(line(0, 32, 64, 340), thru).bytes).toEqual([]);
  });

  it('refuses a negative latency', () => {
    expect(() => resend(line(), { ...thru, latencySeconds: -1 })).toThrow(
      'software thru: latency must be 0 s or more, got -1 s',
    );
  });
});
