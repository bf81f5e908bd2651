/** What a board does: whether bytes arrive, by solving each link, and what the player sees. */
import { checkLink } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';
import { SENDER_CHANNEL } from './board-faults.ts';
import type { BoardState } from './board-state.ts';

/** How bytes come through to a pedal. */
type Arrival = 'arrives' | 'comes and goes' | 'nothing';

/** What the player sees at a pedal when a preset is called. */
export type Symptom =
  | 'the right preset'
  | 'nothing'
  | 'comes and goes when leads are moved'
  | 'the preset next to it'
  | 'the right number in the wrong bank';

/** Whether a solved link carries bytes: its outcome is 'flows', or 'weak' on a good day. */
function carries(link: Link): boolean {
  const known = CARRIES.get(link);
  if (known !== undefined) return known;
  const { outcome } = checkLink(link, 'outcome');
  const found = outcome === 'flows' || outcome === 'weak';
  CARRIES.set(link, found);
  return found;
}

/** Links that were solved: most faults leave most links as they were. */
const CARRIES = new WeakMap<Link, boolean>();

/** How bytes come through to each pedal, in order along the chain. Dead pedals receive nothing and pass nothing on. */
export function arrivals(state: BoardState): readonly Arrival[] {
  let before: Arrival = state.senderOn ? 'arrives' : 'nothing';
  return state.links.map((link, at) => {
    const passed = at === 0 || (state.thruAlive && state.softThruOn);
    const whole =
      passed && before !== 'nothing' && !state.inOut[at] && state.pedalsOn[at] === true && carries(link);
    before = !whole
      ? 'nothing'
      : state.cold[at] || before === 'comes and goes'
        ? 'comes and goes'
        : 'arrives';
    return before;
  });
}

/** What the player sees at each pedal. */
export function symptomsOf(state: BoardState): readonly Symptom[] {
  return arrivals(state).map((arrival, at): Symptom => {
    const deaf = !state.listening[at] || state.channels[at] !== SENDER_CHANNEL || state.filtered;
    if (arrival === 'nothing' || deaf) return 'nothing';
    if (arrival === 'comes and goes') return 'comes and goes when leads are moved';
    if (state.programStep !== 0) return 'the preset next to it';
    return state.bankSent ? 'the right preset' : 'the right number in the wrong bank';
  });
}
