/** Leads as answers: each wrong one is named by what it does to the current, and a right one may still have something worth saying. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Grading } from '../../../../src/core/learn/index.ts';
import { wrongLeads } from '../../../../src/core/learn/tasks/grade-lead.ts';
import { makeJack } from '../../../../src/core/wiring/index.ts';
import type { Connector, Jack, Style } from '../../../../src/core/wiring/index.ts';

type Place = readonly [connector: Connector, style: Style, more?: Partial<Jack>];
const DIN: Place = ['din5', 'din'];
const TYPE_A: Place = ['trs-3.5', 'type-a'];
const TYPE_B: Place = ['trs-3.5', 'type-b'];
const LEVEL: Place = ['trs-3.5', 'tip-signal'];

const jacks = ([from, to]: readonly [Place, Place]): readonly [Jack, Jack] => [
  makeJack('out', ...from),
  makeJack('in', ...to),
];
const grade = (pair: readonly [Place, Place], answer: string): Grading => {
  const [output, input] = jacks(pair);
  return gradeAnswer({ form: { form: 'lead', output, input }, right: '', slips: [], steps: [] }, answer);
};

describe('A lead that works', () => {
  it('joins source to source and sink to sink, whichever contacts they are on', () => {
    // MMA RP-054: Type A has the source on the ring and the sink on the tip; Type B the other way round.
    for (const [pair, answer] of [
      [[DIN, DIN], '4-4 5-5 2-2'],
      [[DIN, TYPE_A], '4-ring 5-tip 2-sleeve'],
      [[TYPE_B, DIN], 'tip-4 ring-5 sleeve-2'],
      [[TYPE_A, TYPE_B], 'ring-tip tip-ring sleeve-sleeve'],
    ] as const) {
      const grading = grade(pair, answer);
      expect(grading, answer).toMatchObject({ right: true, readable: true });
      expect(grading.alsoNote).toBeUndefined();
      expect(grading.mistake).toBeUndefined();
    }
  });

  it('without its shield is right, and hears of noise', () => {
    expect(grade([DIN, TYPE_A], '4-ring 5-tip')).toMatchObject({
      right: true,
      alsoNote: 'It works, but the shield is left out: noise has an easier way in. Join the shield too.',
    });
  });

  it('with a conductor on a spare pin is right, and hears that it carries nothing', () => {
    expect(grade([DIN, DIN], '4-4 5-5 2-2 1-1')).toMatchObject({
      right: true,
      alsoNote: 'It works; one conductor sits on a contact that carries nothing.',
    });
  });
});

describe('A lead that does not', () => {
  it('is named by the line that has no conductor', () => {
    expect(grade([DIN, TYPE_A], '4-ring 2-sleeve').mistake).toBe('no way back');
    expect(grade([DIN, TYPE_A], '5-tip 2-sleeve').mistake).toBe('no way out');
    expect(grade([DIN, DIN], '2-2').mistake).toBe('no way back');
  });

  it('is a swapped pair where current comes in where it should go out', () => {
    for (const [pair, answer] of [
      [[DIN, DIN], '4-5 5-4 2-2'],
      [[DIN, TYPE_A], '4-tip 5-ring 2-sleeve'],
      [[TYPE_A, TYPE_B], 'tip-tip ring-ring sleeve-sleeve'],
    ] as const) {
      const { right, mistake, sentence } = grade(pair, answer);
      expect([right, mistake], answer).toEqual([false, 'pair swapped']);
      expect(sentence).toMatch(/The pair is swapped: source and sink have changed places\. Reversed:/);
    }
  });

  it('has no path where both lines are laid to contacts that carry nothing', () => {
    const { right, mistake } = grade([DIN, DIN], '4-1 5-3 2-2');
    expect([right, mistake]).toEqual([false, 'no path']);
  });

  it('is given up too early where a lead can be made, and rightly where none can', () => {
    expect(grade([DIN, TYPE_A], 'none')).toMatchObject({ right: false, mistake: 'gave up' });
    // A sender against ground has one signal and no current to an isolated input of its own accord.
    expect(grade([LEVEL, TYPE_A], 'none')).toMatchObject({
      right: true,
      sentence: 'No plain lead can: these two need a powered converter, or another jack.',
    });
    const tried = grade([LEVEL, TYPE_A], 'tip-tip sleeve-sleeve');
    expect(tried.right).toBe(false);
    expect(tried.sentence).toMatch(/ Ask yourself whether any plain lead can\.$/);
  });
});

describe('The wrong leads that people make', () => {
  it('are each wrong when they are handed in, by the same name, and no two are the same', () => {
    for (const pair of [
      [DIN, DIN],
      [DIN, TYPE_A],
      [TYPE_A, TYPE_B],
      [TYPE_B, DIN],
      [LEVEL, LEVEL],
    ] as const) {
      const slips = wrongLeads(...jacks(pair));
      expect(new Set(slips.map(({ answer }) => answer)).size).toBe(slips.length);
      for (const { name, answer, sentence } of slips)
        expect(grade(pair, answer), answer).toMatchObject({ right: false, mistake: name, sentence });
    }
  });

  it('between Type A and Type B are the straight lead, the halves, and none at all', () => {
    const names = new Map(wrongLeads(...jacks([TYPE_A, TYPE_B])).map(({ answer, name }) => [answer, name]));
    expect(names.get('none')).toBe('gave up');
    expect(names.get('ring-ring sleeve-sleeve tip-tip')).toBe('pair swapped');
    expect(names.get('ring-tip sleeve-sleeve')).toBe('no way back');
    expect(names.get('sleeve-sleeve tip-ring')).toBe('no way out');
    expect(names.size).toBe(4);
  });

  it('where no lead can be made do not count giving up among them', () => {
    expect(wrongLeads(...jacks([LEVEL, TYPE_A])).map(({ name }) => name)).not.toContain('gave up');
  });
});
