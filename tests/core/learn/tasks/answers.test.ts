/** Answers as they may be typed or pressed: what is read alike, what is refused, and how near a number has to be. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import { makeJack } from '../../../../src/core/wiring/index.ts';

type Asked = Pick<Task, 'form' | 'right' | 'slips' | 'steps'>;
type Unit = Extract<Task['form'], { form: 'number' }>['unit'];

const asked = (form: Task['form'], right: string, slips: Task['slips'] = []): Asked => ({
  form,
  right,
  slips,
  steps: ['First this.', 'And so that.'],
});
const number = (right: string, unit: Unit, share = 0.05): Asked =>
  asked({ form: 'number', unit, share }, right);

const isRight = (task: Asked, answer: string): boolean => gradeAnswer(task, answer).right;
const refused = (task: Asked, answer: string): string => {
  const { readable, right, sentence } = gradeAnswer(task, answer);
  expect([readable, right], answer).toEqual([false, false]);
  return sentence;
};

describe('A number', () => {
  it('is read with a point or a comma, with a sign, in powers of ten, and without its unit', () => {
    for (const answer of ['5.4', '5,4', '+5.4', '5.40', ' 5.4 ', '54e-1', '0.54E1', '5.4 mA', '5.4mA'])
      expect(isRight(number('5.4', 'mA'), answer), answer).toBe(true);
    for (const answer of ['.54', ',54']) expect(isRight(number('0.54', 'V'), answer), answer).toBe(true);
    expect(isRight(number('-3', 'V'), '-3')).toBe(true);
    expect(isRight(number('-3', 'V'), '3')).toBe(false);
  });

  it('may be in another unit of its kind', () => {
    // 5.4 mA = 0.0054 A = 5400 µA; 2.2 kohm = 2200 ohm; 0.32 ms = 320 µs; 1.5 V = 1500 mV; 1.5 m = 150 cm.
    for (const [right, unit, answers] of [
      ['5.4', 'mA', ['0.0054 A', '5400 µA', '5400 uA', '5400 \u03bcA']],
      ['2200', 'ohm', ['2.2 kohm', '2.2 kΩ', '2.2k\u2126', '2200 Ω', '2200 Ohm', '2200 ohms', '2.2 K ohm']],
      ['0.32', 'ms', ['320 µs', '320us', '0.00032 s']],
      ['1.5', 'V', ['1500 mV']],
      ['1.5', 'm', ['150 cm']],
    ] as const)
      for (const answer of answers) expect(isRight(number(right, unit), answer), answer).toBe(true);
  });

  it('in a unit of another kind cannot be read, and the sentence quotes it', () => {
    for (const [unit, answer] of [
      ['mA', '5.4 V'],
      ['ohm', '5 mA'],
      // A metre is no short way to write a millisecond.
      ['ms', '3 m'],
      ['V', '3 volts of it'],
      ['bytes', '5 mA'],
    ] as const)
      expect(refused(number('5.4', unit), answer)).toBe(
        `Needed: a number in ${unit}. '${answer}' cannot be read.`,
      );
  });

  it('that is no number cannot be read', () => {
    for (const answer of ['abc', 'mA', '-', '.', 'five', '5.4.3 mA', '1 000 ohm'])
      expect(refused(number('5.4', 'mA'), answer)).toMatch(/^Needed: a number in mA\. /);
    expect(refused(number('5.4', 'mA'), '')).toBe('There is no answer yet. Needed: a number in mA.');
    // What is counted needs no unit, so none is asked for.
    expect(refused(number('5', 'links'), 'x')).toBe("Needed: a number. 'x' cannot be read.");
  });

  it('of things that are counted takes their name, one or several', () => {
    for (const unit of ['links', 'leads', 'coins', 'bytes', 'readings'] as const)
      for (const answer of ['7', `7 ${unit}`, `7 ${unit.slice(0, -1)}`])
        expect(isRight(number('7', unit, 0.01), answer), answer).toBe(true);
    expect(gradeAnswer(number('7', 'links', 0.01), '7 leads').readable).toBe(false);
  });

  it('is right within its share of the right one, to the edge and no further', () => {
    // 5 % of 200 is 10.
    const task = number('200', 'ohm', 0.05);
    for (const answer of ['190', '210', '200']) expect(isRight(task, answer), answer).toBe(true);
    for (const answer of ['189.9', '210.1', '0', '-200']) expect(isRight(task, answer), answer).toBe(false);
    // Nothing is within a share of nothing but itself.
    expect(isRight(number('0', 'V'), '0')).toBe(true);
    expect(isRight(number('0', 'V'), '0.001')).toBe(false);
  });

  it('near a known mistake is that mistake, and the right one comes first where both are near', () => {
    const slip = { name: 'doubled', answer: '400', sentence: 'Halve it.' };
    const task = { ...number('200', 'ohm', 0.05), slips: [slip] };
    expect(gradeAnswer(task, '0.39 kohm')).toEqual({
      right: false,
      readable: true,
      mistake: 'doubled',
      sentence: 'Halve it.',
    });
    expect(gradeAnswer(task, '300')).toEqual({
      right: false,
      readable: true,
      sentence: 'Not this, and not a mistake that we know.',
    });
    const near = { ...task, slips: [{ ...slip, answer: '205' }] };
    expect(gradeAnswer(near, '205').right).toBe(true);
  });
});

describe('A choice', () => {
  const task = asked({ form: 'choice', options: ['red', 'green', 'blue'] }, '2');

  it('is the place of an answer, counted from 0', () => {
    expect(gradeAnswer(task, '2')).toEqual({ right: true, readable: true, sentence: 'And so that.' });
    expect(isRight(task, ' 02 ')).toBe(true);
    expect(isRight(task, '0')).toBe(false);
  });

  it('that is not there cannot be read', () => {
    for (const answer of ['3', '-1', '1.5', 'blue', '1 2', '0002'])
      expect(refused(task, answer)).toBe(`Needed: one of the answers. '${answer}' cannot be read.`);
  });
});

describe('Several answers', () => {
  const task = asked({ form: 'several', options: ['a', 'b', 'c', 'd'] }, '0 2');

  it('are the same in any order, and ticked once or twice', () => {
    for (const answer of ['0 2', '2 0', '2  0', '0 2 2', '00 2'])
      expect(isRight(task, answer), answer).toBe(true);
    for (const answer of ['0', '0 1 2', '-'])
      expect(gradeAnswer(task, answer)).toMatchObject({ right: false, readable: true });
  });

  it('may be none, and then a sign says so', () => {
    const none = asked({ form: 'several', options: ['a', 'b'] }, '-');
    expect(isRight(none, '-')).toBe(true);
    expect(isRight(none, '0')).toBe(false);
    expect(refused(none, '')).toBe("There is no answer yet. Needed: the ones that are so, or '-' for none.");
    expect(refused(none, '0 2')).toMatch(/'0 2' cannot be read/);
  });
});

describe('An order', () => {
  const task = asked({ form: 'order', items: ['a', 'b', 'c'] }, '2 0 1');

  it('has every item once', () => {
    expect(isRight(task, '2 0 1')).toBe(true);
    expect(gradeAnswer(task, '0 1 2')).toMatchObject({ right: false, readable: true });
    for (const answer of ['2 0', '2 0 0', '2 0 1 1', 'a b c'])
      expect(refused(task, answer)).toBe(`Needed: all 3 in an order. '${answer}' cannot be read.`);
  });
});

describe('Bytes', () => {
  const task = asked({ form: 'bytes' }, 'C0 04');

  it('are read in small or large letters, with or without 0x, a zero and commas', () => {
    for (const answer of ['C0 04', 'c0 4', '0xC0 0x04', 'C0,04', 'C0, 4', ' c0   04 '])
      expect(isRight(task, answer), answer).toBe(true);
    expect(isRight(task, '04 C0')).toBe(false);
    expect(isRight(task, 'C0')).toBe(false);
  });

  it('that are none cannot be read', () => {
    for (const answer of ['', 'C004', 'G0 04', 'C0 04h', '192 4 B'])
      expect(refused(task, answer)).toMatch(/Needed: bytes in hex such as 'C0 04'\./);
  });
});

describe('A lead', () => {
  const output = makeJack('out', 'din5', 'din');
  const task = asked(
    { form: 'lead', output, input: makeJack('in', 'trs-3.5', 'type-a') },
    '2-sleeve 4-ring 5-tip',
  );

  it('is its conductors in any order, solved', () => {
    for (const answer of ['4-ring 5-tip 2-sleeve', '2-sleeve 4-ring 5-tip'])
      expect(isRight(task, answer), answer).toBe(true);
    expect(isRight(task, '4-ring 5-tip')).toBe(true);
    expect(isRight(task, '4-tip 5-ring')).toBe(false);
  });

  it('with a contact that its jack lacks, or of half a conductor, cannot be read', () => {
    for (const answer of ['', '4', '4-4', 'tip-ring', '4-ring 5', '4>ring'])
      expect(gradeAnswer(task, answer), answer).toMatchObject({ right: false, readable: false });
  });
});
