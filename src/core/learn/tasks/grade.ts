/** Grading: whatever truly is right is right; a known mistake is named and met by its own sentence. */
import { pointsOf, readAnswer } from './answers.ts';
import { gradeLead } from './grade-lead.ts';
import type { Form, Grading, Task } from './task.ts';

const UNKNOWN = 'Not this, and not a mistake that we know.';

/** Judge an answer to a task. One that cannot be read says what was expected, and is no attempt. */
export function gradeAnswer(task: Pick<Task, 'form' | 'right' | 'slips' | 'steps'>, text: string): Grading {
  const { form, right, slips } = task;
  const said = readAnswer(form, text);
  if ('problem' in said) return { right: false, readable: false, sentence: said.problem };
  if (form.form === 'lead') return gradeLead(said.answer, form.output, form.input);
  const marked = form.form === 'rubric' ? ({ selfMarked: true } as const) : {};
  if (isSame(form, said.answer, right))
    return { right: true, readable: true, sentence: task.steps.at(-1) ?? '', ...marked };
  const slip = slips.find(({ answer }) => isSame(form, said.answer, answer));
  return slip
    ? { right: false, readable: true, mistake: slip.name, sentence: slip.sentence, ...marked }
    : { right: false, readable: true, sentence: UNKNOWN, ...marked };
}

/** Whether two answers say the same: within the share of the task where they are numbers, by their points where they are texts. */
function isSame(form: Form, one: string, other: string): boolean {
  if (form.form === 'rubric') return pointsOf(one) === pointsOf(other);
  if (form.form !== 'number') return one === other;
  return Math.abs(Number(one) - Number(other)) <= form.share * Math.abs(Number(other));
}
