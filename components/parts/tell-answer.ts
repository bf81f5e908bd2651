/** What a page has to tell to whoever listens: a page of somebody else that it is embedded in (`public/embed.js` hands it on). */
import type { Grade } from '../../src/core/verdict/index.ts';

function tell(detail: Readonly<Record<string, unknown>>): void {
  document.dispatchEvent(new CustomEvent('five-milliamps-tells', { detail }));
}

/** Say what the page shows now, as its slim line says it; `grade` is undefined where nothing is judged yet. */
export function tellAnswer(grade: Grade | undefined, words: string): void {
  tell({ kind: 'answer', grade, words });
}

/** How far a student is with a Set. */
export interface WorkTold {
  readonly title: string;
  /** The number in the class list. */
  readonly number: number;
  readonly tasks: number;
  readonly answered: number;
  /** Tasks that are right, where the student is told so too. */
  readonly right: number | undefined;
  readonly handedIn: boolean;
  /** The address that marks the work, once it is handed in. */
  readonly link: string | undefined;
}

/** Say how far the student is. */
export function tellWork(work: WorkTold): void {
  tell({ kind: 'work', ...work });
}
