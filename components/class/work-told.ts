/** Work on a Set, as it is handed over to others: as a link, and as what a page around this one is told. */
import { countOf, resultHash, tasksOfSet } from '../../src/core/class/index.ts';
import type { Result } from '../../src/core/class/index.ts';
import type { WorkTold } from '../parts/tell-answer.ts';
import { siteOfPage } from '../parts/with-base.ts';
import { marksOf } from './work.ts';
import { answeredIn } from './work.ts';

/** The address that marks a student's work. */
export async function linkToWork(result: Result): Promise<string> {
  return `${siteOfPage()}/mark/${await resultHash(result)}`;
}

/** What is told of work: what is right only as far as the student sees it too, the answers only once they are handed in. */
export async function toldOfWork(result: Result, handedIn: boolean): Promise<WorkTold> {
  const { set, number } = result;
  const seen = set.show === 'each' || (set.show === 'end' && handedIn);
  return {
    title: set.title,
    number,
    tasks: tasksOfSet(set, number).length,
    answered: answeredIn(result).size,
    right: seen ? countOf(marksOf(result), 'right', 'helped') : undefined,
    handedIn,
    link: handedIn ? await linkToWork(result) : undefined,
  };
}
