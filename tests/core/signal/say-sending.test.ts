import { expect, test } from 'vitest';
import { sayUnsolved, sendingInWords } from '../../../src/core/signal/say-sending.ts';
import { sendThrough } from '../../../src/core/signal/send.ts';
import { prepareTimeLink } from '../../../src/core/signal/time-link.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';

const LINK = {
  output: makeJack('out', 'din5', 'din'),
  branches: [
    {
      input: makeJack('in', 'din5', 'din', { part: 'H11L1' as const }),
      leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
    },
  ],
};
const BYTES = [0x90, 0x3c];

test('a sending that cannot be followed is told by node and moment, and nothing from there on is called heard or missing', () => {
  // No step is without error, so that a tolerance of 0 gives up at the first edge, which is the start of the first byte.
  const sending = sendThrough(
    [{ time: prepareTimeLink(LINK, { tolerance: { volts: 0, share: 0 } }) }],
    BYTES,
  );
  expect(sending.unsolved?.node).toBeTypeOf('string');
  expect(sendingInWords(sending)).toBe(
    `Not solved: no step in time settles at node '${sending.unsolved?.node}' from 0.0 µs on. What arrives after that is not known.`,
  );
  expect([sending.reception.heard, sending.reception.bytes, sending.outcomes]).toEqual([[], [], []]);
});

test('one that is followed to its end is told by what arrived', () => {
  const sending = sendThrough([{ time: prepareTimeLink(LINK) }], BYTES);
  expect([sending.unsolved, sendingInWords(sending)]).toEqual([
    undefined,
    '2 bytes sent: all arrived as sent.',
  ]);
});

test('a link without a state at rest is told without a moment', () => {
  expect(sayUnsolved({ ok: false, node: 'a', reason: "node 'a' does not settle" })).toBe(
    "Not solved: node 'a' does not settle. What arrives is not known.",
  );
});
