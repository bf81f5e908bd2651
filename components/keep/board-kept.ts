/** The board plan that is kept in this browser, for a page that only reads it. */
import type { Plan } from '../../src/core/plan/index.ts';
import { planFromText } from './plan-files.ts';
import { stored } from './shelf.ts';

/** The plan, or undefined where none is kept or it cannot be read. */
export function readBoard(): Plan | undefined {
  const { now } = stored('board');
  return now && planFromText(now.text, 'The board kept in this browser').plan;
}
