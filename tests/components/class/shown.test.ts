/** What a class sees, rendered: worksheets, keys, marks, and what a student is told. */
import { describe, expect, test } from 'vitest';
import AnswersOf from '../../../components/class/AnswersOf.svelte';
import HandIn from '../../../components/class/HandIn.svelte';
import MarkedClass from '../../../components/class/MarkedClass.svelte';
import PaperKey from '../../../components/class/PaperKey.svelte';
import PaperSheet from '../../../components/class/PaperSheet.svelte';
import SameNumber from '../../../components/class/SameNumber.svelte';
import SetTask from '../../../components/class/SetTask.svelte';
import WhoAreYou from '../../../components/class/WhoAreYou.svelte';
import { markResults, papersOf } from '../../../src/core/class/index.ts';
import type { Paper, Result, WorkSet } from '../../../src/core/class/index.ts';
import { CLASS_SET, resultOf, slipOf, studentResult } from '../../support/classroom.ts';
import { taskOf } from '../../support/answering.ts';
import { allOf, htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const nothing = (): void => undefined;

const setOf = (items: WorkSet['items']): WorkSet => ({ ...CLASS_SET, items });
const paperOf = (...items: WorkSet['items']): Paper => papersOf(setOf(items), 1)[0] as Paper;

describe('A worksheet', () => {
  test('has the number, the version, and each task with its code, in order', () => {
    const paper = papersOf(CLASS_SET, 28)[27] as Paper;
    const words = wordsOf(htmlOf(PaperSheet, { paper, title: 'Loop test' }));
    expect(words).toContain('Version AB, number 28');
    const places = paper.tasks.map(({ code }) => words.indexOf(code));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places.every((at) => at > 0)).toBe(true);
  });

  test('gives nothing of the answer away: no right lead, number or byte stands on it', () => {
    for (const paper of papersOf(CLASS_SET, 10)) {
      const words = wordsOf(htmlOf(PaperSheet, { paper, title: 'Loop test' }));
      for (const { task, right } of paper.tasks) {
        if (task.form.form === 'lead') expect(words).not.toContain(right[0]);
        if (task.form.form === 'number') expect(words).not.toMatch(new RegExp(`\\b${task.right}\\b`));
      }
    }
  });

  test('has a box for every option, a line for a number, and plugs for a lead', () => {
    const html = htmlOf(PaperSheet, {
      title: 'Boxes',
      paper: paperOf(
        { kind: 'missing-line', level: 2, count: 1 },
        { kind: 'loop-current', level: 2, count: 1 },
        { kind: 'lay-lead', level: 2, count: 1 },
      ),
    });
    // Four lines to choose from, and 'no plain lead can'.
    expect(html.match(/class="box[ "]/g)).toHaveLength(5);
    expect(wordsOf(html)).toContain('Answer: mA');
    expect(wordsOf(html)).toContain('plug at the sender');
  });

  test('has the plugs of a lead side by side, so that a task fits on a page', () => {
    const html = htmlOf(PaperSheet, {
      title: 'Cut',
      paper: paperOf({ kind: 'cut-conductors', level: 2, count: 1 }),
    });
    const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(html) ?? [];
    expect(Number(width)).toBeGreaterThan(Number(height));
  });

  test('shows a worked example at level 0, and at level 1 all steps but the last', () => {
    const worked = paperOf({ kind: 'loop-current', level: 0, count: 1 });
    const html = htmlOf(PaperSheet, { paper: worked, title: 'Worked' });
    expect(wordsOf(html)).toContain('Worked example.');
    const last = paperOf({ kind: 'loop-current', level: 1, count: 1 });
    const steps = last.tasks[0]?.task.steps ?? [];
    const words = wordsOf(htmlOf(PaperSheet, { paper: last, title: 'Last' }));
    expect(words).toContain(steps[0]);
    expect(words).not.toContain(steps.at(-1));
  });
});

describe('A key', () => {
  test('has every right answer and the way to it, task by task', () => {
    const paper = papersOf(CLASS_SET, 2)[1] as Paper;
    const words = wordsOf(htmlOf(PaperKey, { paper, title: 'Loop test' }));
    expect(words).toContain('Key: Loop test, version B, number 2');
    for (const { code, task, right } of paper.tasks) {
      expect(words).toContain(code);
      for (const one of right) expect(words).toContain(one);
      for (const step of task.steps) expect(words).toContain(wordsOf(step));
    }
  });
});

describe('Marks', () => {
  const results = [studentResult(8), studentResult(28), { ...studentResult(3), name: 'Ben' }];
  const marked = markResults(
    results.map((value) => ({ source: `file ${value.number}`, reading: { ok: true, value } })),
  );
  const rows = marked.rows.flatMap((row) => ('result' in row ? [row] : []));
  const [one] = marked.sets;
  if (!one) throw new Error('marks: needs one Set');
  const html = htmlOf(MarkedClass, { marked: one, rows });

  test('name students by number, who is missing, and what to teach again', () => {
    const words = wordsOf(html);
    expect(words).toContain('3 students handed in. No result from numbers 1, 2, 4, 5, 6, 7, 9,');
    // How many are in the class is not known until somebody types it.
    expect(words).toContain('26, 27. This looks at numbers up to 28, the highest that handed in.');
    expect(words).toContain('Students in the class list (0: not known)');
    expect(words).toContain('2 of 3: pair swapped (');
    const [students] = tablesOf(html);
    expect(students?.rows.map((row) => row.slice(0, 4))).toEqual([
      ['3', 'Ben', '4', '4'],
      ['8', '', '2', '2'],
      ['28', '', '5', '5'],
    ]);
    expect(students?.rows[1]?.slice(4)).toEqual(['wrong', 'right', 'wrong', 'right', 'wrong']);
  });

  test('say that results share a number, and count numbers and results apart', () => {
    const two = [
      { ...studentResult(8), name: 'Robin' },
      { ...resultOf(CLASS_SET, 8), name: 'Pat' },
      studentResult(9),
    ];
    const all = markResults(two.map((value, at) => ({ source: `f ${at}`, reading: { ok: true, value } })));
    const [set] = all.sets;
    if (!set) throw new Error('marks: needs one Set');
    const given = all.rows.flatMap((row) => ('result' in row ? [row] : []));
    const words = wordsOf(htmlOf(MarkedClass, { marked: set, rows: given }));
    expect(words).toContain(
      '3 different results came from 2 numbers: some share a number, see ‘Worth a question’. Each result counts.',
    );
  });

  test('count each task', () => {
    expect(tablesOf(html)[1]?.rows[0]?.slice(1)).toEqual(['1', '0', '0', '2', '0', '0']);
  });

  test('show the answers of a student with what is right beside the wrong ones', () => {
    const [first] = rows;
    const words = wordsOf(htmlOf(AnswersOf, { tasks: first?.tasks ?? [] }));
    expect(words).toContain('wrong : ');
    expect(words).toContain('pair swapped: ');
    expect(words.match(/Right: /g)).toHaveLength(3);
  });
});

describe('A student', () => {
  test('is told what the Set is before it begins', () => {
    const words = wordsOf(htmlOf(WhoAreYou, { set: CLASS_SET, onbegin: nothing }));
    expect(words).toContain('5 tasks. Your teacher tells you what was right.');
  });

  const task = taskOf('loop-current.2.7');
  const shown = (show: WorkSet['show'], attempts: Result['attempts']): string =>
    htmlOf(SetTask, { task, show, attempts, onanswer: nothing, ongo: nothing, back: true });
  const given = (answer: string, hints = 0) => ({ task: 'loop-current.2.7', answer, hints, day: 1 });

  test('is told nothing of an answer where it is told at the end, and gets no hint', () => {
    const html = shown('end', [given(slipOf(task, 'LED forgotten'))]);
    expect(allOf(html, 'button')).toEqual(['Keep this answer and go on', 'Leave it for now', 'Back']);
    expect(html).toContain(`value="${slipOf(task, 'LED forgotten')}"`);
    expect(wordsOf(html)).not.toContain('The LED keeps about 1.4 V. What is left');
  });

  test('is told the mistake where each is told, may try once more, and then sees the way', () => {
    const wrong = given(slipOf(task, 'LED forgotten'), 1);
    const once = shown('each', [wrong]);
    expect(wordsOf(once)).toContain('Not yet: one more try');
    expect(allOf(once, 'button')).toContain('Next hint (1 of 3 taken)');
    const twice = shown('each', [wrong, wrong]);
    expect(wordsOf(twice)).toContain('The way to it');
    expect(allOf(twice, 'button')).toEqual(['Go on', 'Back']);
    expect(wordsOf(shown('each', [given(task.right)]))).toContain('Right');
  });

  const handIn = (show: WorkSet['show'], handedIn: boolean): string =>
    wordsOf(
      htmlOf(HandIn, {
        result: {
          ...resultOf({ ...CLASS_SET, show }, 8),
          attempts: resultOf({ ...CLASS_SET, show }, 8).attempts.slice(1),
        },
        handedIn,
        ongo: nothing,
        onhandin: nothing,
        onanother: nothing,
      }),
    );

  test('is told beside the buttons that handing in is for good, and nothing of it once it is done', () => {
    const warning =
      'Each of them hands your work in, the QR code too: after that you cannot change your answers';
    for (const show of ['each', 'end', 'never'] as const) {
      expect(handIn(show, false)).toContain(warning);
      expect(handIn(show, true)).not.toContain(warning);
    }
  });

  test('is asked whose work it is where the number has some, and is shown none of it', () => {
    const works = [
      { result: { ...resultOf(CLASS_SET, 7), name: 'Robin' }, handedIn: true },
      { result: { ...resultOf(CLASS_SET, 7), attempts: [] }, handedIn: false },
    ];
    const given = { works, ongoon: nothing, onafresh: nothing, onback: nothing };
    const html = htmlOf(SameNumber, { ...given, name: 'Pat' });
    expect(wordsOf(html)).toContain(
      'This device already has work under number 7, of Robin (handed in), and of someone who gave no name (0 of 5 answered). Is it yours?',
    );
    expect(allOf(html, 'button')).toEqual([
      'I am Robin: go on',
      'It is mine: go on with it',
      'Start new work for Pat, another student',
      'Type number and name again',
    ]);
    // Two without a name could not be kept apart: whoever gave none is sent back for one.
    const nameless = htmlOf(SameNumber, { ...given, name: '' });
    expect(allOf(nameless, 'button')).not.toContain('I am someone else: start new work');
    expect(wordsOf(nameless)).toContain('If it is not yours, type your number again, with your name.');
    const robins = htmlOf(SameNumber, { ...given, works: works.slice(0, 1), name: '' });
    expect(allOf(robins, 'button')).toContain('I am someone else: start new work');
  });

  test('sees what is not answered before handing in, and marks only after that and only where the Set says so', () => {
    expect(handIn('end', false)).toContain('1. Lay a lead: not answered Go to task 1');
    expect(handIn('end', false)).toContain('One task has no answer yet.');
    expect(handIn('end', false)).not.toContain('right');
    expect(handIn('end', true)).not.toContain('no answer yet');
    expect(handIn('end', true)).toContain('4 of 5 right, 4 of them at once and without a hint.');
    expect(handIn('end', true)).toContain('1. Lay a lead: no answer');
    expect(handIn('never', true)).not.toContain(' right');
  });
});
