import { expect, test } from 'vitest';
import { spiceDeck } from '../../../src/core/circuit/spice-deck.ts';
import type { Circuit } from '../../../src/core/circuit/elements.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { restDeck, timeDeck } from '../../../src/core/signal/link-deck.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Link } from '../../../src/core/wiring/link.ts';

const DIVIDER: Circuit = {
  ground: '0 V',
  elements: [
    { kind: 'voltage', name: 'battery', plus: 'top', minus: '0 V', volts: 10 },
    { kind: 'resistor', name: 'upper', a: 'top', b: 'Mid', ohms: 1000 },
    { kind: 'resistor', name: 'lower', a: 'Mid', b: '0 V', ohms: 2000 },
  ],
};

test('a divider is written as anyone would write it', () => {
  expect(spiceDeck(DIVIDER, { title: 'divider', comments: ['ten volts'] }).text).toBe(
    [
      'divider',
      '* ten volts',
      '* battery: top to 0 V',
      'v_battery n_top 0 10',
      '* upper: top to Mid',
      'r_upper n_top n_mid 1000',
      '* lower: Mid to 0 V',
      'r_lower n_mid 0 2000',
      '.op',
      '.end',
      '',
    ].join('\n'),
  );
});

test('names that differ by case or signs only stay apart, since SPICE does not see the difference', () => {
  const { nodes, parts } = spiceDeck(
    {
      ground: '0',
      elements: [
        { kind: 'resistor', name: 'a b', a: 'X', b: '0', ohms: 1 },
        { kind: 'resistor', name: 'a.B', a: 'x', b: '0', ohms: 1 },
      ],
    },
    { title: 'names' },
  );
  expect([...parts.values()]).toEqual(['r_a_b', 'r_a_b_2']);
  expect([nodes.get('X'), nodes.get('x')]).toEqual(['n_x', 'n_x_2']);
});

test('a part that floats is tied to ground, and the deck says so', () => {
  const { text } = spiceDeck(
    {
      ground: '0',
      elements: [
        { kind: 'resistor', name: 'here', a: 'a', b: '0', ohms: 1 },
        { kind: 'resistor', name: 'there', a: 'b', b: 'c', ohms: 1 },
      ],
    },
    { title: 'apart' },
  );
  expect(text).toContain("* holds node 'b', which has no way to ground\nr_tie_b n_b 0 1000000000");
});

test('a jump of a source takes a picosecond, and a moving switch is a current by the exponential of a control', () => {
  const { text } = spiceDeck(
    {
      ground: '0',
      elements: [
        { kind: 'voltage', name: 'v', plus: 'a', minus: '0', volts: 1 },
        { kind: 'switch', name: 's', a: 'a', b: 'b', closed: false },
        { kind: 'resistor', name: 'r', a: 'b', b: '0', ohms: 50 },
      ],
    },
    {
      title: 'moves',
      inTime: {
        drives: [
          {
            part: 'v',
            points: [
              { seconds: 1e-6, value: 0 },
              { seconds: 1e-6, value: 1 },
            ],
          },
          {
            part: 's',
            points: [
              { seconds: 0, value: 0 },
              { seconds: 1e-6, value: 1 },
            ],
          },
        ],
        toSeconds: 2e-6,
        stepSeconds: 1e-8,
        mostStepSeconds: 1e-8,
      },
    },
  );
  expect(text).toContain('pwl(0 0 0.000001 0 0.000001000001 1)');
  // ln 1e-12 and ln 1e3: from a picosiemens to a milliohm.
  expect(text).toContain('vb_s b_s_ctl 0 pwl(0 -27.6310211159285 0.000001 6.90775527898214)');
  expect(text).toContain('b_s n_a n_b i=(v(n_a)-v(n_b))*exp(v(b_s_ctl))');
  expect(text).toContain('.tran 1e-8 0.000002 0 1e-8');
});

const LINK: Link = {
  output: makeJack('out', 'din5', 'din'),
  branches: [
    {
      input: makeJack('in', 'din5', 'din'),
      leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { lengthMetres: 10 })],
    },
  ],
};

test('a link at rest has no capacitor; in time it has 40 pF/m between cores and 120 pF/m from each to the shield', () => {
  const rest = restDeck(LINK, 'separate', 'active').text;
  expect(rest.split('\n').filter((line) => line.startsWith('c_'))).toEqual([]);
  const farads = timeDeck(LINK, 'separate', sendBytes([0]).wave, 400e-6)
    .text.replace(/\n\+/g, '')
    .split('\n')
    .filter((line) => line.startsWith('c_'))
    .map((line) => Number(line.split(' ').at(-1)) * 1e12);
  expect(farads.length).toBe(6);
  // 10 m: 400 pF and twice 1200 pF, half of each at either end.
  expect(farads.reduce((sum, one) => sum + one, 0)).toBeCloseTo(2800, 6);
  expect(Math.min(...farads)).toBeCloseTo(200, 6);
  expect(Math.max(...farads)).toBeCloseTo(600, 6);
});

test('no line is wider than old programs can read', () => {
  const { text } = timeDeck(LINK, 'separate', sendBytes([0x55, 0xaa, 0x0f]).wave, 1e-3);
  for (const line of text.split('\n').filter((one) => !one.startsWith('*')))
    expect(line.length, line).toBeLessThanOrEqual(78);
});
