/** A task on a page, answered as a reader would. */
import type { Page } from '@playwright/test';
import { makeTask, readTaskId } from '../../src/core/learn/index.ts';
import type { Task } from '../../src/core/learn/index.ts';

/** The task of a name. */
export function taskOf(name: string): Task {
  const id = readTaskId(name);
  const task = typeof id === 'string' ? id : makeTask(id);
  if (typeof task === 'string') throw new Error(task);
  return task;
}

/** The task on the page, by the address that it names. */
export async function taskOn(page: Page): Promise<Task> {
  return taskOf((await page.locator('a[href*="/practice/#task="]').textContent()) ?? '');
}

/** Enter an answer as a reader would, whatever the form. */
export async function enter(page: Page, task: Task, answer: string): Promise<void> {
  const { form } = task;
  const places = answer === '-' ? [] : answer.split(' ');
  switch (form.form) {
    case 'choice':
      return page.getByRole('radio', { name: form.options[Number(answer)] ?? '', exact: true }).check();
    case 'several':
      for (const [at, option] of form.options.entries())
        await page
          .getByRole('checkbox', { name: option, exact: true })
          .setChecked(places.includes(String(at)));
      return;
    case 'order': {
      const shown = form.items.map((_, at) => at);
      for (const [to, item] of places.map(Number).entries())
        for (let at = shown.indexOf(item); at > to; at -= 1) {
          await page.getByRole('button', { name: `${form.items[item] ?? ''}: up`, exact: true }).click();
          shown.splice(at - 1, 0, ...shown.splice(at, 1));
        }
      return;
    }
    case 'lead':
      for (const pair of places) {
        const [from = '', to = ''] = pair.split('-');
        const words = (contact: string): string => (/^\d$/.test(contact) ? `pin ${contact}` : contact);
        await page.getByLabel('Sender', { exact: true }).selectOption({ label: words(from) });
        await page.getByLabel('Listener', { exact: true }).selectOption({ label: words(to) });
        await page.getByRole('button', { name: 'Join or take apart' }).click();
      }
      return;
    default:
      return page.getByRole('textbox', { name: 'Your answer' }).fill(answer);
  }
}
