import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMessage } from '../../../src/core/signal/check-message.ts';
import { decode } from '../../../src/core/signal/decode.ts';
import { encode } from '../../../src/core/signal/encode.ts';
import { bankSelect, BEND_CENTRE, CHANNEL_MODES, MESSAGE_SHAPES } from '../../../src/core/signal/messages.ts';
import type { Message } from '../../../src/core/signal/messages.ts';
import { anyByte, anyMessage } from './arbitrary.ts';

const read = (bytes: readonly number[]): readonly Message[] =>
  decode(bytes).flatMap((event) => (event.kind === 'message' ? [event.message] : []));

describe('writing messages', () => {
  // MIDI 1.0 Detailed Specification 4.2.1, tables I to VII: status bytes and the order of data bytes.
  const written: readonly (readonly [Message, readonly number[]])[] = [
    [{ kind: 'note off', channel: 0, note: 60, velocity: 64 }, [0x80, 0x3c, 0x40]],
    [{ kind: 'note on', channel: 15, note: 60, velocity: 0 }, [0x9f, 0x3c, 0x00]],
    [{ kind: 'key pressure', channel: 1, note: 2, pressure: 3 }, [0xa1, 0x02, 0x03]],
    [{ kind: 'control change', channel: 0, controller: 119, value: 127 }, [0xb0, 0x77, 0x7f]],
    [{ kind: 'channel mode', channel: 2, mode: 'all sound off', value: 0 }, [0xb2, 0x78, 0x00]],
    [{ kind: 'channel mode', channel: 2, mode: 'all notes off', value: 0 }, [0xb2, 0x7b, 0x00]],
    [{ kind: 'channel mode', channel: 2, mode: 'poly on', value: 0 }, [0xb2, 0x7f, 0x00]],
    [{ kind: 'program change', channel: 9, program: 4 }, [0xc9, 0x04]],
    [{ kind: 'channel pressure', channel: 0, pressure: 100 }, [0xd0, 0x64]],
    [{ kind: 'pitch bend', channel: 0, bend: BEND_CENTRE }, [0xe0, 0x00, 0x40]],
    [{ kind: 'pitch bend', channel: 0, bend: 1 }, [0xe0, 0x01, 0x00]],
    [{ kind: 'quarter frame', value: 0x35 }, [0xf1, 0x35]],
    [{ kind: 'song position', sixteenths: 129 }, [0xf2, 0x01, 0x01]],
    [{ kind: 'song select', song: 3 }, [0xf3, 0x03]],
    [{ kind: 'tune request' }, [0xf6]],
    [{ kind: 'exclusive', data: [0x7d, 1, 2] }, [0xf0, 0x7d, 0x01, 0x02, 0xf7]],
    [{ kind: 'real-time', signal: 'clock' }, [0xf8]],
    [{ kind: 'real-time', signal: 'start' }, [0xfa]],
    [{ kind: 'real-time', signal: 'continue' }, [0xfb]],
    [{ kind: 'real-time', signal: 'stop' }, [0xfc]],
    [{ kind: 'real-time', signal: 'active sensing' }, [0xfe]],
    [{ kind: 'real-time', signal: 'reset' }, [0xff]],
  ];
  it.each(written)('writes %o as the standard lists it', (message, bytes) => {
    expect(encode([message])).toEqual(bytes);
  });

  it('has an example above of every kind of message', () => {
    expect(new Set(written.map(([message]) => message.kind))).toEqual(
      new Set([...Object.keys(MESSAGE_SHAPES), 'real-time']),
    );
  });

  it('writes the running-status example of the standard: three note ons in seven bytes', () => {
    // MIDI 1.0 Detailed Specification 4.2.1, appendix A-1: 90 3C 27 40 2B 43 25.
    const notes = [
      [0x3c, 0x27],
      [0x40, 0x2b],
      [0x43, 0x25],
    ].map(([note = 0, velocity = 0]): Message => ({ kind: 'note on', channel: 0, note, velocity }));
    expect(encode(notes, { runningStatus: true })).toEqual([0x90, 0x3c, 0x27, 0x40, 0x2b, 0x43, 0x25]);
    expect(encode(notes)).toHaveLength(9);
    expect(read([0x90, 0x3c, 0x27, 0x40, 0x2b, 0x43, 0x25])).toEqual(notes);
  });

  it('sends the status again after system common and exclusive, but not after real-time', () => {
    // Same document: running status is cleared by exclusive and common messages and untouched by real-time.
    const program: Message = { kind: 'program change', channel: 0, program: 1 };
    const between = (message: Message): number =>
      encode([program, message, program], { runningStatus: true }).length - encode([message]).length;
    expect(between({ kind: 'tune request' })).toBe(4);
    expect(between({ kind: 'exclusive', data: [] })).toBe(4);
    expect(between({ kind: 'real-time', signal: 'clock' })).toBe(3);
  });

  it('chooses a bank by controller 0 for the high part and 32 for the low part', () => {
    expect(encode(bankSelect(2, 129))).toEqual([0xb2, 0, 1, 0xb2, 32, 1]);
    expect(bankSelect(0, 16384).flatMap(checkMessage)).toHaveLength(1);
  });

  it('numbers the channel modes from 120 to 127', () => {
    const numbers = CHANNEL_MODES.map(
      (mode) => encode([{ kind: 'channel mode', channel: 0, mode, value: 0 }])[1],
    );
    expect(numbers).toEqual([120, 121, 122, 123, 124, 125, 126, 127]);
  });
});

describe('checking messages', () => {
  it.each<readonly [Message, string]>([
    [
      { kind: 'program change', channel: 16, program: 0 },
      'program change: channel must be a whole number from 0 to 15 (channels 1 to 16), got 16',
    ],
    [
      { kind: 'program change', channel: 0, program: 128 },
      'program change: program must be a whole number from 0 to 127 (programs 1 to 128), got 128',
    ],
    [
      { kind: 'note on', channel: 0, note: 60, velocity: 1.5 },
      'note on: velocity must be a whole number from 0 to 127, got 1.5',
    ],
    [
      { kind: 'control change', channel: 0, controller: 120, value: 0 },
      'control change: controller must be a whole number from 0 to 119 (120 to 127 are channel modes), got 120',
    ],
    [
      { kind: 'pitch bend', channel: 0, bend: -1 },
      'pitch bend: bend must be a whole number from 0 to 16383, got -1',
    ],
    [
      { kind: 'exclusive', data: [1, 200] },
      'exclusive: data byte 2 must be a whole number from 0 to 127, got 200',
    ],
    [
      { kind: 'song select', song: Number.NaN },
      'song select: song must be a whole number from 0 to 127, got NaN',
    ],
  ])('says what %o needs', (message, words) => {
    expect(checkMessage(message).map((problem) => problem.words)).toEqual([words]);
    expect(() => encode([message])).toThrow(new RangeError(words));
  });

  it('names every bad field of a message, not only the first', () => {
    const message: Message = { kind: 'note on', channel: -1, note: 128, velocity: 200 };
    expect(checkMessage(message).map(({ field }) => field)).toEqual(['channel', 'note', 'velocity']);
  });

  it('finds nothing wrong with any message that can be sent', () => {
    fc.assert(fc.property(anyMessage, (message) => checkMessage(message).length === 0));
  });
});

describe('reading messages', () => {
  it('returns every list of messages that was written, with running status and without', () => {
    fc.assert(
      fc.property(fc.array(anyMessage), fc.boolean(), (messages, runningStatus) => {
        const events = decode(encode(messages, { runningStatus }));
        expect(events.every(({ kind }) => kind === 'message')).toBe(true);
        expect(read(encode(messages, { runningStatus }))).toEqual(messages);
      }),
      { numRuns: 500 },
    );
  });

  it('finds the same messages when clocks stand between any of their bytes', () => {
    fc.assert(
      fc.property(
        fc.array(anyMessage.filter(({ kind }) => kind !== 'real-time')),
        fc.array(fc.nat()),
        (messages, places) => {
          const bytes = [...encode(messages, { runningStatus: true })];
          for (const place of places) bytes.splice(place % (bytes.length + 1), 0, 0xf8);
          const all = read(bytes);
          expect(all.filter(({ kind }) => kind !== 'real-time')).toEqual(messages);
          expect(all.filter(({ kind }) => kind === 'real-time')).toHaveLength(places.length);
        },
      ),
    );
  });

  it('gives every one of any random bytes to exactly one event, and never throws', () => {
    fc.assert(
      fc.property(fc.array(anyByte, { maxLength: 200 }), (bytes) => {
        const places = decode(bytes)
          .flatMap(({ at }) => at)
          .toSorted((one, other) => one - other);
        expect(places).toEqual(bytes.map((_, index) => index));
      }),
      { numRuns: 1000 },
    );
  });

  it('gives byte ranges that leave out a clock inside a message', () => {
    const [clock, program] = decode([0xc0, 0xf8, 0x05]);
    expect(clock).toMatchObject({ from: 1, to: 2, at: [1] });
    expect(program).toMatchObject({ from: 0, to: 3, at: [0, 2], runningStatus: false });
  });

  it('reports nonsense as values', () => {
    expect(decode([0x05])).toMatchObject([{ kind: 'stray data', value: 5 }]);
    expect(decode([0xf4, 0xf5, 0xf9, 0xfd]).map(({ kind }) => kind)).toEqual(
      Array<string>(4).fill('undefined status'),
    );
    expect(decode([0xf7])).toMatchObject([{ kind: 'stray end' }]);
    expect(decode([0x90, 0x3c, 0xc0, 0x01])).toMatchObject([
      { kind: 'cut short', status: 0x90, data: [0x3c], by: 0xc0, from: 0, to: 2 },
      { kind: 'message', message: { kind: 'program change', program: 1 } },
    ]);
    expect(decode([0xf0, 0x7d])).toMatchObject([{ kind: 'cut short', status: 0xf0, by: null }]);
  });

  it('ends an exclusive at any status but real-time, and lets the status do its own work', () => {
    expect(decode([0xf0, 0x7d, 0xf8, 0x01, 0xc0, 0x02])).toMatchObject([
      { message: { kind: 'real-time', signal: 'clock' } },
      { message: { kind: 'exclusive', data: [0x7d, 0x01] }, endedBy: 0xc0 },
      { message: { kind: 'program change', program: 2 } },
    ]);
  });

  it('takes data after an exclusive or a common message for stray, since running status has ended', () => {
    expect(decode([0xc0, 1, 0xf6, 2]).map(({ kind }) => kind)).toEqual(['message', 'message', 'stray data']);
    expect(decode([0xc0, 1, 0xf0, 0xf7, 2]).at(-1)?.kind).toBe('stray data');
    expect(decode([0xc0, 1, 0xf4, 2]).at(-1)?.kind).toBe('stray data');
    expect(decode([0xc0, 1, 0xf9, 2]).at(-1)).toMatchObject({ kind: 'message', runningStatus: true });
  });

  it('refuses a number that is no byte', () => {
    expect(() => decode([256])).toThrow('byte 0: must be a whole number from 0 to 255, got 256');
  });
});
