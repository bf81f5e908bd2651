/** What a reader knows of an unmarked jack before any reading. */
import type { Evidence } from '../../src/core/readings/index.ts';

/** Nothing but that it is a 3.5 mm TRS jack, and an everyday meter at hand: the device can be switched on, and sends clock. `more` is known besides. */
export function jackEvidence(more: Partial<Evidence> = {}): Evidence {
  return {
    connector: 'trs-3.5',
    marked: 'nothing',
    menu: [],
    meter: 'usual',
    canSwitchOn: true,
    canStreamClock: true,
    ...more,
  };
}
