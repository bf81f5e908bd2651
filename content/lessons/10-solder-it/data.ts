import type { AuthoredJack, LessonLinks } from '../../../src/core/learn/index.ts';

const din: AuthoredJack = { connector: 'din5', style: 'din' };
const typeA: AuthoredJack = { connector: 'trs-3.5', style: 'type-a' };

/** The links of this lesson. */
export const links = {
  right: {
    output: din,
    input: typeA,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] }],
    outcome: 'flows',
  },
  mirrored: {
    output: din,
    input: typeA,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['5-ring', '4-tip', '2-sleeve'] }],
    outcome: 'backwards',
  },
  strandOnRing: {
    output: din,
    input: typeA,
    leads: [
      {
        ends: ['din5', 'trs-3.5'],
        wires: ['4-ring', '5-tip', '2-sleeve'],
        faults: [{ kind: 'short', side: 'to', between: ['ring', 'sleeve'] }],
      },
    ],
    outcome: 'no-path',
    notes: ['source-shorted'],
  },
  strandOnTip: {
    output: din,
    input: typeA,
    leads: [
      {
        ends: ['din5', 'trs-3.5'],
        wires: ['4-ring', '5-tip', '2-sleeve'],
        faults: [{ kind: 'short', side: 'to', between: ['tip', 'sleeve'] }],
      },
    ],
    outcome: 'always-on',
    notes: ['stage-shorted'],
  },
  coldJoint: {
    output: din,
    input: typeA,
    leads: [
      {
        ends: ['din5', 'trs-3.5'],
        wires: ['4-ring', '5-tip', '2-sleeve'],
        faults: [{ kind: 'joint', side: 'from', contact: '5', ohms: 500 }],
      },
    ],
    outcome: 'flows',
  },
} satisfies LessonLinks;
