/** How a board stands, in one line. */
import { boardGraph, onlyCarries, speaks } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import type { Grade } from '../verdict/index.ts';
import type { BoardCheck } from './check.ts';

/** The line and its weight; 'doubtful' too where nothing is wrong yet but something is still to be done. */
interface Standing {
  readonly grade: Grade;
  readonly label: string;
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** The worst first; that a board works is said only of links that are there, and of devices that have a channel. */
export function boardStanding(plan: Plan, { findings, outcomes }: BoardCheck): Standing {
  const errors = findings.filter(({ severity }) => severity === 'error').length;
  const warnings = findings.filter(({ severity }) => severity === 'warning').length;
  if (outcomes.some(({ danger }) => danger !== undefined))
    return { grade: 'bad', label: 'Do not connect: a part would be over its rating' };
  if (plan.links.length > 0 && outcomes.every(({ outcome }) => outcome === 'unsolved'))
    return { grade: 'doubtful', label: 'Links not solved' };
  if (plan.devices.length < 2) return { grade: 'doubtful', label: 'One device: add what it is to talk to' };
  if (errors > 0) return { grade: 'bad', label: `${count(errors, 'thing stops', 'things stop')} this board` };
  if (plan.links.length === 0)
    return { grade: 'doubtful', label: 'No links yet: join an output to an input' };
  const listeners = boardGraph(plan).devices.filter(
    (device) => !onlyCarries(device) && !speaks(device) && device.talks === 'jacks',
  );
  if (listeners.length > 0 && listeners.every(({ channel }) => channel === 0))
    return { grade: 'doubtful', label: 'Every link works; no device has a channel yet' };
  return warnings > 0
    ? { grade: 'doubtful', label: `Works, with ${count(warnings, 'doubt', 'doubts')}` }
    : { grade: 'good', label: 'This board works' };
}
