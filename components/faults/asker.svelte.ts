/** A question to the worker that is asked again whenever it changes, as state that a component can read. */
import { onMount } from 'svelte';
import { askLatest } from '../parts/latest.ts';
import type { Asker } from '../parts/latest.ts';
import type { FaultOrder } from './orders.ts';

/** The newest answer, whether one is on its way, and what went wrong. */
export interface Asked<Answer> {
  readonly answer: Answer | undefined;
  readonly busy: boolean;
  readonly problem: string;
}

/** Ask for what `order` gives, now and at every change; `heard` is called after each answer. For a component's start only. */
export function askFaults<Answer>(order: () => FaultOrder, heard: () => void): Asked<Answer> {
  let answer = $state.raw<Answer>();
  let busy = $state(true);
  let problem = $state('');
  let asker = $state.raw<Asker<FaultOrder>>();
  onMount(() => {
    const made = askLatest<FaultOrder, Answer>(
      new Worker(new URL('./faults-worker.ts', import.meta.url), { type: 'module' }),
      (given) => {
        answer = given;
        busy = false;
        heard();
      },
      (text) => {
        problem = text;
        busy = false;
      },
    );
    asker = made;
    return made.stop;
  });
  $effect(() => {
    const now = order();
    if (!asker) return;
    busy = true;
    problem = '';
    asker.ask(now);
  });
  return {
    get answer() {
      return answer;
    },
    get busy() {
      return busy;
    },
    get problem() {
      return problem;
    },
  };
}
