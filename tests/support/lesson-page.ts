/** A lesson in a real browser: open a part of it with its question answered, so that its widget is on show and awake. */
import { expect, type Locator, type Page } from '@playwright/test';
import { answerQuestion, wakeIslands } from './watch.ts';

/** Answer the question of a part, so that what it hides is shown. */
async function answerPart(part: Locator): Promise<void> {
  const question = part.locator('.predict');
  await answerQuestion(question);
  await expect(question.locator('.explanation')).toBeVisible();
}

/** Open one part of a lesson with its question answered. */
export async function openPart(page: Page, address: string, number: number): Promise<Locator> {
  await page.goto(`.${address}`);
  await wakeIslands(page);
  const part = page.locator(`#part-${number}`);
  await answerPart(part);
  await wakeIslands(page);
  return part;
}
