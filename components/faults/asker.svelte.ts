/** A question to the fault bench's worker that is asked again whenever it changes. */
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import faultsWorker from './faults-worker.ts?worker&url';
import type { FaultOrder } from '../../src/core/faults/index.ts';

/** Ask for what `order` gives, now and at every change; `heard` is called after each answer. For a component's start only. */
export function askFaults<Answer>(
  order: () => FaultOrder,
  heard: (answer: Answer) => void,
): Background<FaultOrder, Answer> {
  const asked = new Background<FaultOrder, Answer>(() => startWorker(faultsWorker), heard);
  $effect(() => asked.ask(order()));
  return asked;
}
