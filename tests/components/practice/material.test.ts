/** What tools with a task on them render while the answer is asked, and what once the task is over: those that answer at once. */
import { describe, expect, test } from 'vitest';
import BoardStill from '../../../components/board/BoardStill.svelte';
import { putProbe, probesOn, FIRST_PROBES } from '../../../components/meter/probes.ts';
import LeadTestTask from '../../../components/practice/LeadTestTask.svelte';
import MeterTask from '../../../components/practice/MeterTask.svelte';
import { onTool } from '../../../components/practice/on-tool.ts';
import { makeTask } from '../../../src/core/learn/index.ts';
import type { Task } from '../../../src/core/learn/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';
import { allOf, htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

function taskOf(kind: string, seed: number): Task {
  const task = makeTask({ kind, level: 2, seed });
  if (typeof task === 'string') throw new Error(task);
  return task;
}

const props = (task: Task, over: boolean) => ({ task, answer: '', over, onanswer: () => undefined });

describe('a lead to be tested', () => {
  const task = taskOf('four-beeps', 0);

  test('is untouched at first: each row waits for the probes', () => {
    const html = htmlOf(LeadTestTask, props(task, false));
    const [table] = tablesOf(html);
    expect(table?.rows.length).toBeGreaterThan(3);
    expect(table?.rows.every(([, , meter]) => meter === 'Touch')).toBe(true);
    expect(wordsOf(html)).not.toMatch(/explanation|as planned/i);
  });

  test('tells every reading, and what explains them, once the task is over', () => {
    const html = htmlOf(LeadTestTask, props(task, true));
    expect(tablesOf(html)[0]?.rows.every(([, , meter]) => /beeps|silent|flickers/.test(meter ?? ''))).toBe(
      true,
    );
    expect(wordsOf(html)).toMatch(/smallest explanation|Tested: as planned/);
  });
});

describe('a lead under the meter', () => {
  const task = taskOf('strangers-lead', 1);

  test('is read without a word on why until the task is over', () => {
    const before = wordsOf(htmlOf(MeterTask, props(task, false)));
    const after = wordsOf(htmlOf(MeterTask, props(task, true)));
    expect(before).toContain('Red probe on');
    expect(after.startsWith(before)).toBe(true);
    expect(after.length).toBeGreaterThan(before.length);
  });

  test('has no power to switch on', () => {
    expect(allOf(htmlOf(MeterTask, props(task, false)), 'legend')).not.toContain('Power');
  });
});

describe('the probes', () => {
  const under = { kind: 'lead', lead: makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip')) } as const;

  test('stand on contacts that there are, never both on one', () => {
    const at = probesOn(under, FIRST_PROBES);
    expect(at).toEqual({ red: { side: 'to', contact: 'ring' }, black: { side: 'to', contact: 'sleeve' } });
    const same = { side: 'to', contact: 'tip' } as const;
    expect(probesOn(under, { red: same, black: same })).toEqual({
      red: same,
      black: { side: 'to', contact: 'sleeve' },
    });
  });

  test('change places when one is put on the contact of the other', () => {
    const at = { red: { side: 'from', contact: '4' }, black: { side: 'from', contact: '2' } } as const;
    expect(putProbe(at, 'red', at.black)).toEqual({ red: at.black, black: at.red });
    expect(putProbe(at, 'black', { side: 'to', contact: 'tip' })).toEqual({
      red: at.red,
      black: { side: 'to', contact: 'tip' },
    });
  });
});

describe('a board to be read', () => {
  test('is drawn with its devices and leads, and nothing of what they do', () => {
    const { plan } = onTool(taskOf('how-deep', 1), 'board');
    const html = htmlOf(BoardStill, { plan });
    for (const { name } of plan.devices) expect(wordsOf(html)).toContain(name);
    expect(allOf(html, 'li')).toHaveLength(plan.links.flatMap(({ inputs }) => inputs).length);
    expect(wordsOf(html)).not.toMatch(/from the sender|Works|mA/);
    expect(html).not.toMatch(/class="[^"]*\b(?:good|bad|doubtful)\b/);
  });

  test('is none for another tool', () => {
    expect(() => onTool(taskOf('how-deep', 1), 'meter')).toThrow(
      "meter: needs a task for it, got one for 'board'",
    );
    expect(() => onTool(taskOf('loop-current', 1), 'board')).toThrow(
      "board: needs a task for it, got one for 'none'",
    );
  });
});
