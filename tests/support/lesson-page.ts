/** A lesson in a real browser: open a part of it with its question answered, so that its widget is on show and awake. */
import type { Locator, Page } from '@playwright/test';
import { answerQuestions, wakeIslands } from './watch.ts';

/** Open one part of a lesson with its question answered. The other parts sleep on. */
export async function openPart(page: Page, address: string, number: number): Promise<Locator> {
  await page.goto(`.${address}`);
  const name = `#part-${number}`;
  const part = page.locator(name);
  await wakeIslands(page, name);
  await answerQuestions(part);
  await wakeIslands(page, name);
  return part;
}
