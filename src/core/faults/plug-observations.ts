/** What a reader may look at by eye at the plugs of a lead of the fault bench. */
import { SIDES, familyOf } from '../wiring/index.ts';
import type { Lead, Link, Side } from '../wiring/index.ts';
import { leadOf } from './board-state.ts';
import { look } from './observation.ts';
import type { Observation } from './observation.ts';

/** Ends of a lead, as seen along the board. */
const END_WORDS: Readonly<Record<Side, string>> = { from: 'sending', to: 'receiving' };

const BOTH_PLUGS = ['from plug', 'to plug'] as const;

/** Looks at the plugs of a lead, by its place along the board. `good` is the lead with nothing wrong. */
export function atPlugs(good: Lead, at: number): readonly Observation[] {
  const name = `lead ${at + 1}`;
  const phone = SIDES.filter((side) => familyOf(good[side].connector) !== 'din');
  return [
    look(
      `plugs ${name}`,
      `Look at the phone plugs of ${name}: two black rings, or one?`,
      phone.map((side) => `${side} plug` as const),
      ({ links }) => {
        const lead = leadOf(links[at] as Link);
        const isTs = SIDES.some((side) => familyOf(lead[side].connector) === 'ts');
        return isTs ? 'one ring: a TS plug' : 'two rings on each';
      },
    ),
    look(
      `home ${name}`,
      `Look at both ends of ${name}: are the plugs pushed home?`,
      BOTH_PLUGS,
      ({ loose }) => {
        const side = loose[at];
        return side ? `not at its ${END_WORDS[side]} end` : 'both are';
      },
    ),
    look(
      `moved ${name}`,
      `Move one plug of ${name} at a time while presets are called.`,
      BOTH_PLUGS,
      ({ cold }) => {
        const side = cold[at]?.side;
        return side ? `it comes and goes at its ${END_WORDS[side]} end` : 'no change';
      },
    ),
  ];
}
