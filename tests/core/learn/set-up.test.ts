import { describe, expect, it } from 'vitest';
import type { SENT_KINDS } from '../../../src/core/learn/index.ts';
import { saySent, whoActs, type SetPedal } from '../../../src/core/learn/index.ts';

const PLAIN: SetPedal = { name: 'echo', channel: 2, omni: false, programs: true, clock: true };
const acts = (more: Partial<SetPedal>, kind: (typeof SENT_KINDS)[number], channel: number) =>
  whoActs([{ ...PLAIN, ...more }], kind, channel)[0]?.acts;

describe('What is sent', () => {
  it('is written as the tables of the standard have it', () => {
    // MIDI 1.0 Detailed Specification 4.2.1, tables I, II and V: Cn pp, Bn cc vv with n the channel less one, and F8.
    expect(saySent('program change', 1)).toBe('C0 04');
    expect(saySent('program change', 16)).toBe('CF 04');
    expect(saySent('control change', 2)).toBe('B1 14 7F');
    expect(saySent('clock', 9)).toBe('F8');
  });
});

describe('Who acts', () => {
  it('on a channel message is who listens to that channel, or to all', () => {
    for (const kind of ['program change', 'control change'] as const)
      for (let channel = 1; channel <= 16; channel += 1) {
        expect(acts({}, kind, channel)).toBe(channel === 2);
        expect(acts({ omni: true }, kind, channel)).toBe(true);
      }
  });

  it('on a program change is nobody who is set to take none; other messages still arrive', () => {
    expect(acts({ programs: false }, 'program change', 2)).toBe(false);
    expect(acts({ programs: false, omni: true }, 'program change', 5)).toBe(false);
    expect(acts({ programs: false }, 'control change', 2)).toBe(true);
  });

  it('on a clock is who follows it, whatever the channel', () => {
    for (const omni of [false, true])
      for (const channel of [1, 2, 16]) {
        expect(acts({ omni }, 'clock', channel)).toBe(true);
        expect(acts({ omni, clock: false }, 'clock', channel)).toBe(false);
      }
  });

  it('is told pedal by pedal in their order, each with its own reason', () => {
    const found = whoActs(
      [PLAIN, { ...PLAIN, name: 'drive', channel: 1 }, { ...PLAIN, name: 'chorus', omni: true }],
      'program change',
      1,
    );
    expect(found).toEqual([
      { name: 'echo', acts: false, because: 'it listens to channel 2 alone' },
      { name: 'drive', acts: true, because: 'it listens to channel 1' },
      { name: 'chorus', acts: true, because: 'it listens to every channel' },
    ]);
  });
});
