import { describe, expect, test } from 'vitest';
import { planJack } from '../../../src/core/plan/library.ts';
import { pressTimeline, timePress } from '../../../src/core/board/one-press.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Device, Plan, PressItem } from '../../../src/core/plan/plan.ts';
import { makeLead, wires } from '../../../src/core/wiring/link.ts';

const pedal = (name: string, channel: number, thru: 'hardware' | 'software'): Device => ({
  name,
  kind: 'pedal',
  channel,
  jacks: [
    planJack('IN', 'in', 'din5', 'din', { part: 'H11L1' }),
    planJack('THRU', 'out', 'din5', 'din', { role: 'thru', thru, latencySeconds: 0.002 }),
  ],
});

/** A controller and three pedals in a chain; the first passes on by hardware, the second by software with 2 ms of its own. */
function chain(press: readonly PressItem[], more: Partial<Plan> = {}): Plan {
  const devices: Device[] = [
    { name: 'switcher', kind: 'controller', jacks: [planJack('OUT', 'out', 'din5', 'din')] },
    pedal('one', 1, 'hardware'),
    pedal('two', 2, 'software'),
    pedal('three', 1, 'hardware'),
  ];
  const leads = [1, 2, 3].map((at) =>
    makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { name: `lead ${at}` }),
  );
  return makePlan({
    devices,
    leads,
    links: leads.map(({ name }, at) => ({
      name: `link ${at + 1}`,
      output: { device: devices[at]?.name ?? '', jack: at === 0 ? 'OUT' : 'THRU' },
      inputs: [{ device: devices[at + 1]?.name ?? '', jack: 'IN', leads: [name] }],
    })),
    press,
    ...more,
  });
}

const program = (device: string): PressItem => ({ device, send: 'program', program: 5 });

/** H11L1: 1.0 us to on, 1.2 us to off; the slower edge counts. */
const OPTO = 1.2e-6;
const BYTE = 320e-6;

describe('One press', () => {
  test('of one program change is two bytes: 640 us on the wire, and the opto of the first input', () => {
    const timing = timePress(chain([program('one')]));
    expect(timing.bytes).toBe(2);
    expect(timing.items[0]?.bytes).toEqual([0xc0, 4]);
    expect(timing.sendSeconds).toBeCloseTo(640e-6, 9);
    expect(timing.seconds).toBeCloseTo(640e-6 + OPTO, 9);
  });

  test('through a hardware THRU adds an opto, through a software THRU a byte and its own time besides', () => {
    const timing = timePress(chain([program('one'), program('two'), program('three')]));
    const [one, two, three] = timing.arrivals;
    // Bytes 2, 4 and 6 end at 640, 1280 and 1920 us.
    expect(one?.seconds).toBeCloseTo(2 * BYTE + OPTO, 9);
    expect(two?.seconds).toBeCloseTo(4 * BYTE + 2 * OPTO, 9);
    expect(three?.seconds).toBeCloseTo(6 * BYTE + 3 * OPTO + BYTE + 2e-3, 9);
    expect(three?.hops.map(({ by }) => by)).toEqual(['own', 'hardware', 'software']);
    expect(timing.seconds).toBe(three?.seconds);
  });

  test('with a bank sends two control changes before the program: eight bytes, seven with running status', () => {
    const press: PressItem[] = [{ device: 'one', send: 'bank', bank: 130 }, program('one')];
    const plain = timePress(chain(press));
    // Bank 130 is 1 times 128 and 2: B0 00 01, B0 20 02, then C0 04.
    expect(plain.items.map(({ bytes }) => bytes)).toEqual([
      [0xb0, 0x00, 0x01, 0xb0, 0x20, 0x02],
      [0xc0, 0x04],
    ]);
    expect(plain.sendSeconds).toBeCloseTo(8 * BYTE, 9);
    const running = timePress(chain(press), { runningStatus: true });
    expect(running.items[0]?.bytes).toEqual([0xb0, 0x00, 0x01, 0x20, 0x02]);
    expect(running.sendSeconds).toBeCloseTo(7 * BYTE, 9);
  });

  test('saves a byte by running status only where the status repeats: the order of messages matters', () => {
    const control = (device: string): PressItem => ({ device, send: 'control', controller: 80, value: 127 });
    const bytes = (order: readonly string[]): number =>
      timePress(chain(order.map(control)), { runningStatus: true }).bytes;
    // Channels 1, 1, 2: 3 + 2 + 3 bytes; channels 1, 2, 1: 3 + 3 + 3.
    expect(bytes(['one', 'three', 'two'])).toBe(8);
    expect(bytes(['one', 'two', 'three'])).toBe(9);
  });

  test("warns over the reader's limit, of a device that is not reached, and of a bank without a program", () => {
    const press: PressItem[] = [program('three'), { device: 'two', send: 'bank', bank: 1 }];
    const whole = chain(press, { pressLimitSeconds: 0.003 });
    const timing = timePress({ ...whole, links: whole.links.slice(0, 2) });
    expect(timing.seconds).toBeUndefined();
    expect(timing.warnings).toEqual([
      "'three' is not reached, so what is meant for it goes nowhere.",
      "The bank for 'two' waits for a program change that does not come.",
    ]);
    // 2 bytes, three optos, one byte again and 2 ms: 2.96 ms; two bytes more make it 3.6 ms.
    expect(timePress({ ...whole, press: [program('three')] }).overLimit).toBe(false);
    const late = timePress({ ...whole, press: [program('one'), program('three')] });
    expect(late.warnings).toEqual(['The last device has its message after 3.6 ms; your limit is 3.0 ms.']);
  });

  test('draws a row for each device, every message passing by shifted by the way', () => {
    const plan = chain([program('one'), program('three')]);
    const rows = pressTimeline(plan, timePress(plan));
    expect(rows.map(({ device }) => device)).toEqual(['switcher', 'one', 'two', 'three']);
    expect(rows[3]?.spans[1]?.endSeconds).toBeCloseTo(4 * BYTE + 3 * OPTO + BYTE + 2e-3, 9);
  });
});
