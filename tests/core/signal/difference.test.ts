import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareBytes, differenceInWords } from '../../../src/core/signal/difference.ts';
import type { ByteOutcome } from '../../../src/core/signal/difference.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import type { FrameOptions } from '../../../src/core/signal/frames.ts';
import { throughChain } from '../../../src/core/signal/hop.ts';
import type { Hop } from '../../../src/core/signal/hop.ts';
import { receive } from '../../../src/core/signal/receiver.ts';
import { IDLE_LINE, invertWave, waveform } from './lines.ts';
import type { Waveform } from '../../../src/core/signal/waveform.ts';
import { anyByte, anyWave } from './arbitrary.ts';

const US = 1e-6;

function journey(
  values: readonly number[],
  change: (wave: Waveform) => Waveform,
  options: FrameOptions = {},
): readonly ByteOutcome[] {
  const sent = sendBytes(values, options);
  const arrived = change(sent.wave);
  return compareBytes({ sent, arrived, heard: receive(arrived).heard });
}

const through =
  (...hops: readonly Hop[]) =>
  (wave: Waveform): Waveform =>
    throughChain(wave, hops).at(-1)?.output ?? wave;
const hop = (toOn: number, toOff: number): Hop => ({
  kind: 'hardware thru',
  toOnSeconds: toOn * US,
  toOffSeconds: toOff * US,
});

describe('comparing bytes sent and received', () => {
  it('finds every byte of a good line the same', () => {
    const outcomes = journey([0xc0, 0x05], through(hop(1, 2)));
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['same', 'same']);
    expect(differenceInWords(outcomes)).toBe('2 bytes sent: all arrived as sent.');
  });

  it('calls bytes behind a software thru late', () => {
    const thru: Hop = { kind: 'software thru', toOnSeconds: 0, toOffSeconds: 0, latencySeconds: 80 * US };
    const outcomes = journey([0xc0, 0x05], through(thru));
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['late', 'late']);
    expect(outcomes[0]).toMatchObject({
      cause: 'held back',
      why: 'C0 arrived whole, 400 µs after it was sent: held back on the way',
    });
  });

  it('calls a line without current silence', () => {
    const outcomes = journey([0xc0, 0x05], () => IDLE_LINE);
    expect(outcomes.map(({ outcome, cause }) => [outcome, cause])).toEqual([
      ['missing', 'silence'],
      ['missing', 'silence'],
    ]);
    expect(differenceInWords(outcomes)).toBe(
      '2 bytes sent: 2 missing. First trouble: C0 never arrived: the line stayed idle throughout.',
    );
  });

  it('calls a line that is always on a break', () => {
    const outcomes = journey([0xc0, 0x05], () => ({ before: false, edges: [] }));
    expect(outcomes.map(({ outcome, cause }) => [outcome, cause])).toEqual([
      ['missing', 'break'],
      ['missing', 'break'],
    ]);
  });

  it('sees through a line that is upside down', () => {
    const outcomes = journey([0x90, 0x3c, 0x27], invertWave);
    expect(outcomes.some(({ outcome }) => outcome === 'same')).toBe(false);
    for (const { sentIndex, cause } of outcomes) if (sentIndex !== null) expect(cause).toBe('upside down');
  });

  it('names the bit and the length of a pulse that shrank', () => {
    // Each hop takes 9 us from every 1: two hops leave 14 us of the lone 1 in data bit 2 (value 04), from 114 us after the
    // start edge to 128 us. The samples of that bit fall at 110, 112 and 114 us: too early.
    const outcomes = journey([0x04], through(hop(1, 10), hop(1, 10)));
    expect(outcomes).toMatchObject([{ outcome: 'garbled', cause: 'pulse shrunk' }]);
    expect(outcomes[0]?.why).toBe('data bit 2 of 04 read as 0: its pulse shrank from 32.0 µs to 14.0 µs');
  });

  it('says when a pulse vanished', () => {
    // Two hops of 17 us difference: 32 us, 15 us, nothing.
    const [first] = journey([0x04], through(hop(0, 17), hop(0, 17)));
    expect(first).toMatchObject({ outcome: 'garbled', cause: 'pulse vanished' });
    expect(first?.why).toBe('data bit 2 of 04 read as 0: its pulse of 32.0 µs vanished on the way');
  });

  it('names the framing error of a stop bit that comes late, alone or before another byte', () => {
    // 3F ends in two 0s. Two hops of 10 us: its stop edge comes 20 us late, and its votes fall at 14, 16 and 18 us. Alone,
    // the stop bit has no end and so only its edge is late; before another byte it has shrunk from 32 to 12 us.
    const worn = through(hop(0, 10), hop(0, 10));
    const [alone] = journey([0x3f], worn);
    expect(alone).toMatchObject({ outcome: 'garbled' });
    expect(alone?.why).toBe('data bit 0 of 3F read as 0: its pulse shrank from 192.0 µs to 172.0 µs');
    const [last] = journey([0x00], worn);
    expect(last).toMatchObject({ outcome: 'garbled', cause: 'edge late' });
    expect(last?.why).toBe('framing error: stop bit of 00 read as 0: its edge came 20.0 µs late');
    const [first] = journey([0x00, 0x00], worn);
    expect(first).toMatchObject({ outcome: 'garbled', cause: 'pulse shrunk' });
    expect(first?.why).toBe(
      'framing error: stop bit of 00 read as 0: its pulse shrank from 32.0 µs to 12.0 µs',
    );
  });

  it('blames the clocks when every pulse is whole', () => {
    // 6 % slow: the stop bit begins at 288 / 0.94 = 306.4 us, after the last vote at 306 us.
    const outcomes = journey([0x40, 0x40], (wave) => wave, { clockError: -0.06 });
    expect(outcomes[0]).toMatchObject({ outcome: 'garbled', cause: 'clocks' });
    expect(outcomes[0]?.why).toMatch(/sampled \d+\.\d µs before it began, since the two clocks differ/);
  });

  it('calls a byte whose start bit is cut short lost by a false start', () => {
    const [first] = journey([0xff], () =>
      waveform([
        { seconds: 0, level: false },
        { seconds: 10 * US, level: true },
      ]),
    );
    expect(first).toMatchObject({ outcome: 'missing', cause: 'false start' });
  });

  it('calls a byte that nobody sent extra', () => {
    const sent = sendBytes([0xc0]);
    const noise = sendBytes([0xff], { startSeconds: 5e-3 });
    const arrived = waveform([...sent.wave.edges, ...noise.wave.edges]);
    const outcomes = compareBytes({ sent, arrived, heard: receive(arrived).heard });
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['same', 'extra']);
  });

  it('accounts for every byte sent and every frame heard exactly once, in words, on any line', () => {
    fc.assert(
      fc.property(fc.array(anyByte, { maxLength: 8 }), anyWave, (values, arrived) => {
        const sent = sendBytes(values);
        const { heard } = receive(arrived);
        const outcomes = compareBytes({ sent, arrived, heard });
        const sentIndexes = outcomes.flatMap(({ sentIndex }) => (sentIndex === null ? [] : [sentIndex]));
        expect(sentIndexes).toEqual(values.map((_, index) => index));
        const frames = heard.flatMap(({ kind }, index) =>
          kind === 'byte' || kind === 'framing error' ? [index] : [],
        );
        const used = outcomes.flatMap(({ heardIndex }) => (heardIndex === null ? [] : [heardIndex]));
        expect(new Set(used).size).toBe(used.length);
        expect(used.filter((index) => heard[index]?.kind !== 'break')).toEqual(frames);
        expect(used.every((index) => heard[index]?.kind !== 'glitch')).toBe(true);
        for (const { why } of outcomes) expect(why).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 300 },
    );
  });
});
