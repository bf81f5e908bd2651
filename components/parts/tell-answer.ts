/** The answer of a page, told to whoever listens: a page of somebody else that a tool is embedded in. */
import type { Grade } from '../../src/core/verdict/index.ts';

/** Say what the page shows now, as its slim line says it; `grade` is undefined where nothing is judged yet. */
export function tellAnswer(grade: Grade | undefined, words: string): void {
  document.dispatchEvent(new CustomEvent('five-milliamps-answer', { detail: { grade, words } }));
}
