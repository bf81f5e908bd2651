import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BAUD, sendBytes } from '../../../src/core/signal/frames.ts';
import { receive } from '../../../src/core/signal/receiver.ts';
import { IDLE_LINE, invertWave, waveform } from './lines.ts';
import { anyByte, anyWave } from './arbitrary.ts';

const US = 1e-6;
/** A line that is low for each of the given stretches, microseconds. */
const lowFor = (...stretches: readonly (readonly [number, number])[]) =>
  waveform(
    stretches.flatMap(([from, to]) => [
      { seconds: from * US, level: false },
      { seconds: to * US, level: true },
    ]),
  );

describe('the serial receiver', () => {
  it('reads any bytes at any start phase while both clocks keep within 1 %', () => {
    // The standard allows 1 % at each end; the tightest published bound for this receiver is 3.9 % in total.
    const error = fc.double({ min: -0.01, max: 0.01, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(anyByte, { maxLength: 20 }),
        error,
        error,
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        fc.double({ min: 0, max: 1e-3, noNaN: true }),
        (bytes, senderError, receiverError, phase, gapSeconds) => {
          const { wave } = sendBytes(bytes, { clockError: senderError, gapSeconds });
          const reception = receive(wave, { clockError: receiverError, phase });
          expect(reception.bytes).toEqual(bytes);
          expect(reception.heard).toHaveLength(bytes.length);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('samples each bit 8, 9 and 10 sixteenths of a bit after the sample that saw the start', () => {
    // Sample 1 sees the start at 0; sample n comes (n - 1) times 2 us later, and each bit adds 32 us.
    const [heard] = receive(sendBytes([0x55]).wave).heard;
    const times = heard?.samples.map(({ seconds }) => seconds / US) ?? [];
    const byHand = Array.from({ length: 10 }, (_, bit) => [14, 16, 18].map((us) => us + 32 * bit)).flat();
    expect(times).toHaveLength(30);
    times.forEach((time, index) => expect(time).toBeCloseTo(byHand[index] ?? 0, 6));
  });

  it('knows a start to one sample only', () => {
    const seen = [0, 0.5, 0.999].map(
      (phase) => receive(sendBytes([0x55]).wave, { phase }).heard[0]?.startSeconds ?? Number.NaN,
    );
    [0, 1, 1.998].forEach((us, index) => expect((seen[index] ?? 0) / US).toBeCloseTo(us, 6));
  });

  it('hears nothing on an idle line', () => {
    expect(receive(IDLE_LINE)).toMatchObject({ heard: [], bytes: [] });
  });

  it('reports a line that is always on as one break without end', () => {
    expect(receive({ before: false, edges: [] }).heard).toMatchObject([{ kind: 'break', endSeconds: null }]);
  });

  it('reports a break with the moment at which the line came back, and reads on', () => {
    const { edges } = sendBytes([0xc0], { startSeconds: 2000 * US }).wave;
    const line = waveform([...lowFor([0, 1000.5]).edges, ...edges]);
    const { heard, bytes } = receive(line);
    expect(heard.map(({ kind }) => kind)).toEqual(['break', 'byte']);
    expect(bytes).toEqual([0xc0]);
    const [first] = heard;
    expect(first?.kind === 'break' ? (first.endSeconds ?? 0) / US : 0).toBeCloseTo(1002, 6);
  });

  it('waits after a break until a sample has seen the line high, so a spike between samples starts nothing', () => {
    // Samples fall at 500 and 502 us; the line is high from 500.5 to 501.5 us only.
    expect(receive(lowFor([0, 500.5], [501.5, 1000])).heard).toMatchObject([{ kind: 'break' }]);
  });

  it('reports a stop bit that reads 0 as a framing error and hands no byte on', () => {
    // Low for the start bit, high for data bit 0, low from 64 us to 340 us, over the stop bit at 288 us.
    const { heard, bytes } = receive(lowFor([0, 32], [64, 340]));
    expect(heard).toMatchObject([{ kind: 'framing error', value: 1 }]);
    expect(bytes).toEqual([]);
  });

  it('takes a dip shorter than half a bit for a false start', () => {
    const { heard } = receive(lowFor([0.5, 10]));
    expect(heard.map(({ kind }) => kind)).toEqual(['glitch']);
  });

  it('does not see a dip between two samples', () => {
    expect(receive(lowFor([0.5, 1.5])).heard).toEqual([]);
  });

  it('outvotes a spike on one of three samples and says that the bit was doubtful', () => {
    // 0xFF has data bit 0 from 32 to 64 us; its samples fall at 46, 48 and 50 us.
    const { heard } = receive(lowFor([0, 32], [47.5, 48.5]));
    expect(heard).toMatchObject([{ kind: 'byte', value: 0xff, doubtfulBits: [1] }]);
    const { heard: single } = receive(lowFor([0, 32], [47.5, 48.5]), { voteSamples: [9] });
    expect(single).toMatchObject([{ kind: 'byte', value: 0xfe }]);
  });

  it('makes other bytes of an inverted line', () => {
    const { wave } = sendBytes([0x90, 0x3c, 0x27]);
    expect(receive(invertWave(wave)).bytes).not.toEqual([0x90, 0x3c, 0x27]);
  });

  it('never throws and keeps its reports in order on any line', () => {
    fc.assert(
      fc.property(
        anyWave,
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        (wave, phase, clockError) => {
          const { heard, tickSeconds } = receive(wave, { phase, clockError });
          expect(tickSeconds).toBeCloseTo(1 / (BAUD * 16 * (1 + clockError)), 12);
          heard.forEach((event, index) => {
            expect(event.readySeconds).toBeGreaterThan(event.startSeconds);
            expect(event.startSeconds).toBeGreaterThan(heard[index - 1]?.readySeconds ?? -1);
          });
        },
      ),
      { numRuns: 500 },
    );
  });

  it('refuses options that describe no receiver', () => {
    expect(() => receive(IDLE_LINE, { oversampling: 0 })).toThrow(
      'receiver: samples a bit must be a whole number from 1, got 0',
    );
    expect(() => receive(IDLE_LINE, { voteSamples: [8, 9] })).toThrow(
      'receiver: vote samples must be an odd count of rising whole numbers from 1 to 16, got 8, 9',
    );
    expect(() => receive(IDLE_LINE, { phase: 1 })).toThrow(
      'receiver: phase must be from 0 to below 1, got 1',
    );
  });
});
