import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const typeA: AuthoredJack = { connector: 'trs-3.5', style: 'type-a' };
const typeB: AuthoredJack = { connector: 'trs-3.5', style: 'type-b' };
const din: AuthoredJack = { connector: 'din5', style: 'din' };
const twoContact: AuthoredJack = { connector: 'ts-6.35', style: 'two-contact' };
const tipSignal: AuthoredJack = { connector: 'trs-3.5', style: 'tip-signal' };

/** The links of this lesson. */
export const links = {
  straight: {
    output: typeA,
    input: typeB,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'backwards',
  },
  crossed: {
    output: typeA,
    input: typeB,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-ring', 'ring-tip', 'sleeve-sleeve'] }],
    outcome: 'flows',
  },
  eitherWay: {
    output: typeA,
    input: { connector: 'trs-3.5', style: 'both-ways' },
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'flows',
  },
  wrongLead: {
    output: din,
    input: typeB,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] }],
    outcome: 'backwards',
  },
  halfAdapter: {
    output: din,
    input: typeB,
    leads: [
      { ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] },
      { ends: ['trs-3.5', 'trs-3.5'], wires: ['ring-tip', 'sleeve-sleeve'], metres: 0.15, firstEnd: 'jack' },
    ],
    outcome: 'no-path',
  },
  adapter: {
    output: din,
    input: typeB,
    leads: [
      { ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] },
      {
        ends: ['trs-3.5', 'trs-3.5'],
        wires: ['ring-tip', 'tip-ring', 'sleeve-sleeve'],
        metres: 0.15,
        firstEnd: 'jack',
      },
    ],
    outcome: 'flows',
  },
  sleeveToShield: {
    output: din,
    input: twoContact,
    leads: [{ ends: ['din5', 'ts-6.35'], wires: ['4-tip', '2-sleeve'] }],
    outcome: 'always-on',
  },
  sleeveToSink: {
    output: din,
    input: twoContact,
    leads: [{ ends: ['din5', 'ts-6.35'], wires: ['4-tip', '5-sleeve'] }],
    outcome: 'flows',
  },
  voltage: {
    output: typeA,
    input: tipSignal,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'flows',
    notes: ['grounds-joined'],
  },
  voltageNoGround: {
    output: typeA,
    input: tipSignal,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip'] }],
    outcome: 'no-path',
    notes: ['depends-on-grounds'],
  },
  noSource: {
    output: tipSignal,
    input: typeA,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'no-path',
  },
  upsideDown: {
    output: tipSignal,
    input: typeA,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-ring', 'sleeve-tip'] }],
    outcome: 'inverted',
  },
} satisfies LessonLinks;
