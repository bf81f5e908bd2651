import { guide, observe } from '../../src/core/faults/index.ts';
import type { HiddenFault, Seen } from '../../src/core/faults/index.ts';

/** What the guide would check of a hidden fault, one look after the other, until one name is left. */
export function followGuide(hidden: HiddenFault): readonly Seen[] {
  const made: Seen[] = [];
  for (;;) {
    const { observation, suspects } = guide(hidden.board, hidden.symptoms, made);
    if (!observation || suspects.length === 1) return made;
    made.push(observe(hidden, observation.id));
  }
}
