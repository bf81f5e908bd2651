import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

/** Words of manuals, all invented, as they stand in the figures. */
export const phrases = {
  names: [
    'MIDI IN: 3.5 mm TRS jack',
    'MIDI IN: TRS, Type A',
    'MIDI IN as in RP-054',
    'Connect with a mono instrument cable',
    'Accepts both types',
  ],
  tables: [
    'Tip: pin 5, ring: pin 4, sleeve: pin 2',
    'T = 4, R = 5, S = 2',
    'ring = +5 V, tip = data, sleeve = ground',
    'Type A (tip = pin 4, ring = pin 5)',
  ],
  open: ['MIDI signal on the tip', 'tip = pin 5', 'MIDI data on the ring', 'data on ring, tip not connected'],
};

const din: AuthoredJack = { connector: 'din5', style: 'din' };
const typeA: AuthoredJack = { connector: 'trs-3.5', style: 'type-a' };
const typeB: AuthoredJack = { connector: 'trs-3.5', style: 'type-b' };
const plainLead = { ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] } as const;
const straight = { ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] } as const;

/** The links of this lesson. */
export const links = {
  ownAdapter: {
    output: din,
    input: typeB,
    leads: [
      plainLead,
      {
        ends: ['din5', 'trs-3.5'],
        wires: ['4-tip', '5-ring', '2-sleeve'],
        metres: 0.15,
        firstEnd: 'jack',
      },
    ],
    outcome: 'flows',
  },
  otherAdapter: {
    output: din,
    input: typeB,
    leads: [
      plainLead,
      {
        ends: ['din5', 'trs-3.5'],
        wires: ['4-ring', '5-tip', '2-sleeve'],
        metres: 0.15,
        firstEnd: 'jack',
      },
    ],
    outcome: 'backwards',
  },
  setRight: { output: typeA, input: typeA, leads: [straight], outcome: 'flows' },
  setWrong: { output: typeA, input: typeB, leads: [straight], outcome: 'backwards' },
} satisfies LessonLinks;
