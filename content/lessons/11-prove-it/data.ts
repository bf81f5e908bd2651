import type { AuthoredJack, LessonLinks, LessonReadings } from '../../../src/core/learn/index.ts';

const typeA: AuthoredJack = { connector: 'trs-3.5', style: 'type-a' };

/** The links of this lesson. */
export const links = {
  straight: {
    output: typeA,
    input: typeA,
    leads: [{ ends: ['trs-3.5', 'trs-3.5'], wires: ['tip-tip', 'ring-ring', 'sleeve-sleeve'] }],
    outcome: 'flows',
  },
  fromDin: {
    output: { connector: 'din5', style: 'din' },
    input: typeA,
    leads: [{ ends: ['din5', 'trs-3.5'], wires: ['4-ring', '5-tip', '2-sleeve'] }],
    outcome: 'flows',
  },
} satisfies LessonLinks;

/** The readings of this lesson, all at the lead from DIN. */
export const readings = {
  oneSilent: [
    { from: 'out.4', to: 'in.ring', says: 'silent' },
    { from: 'out.5', to: 'in.tip' },
    { from: 'out.2', to: 'in.sleeve' },
    { from: 'out.4', to: 'in.tip' },
  ],
  twoSilent: [
    { from: 'out.4', to: 'in.ring', says: 'silent' },
    { from: 'out.5', to: 'in.tip', says: 'silent' },
  ],
  oneOfTwo: [
    { from: 'out.4', to: 'in.ring', says: 'silent' },
    { from: 'out.5', to: 'in.tip', says: 'beep' },
  ],
  touching: [
    { from: 'out.4', to: 'in.ring', says: 'beep' },
    { from: 'out.5', to: 'in.tip', says: 'beep' },
    { from: 'out.4', to: 'out.5', says: 'beep' },
    { from: 'in.ring', to: 'in.tip' },
  ],
} satisfies LessonReadings;
