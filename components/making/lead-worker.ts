/** 'Which lead?' off the main thread: every way to lay the conductors between two jacks is solved. */
import { findLead, shopWords } from '../../src/core/verdict/index.ts';
import type { Conductor, Jack } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** The two jacks. */
export interface LeadOrder {
  readonly output: Jack;
  readonly input: Jack;
}

/** The plainest lead that works, in shop words too, or none; and the sentence of the search. */
export interface BestLead {
  readonly sentence: string;
  readonly conductors: readonly Conductor[] | undefined;
  readonly shop: string;
}

answerOrders<LeadOrder, BestLead>(({ output, input }) => {
  const { sentence, leads } = findLead(output, input);
  const best = leads[0];
  return {
    sentence,
    conductors: best?.conductors,
    shop: best ? shopWords(output, input, best.conductors) : '',
  };
});
