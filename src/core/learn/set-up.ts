/** Pedals as their menus are set, and who acts on a message. Channels count from 1, as menus do. */
import { encode, hexOf, type Message } from '../signal/index.ts';

/** What a lesson sends: the fifth program, a controller at full, or one tick of the clock. */
export const SENT_KINDS = ['program change', 'control change', 'clock'] as const;
/** One of them. */
export type SentKind = (typeof SENT_KINDS)[number];

/** A pedal as its menus are set. `channel` 1 to 16; with `omni` it listens to every channel; `clock` says whether it follows the clock. */
export interface SetPedal {
  readonly name: string;
  readonly channel: number;
  readonly omni: boolean;
  /** Whether it takes program changes. */
  readonly programs: boolean;
  readonly clock: boolean;
}

/** What a pedal does with a message, and why. */
interface Act {
  readonly name: string;
  readonly acts: boolean;
  readonly because: string;
}

/** The program, the controller and the value that lessons send: program 5 counted from 1, and a controller that no standard names. */
const SENT = { program: 4, controller: 20, value: 127 } as const;

/** A message of a kind on a channel, 1 to 16; a clock has no channel. */
function messageOf(kind: SentKind, channel: number): Message {
  const wire = { channel: channel - 1 };
  switch (kind) {
    case 'program change':
      return { kind, ...wire, program: SENT.program };
    case 'control change':
      return { kind, ...wire, controller: SENT.controller, value: SENT.value };
    case 'clock':
      return { kind: 'real-time', signal: 'clock' };
  }
}

/** The bytes of a message as it is sent, in hex: 'C0 04'. */
export function saySent(kind: SentKind, channel: number): string {
  return encode([messageOf(kind, channel)])
    .map(hexOf)
    .join(' ');
}

/**
 * What each pedal does with a message on a channel. A channel message is for the channel it names, or for any in omni mode; a
 * clock is for all (MIDI 1.0 Detailed Specification 4.2.1). That a menu can shut out programs or the clock is common practice.
 */
export function whoActs(pedals: readonly SetPedal[], kind: SentKind, channel: number): readonly Act[] {
  return pedals.map((pedal): Act => ({ name: pedal.name, ...act(pedal, kind, channel) }));
}

function act(pedal: SetPedal, kind: SentKind, channel: number): Omit<Act, 'name'> {
  if (kind === 'clock')
    return pedal.clock
      ? { acts: true, because: 'a clock has no channel, and it follows the clock' }
      : { acts: false, because: 'it is set not to follow the clock' };
  if (!pedal.omni && pedal.channel !== channel)
    return { acts: false, because: `it listens to channel ${pedal.channel} alone` };
  if (kind === 'program change' && !pedal.programs)
    return { acts: false, because: 'it is set to take no program changes' };
  return pedal.omni
    ? { acts: true, because: 'it listens to every channel' }
    : { acts: true, because: `it listens to channel ${channel}` };
}
