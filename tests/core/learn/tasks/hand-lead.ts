/** A lead as a learner draws it on paper: wires between named contacts, and what a beeper says. It shares no code with the core. */

/** 'out ring', 'in pin 4'. */
type At = string;

interface Wire {
  from: At;
  to: At;
  whole: boolean;
  /** Ends at which the joint is cold. */
  cold: string[];
}

/** A lead on paper: its wires, and contacts of one plug that touch. */
export interface PaperLead {
  readonly wires: readonly Wire[];
  readonly touching: readonly (readonly [At, At])[];
}

const MIRROR: Readonly<Record<string, string>> = {
  'pin 4': 'pin 5',
  'pin 5': 'pin 4',
  'pin 1': 'pin 3',
  'pin 3': 'pin 1',
};
const endOf = (words: string): 'out' | 'in' => (words.includes('output') ? 'out' : 'in');

/** The plan in a question, each wire 'ring to pin 4', with faults in words put in one after the other. */
export function paperLead(plan: string, faults: readonly string[]): PaperLead {
  const wires = plan.split(', ').map((one): Wire => {
    const [from = '', to = ''] = one.split(' to ');
    return { from: `out ${from}`, to: `in ${to}`, whole: true, cold: [] };
  });
  const touching: [At, At][] = [];
  const wire = (words: string): Wire => {
    const found = wires.find(({ from, to }) => `${from.slice(4)} to ${to.slice(3)}` === words);
    if (!found) throw new Error(`paper: needs a wire of the plan, got '${words}'`);
    return found;
  };
  for (const fault of faults) {
    const words = fault.charAt(0).toLowerCase() + fault.slice(1);
    const end = endOf(/at the (output|input) end/.exec(words)?.[0] ?? '');
    const key = end === 'out' ? 'from' : 'to';
    const [, open] = /^the conductor (.+) is open somewhere$/.exec(words) ?? [];
    const [, cold] = /^the joint of the conductor (.+) is cold/.exec(words) ?? [];
    const [, moved, onto] = /^the conductor (.+) is on (.+) at the/.exec(words) ?? [];
    const [, a, b, how] = /^(.+) and (.+) (touch|are swapped) at the/.exec(words) ?? [];
    if (open) wire(open).whole = false;
    else if (cold) wire(cold).cold.push(end);
    else if (moved) wire(moved)[key] = `${end} ${onto ?? ''}`;
    else if (how === 'touch') touching.push([`${end} ${a ?? ''}`, `${end} ${b ?? ''}`]);
    else if (how)
      for (const one of wires) {
        if (one[key] === `${end} ${a ?? ''}`) one[key] = `${end} ${b ?? ''}`;
        else if (one[key] === `${end} ${b ?? ''}`) one[key] = `${end} ${a ?? ''}`;
      }
    else if (/wired mirrored/.test(words))
      for (const one of wires)
        one[key] = `${end} ${MIRROR[one[key].slice(end.length + 1)] ?? one[key].slice(end.length + 1)}`;
    else throw new Error(`paper: needs a fault that is known, got '${fault}'`);
  }
  return { wires, touching };
}

/** Whether two contacts are joined, while one plug is moved or none is: found by walking from the one along all that joins. */
function joined({ wires, touching }: PaperLead, a: At, b: At, moved: string | undefined): boolean {
  const edges = [
    ...wires
      .filter((one) => one.whole && !one.cold.some((end) => end === moved))
      .map(({ from, to }) => [from, to]),
    ...touching,
  ];
  const reached = new Set([a]);
  for (let before = 0; before !== reached.size;) {
    before = reached.size;
    for (const [one = '', other = ''] of edges) {
      if (reached.has(one)) reached.add(other);
      if (reached.has(other)) reached.add(one);
    }
  }
  return reached.has(b);
}

/** What a beeper says at a place in words: 'pin 4 at the output end to ring at the input end, the plug at the input end moved'. */
export function heard(lead: PaperLead, place: string): 'beeps' | 'silent' | 'flickers' {
  const words = place.charAt(0).toLowerCase() + place.slice(1);
  const [, one = '', oneEnd = '', other = '', otherEnd = '', moved] =
    /^(.+) at the (output|input) end to (.+) at the (output|input) end(?:, the plug at the (output|input) end moved)?$/.exec(
      words,
    ) ?? [];
  const [a, b] = [`${endOf(oneEnd)} ${one}`, `${endOf(otherEnd)} ${other}`];
  if (!joined(lead, a, b, undefined)) return 'silent';
  return moved === undefined || joined(lead, a, b, endOf(moved)) ? 'beeps' : 'flickers';
}

/** Two faults in one answer, taken apart; one fault stays as it is. */
export function faultsIn(answer: string): readonly string[] {
  return answer.split(/(?<=open somewhere) and (?=the conductor)/);
}

/**
 * The fewest readings of two contacts each that only the planned groups of contacts answer: every choice of readings is tried
 * against every other way in which the contacts could be joined. `planned` names the group of each contact.
 */
export function fewestByTrying(planned: readonly number[]): number {
  const pairs = planned.flatMap((_, a) => planned.slice(a + 1).map((_one, at) => [a, a + 1 + at] as const));
  const maskOf = (groups: readonly number[]): number =>
    pairs.reduce((mask, [a, b], at) => (groups[a] === groups[b] ? mask | (1 << at) : mask), 0);
  const all = planned.reduce<readonly (readonly number[])[]>(
    (made) =>
      made.flatMap((one) => [...Array(Math.max(-1, ...one) + 2).keys()].map((group) => [...one, group])),
    [[]],
  );
  const own = maskOf(planned);
  const differences = all.map((one) => maskOf(one) ^ own).filter((one) => one !== 0);
  let fewest = pairs.length;
  for (let chosen = 0; chosen < 2 ** pairs.length; chosen += 1) {
    let count = 0;
    for (let rest = chosen; rest !== 0; rest &= rest - 1) count += 1;
    if (count < fewest && differences.every((one) => (one & chosen) !== 0)) fewest = count;
  }
  return fewest;
}
