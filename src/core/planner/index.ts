/** The cheapest plan that passes every check. The door of the floor: what others may use, and nothing else. */
export { boardFacts } from './facts.ts';
export { factRows, headWords, kindWords } from './plan-facts.ts';
export { planBoard } from './plan-it.ts';
export type { PlanAnswer } from './plan-it.ts';
export { MOST_EXACT } from './search.ts';
export type { PlanProgress } from './steps.ts';
