/** The verdict in words: one line, then the way of the current step by step, then what to change. */
import { contactWords } from '../wiring/connectors.ts';
import type { Contact } from '../wiring/connectors.ts';
import type { Jack, Link } from '../wiring/link.ts';
import { makeLead } from '../wiring/link.ts';
import { styleEntry } from '../wiring/styles.ts';
import { quickOutcome } from './check.ts';
import type { InputVerdict } from './judge.ts';
import { lineByLine } from './needed.ts';
import type { Note, Outcome } from './outcomes.ts';
import { currentPath } from './path.ts';
import type { Reach } from './reach.ts';
import type { Spot, StateReading } from './readings.ts';
import { sayAmperes, sayContact, sayInput, sayList, sayVolts } from './speak.ts';
import { stepsAlong } from './steps.ts';

/** One step of the explanation; `spot` is the contact it ends at, for the figure. */
export interface Step {
  readonly text: string;
  readonly spot: Spot | undefined;
  readonly amperes: number;
}

/** A verdict in words: `sentence` says it in one line, `state` is the state the steps follow, `change` says what to do. */
export interface Explanation {
  readonly sentence: string;
  readonly state: 'idle' | 'active';
  readonly steps: readonly Step[];
  readonly change: string;
}

/** What an explanation is drawn from. */
export interface Findings {
  readonly outcome: Outcome;
  readonly notes: readonly Note[];
  readonly inputs: readonly InputVerdict[];
  readonly decides: number;
  readonly readings: { readonly idle: StateReading; readonly active: StateReading };
  readonly reach: readonly Reach[];
}

/** Explain a link that has been solved. */
export function explain(link: Link, found: Findings): Explanation {
  const state = found.outcome === 'always-on' || found.outcome === 'inverted' ? 'idle' : 'active';
  return {
    sentence: sentenceOf(link, found),
    state,
    steps: stepsOf(link, found, state),
    change: changeOf(link, found),
  };
}

function sentenceOf(link: Link, found: Findings): string {
  const verdict = found.inputs[found.decides] as InputVerdict;
  const who = sayInput(found.decides, link.branches.length);
  const say = verdict.kind === 'current' ? sayAmperes : sayVolts;
  const { idle, active, worstActive, on } = verdict;
  const misfit = found.notes.find(({ kind }) => kind === 'plug-does-not-fit');
  switch (found.outcome) {
    case 'flows':
      return verdict.kind === 'current'
        ? `Current flows: ${say(active)} through the LED of ${who} while a 0 is sent, ${say(worstActive)} at the worst corner; it turns on at ${say(on)}.`
        : `The signal arrives: ${who} sees ${say(active)} while a 0 is sent (low is below ${say(on)}) and ${say(idle)} at rest.`;
    case 'weak':
      return verdict.kind === 'current'
        ? `Weak: ${say(active)} at nominal is enough, but the worst corner leaves ${say(worstActive)} and ${who} turns on at ${say(on)}.`
        : `Weak: right at nominal, but at the worst corner ${who} sees ${say(worstActive)} and low is below ${say(on)}.`;
    case 'starved':
      return `Starved: only ${say(active)} flows through the LED of ${who}; it turns on at ${say(on)}.`;
    case 'unclear':
      return `Unclear: ${who} sees ${say(idle)} at rest and ${say(active)} while a 0 is sent; low is below ${say(on)}, high above ${say(verdict.off)}.`;
    case 'inverted':
      return `Inverted: ${who} is on at rest (${say(idle)}) and off while a 0 is sent (${say(active)}).`;
    case 'always-on':
      return `Always on: ${who} is on at rest (${say(idle)}) as well as while a 0 is sent (${say(active)}), so it never sees a byte.`;
    case 'backwards':
      return `Backwards: ${say(verdict.reverseAmperes.active)} flows the wrong way, through the protection diode; the LED of ${who} stays dark.`;
    case 'no-path':
      if (misfit) return `No path: ${misfit.detail}.`;
      return verdict.kind === 'current'
        ? `No path: no current to speak of flows through ${who} while a 0 is sent.`
        : `No path: ${who} stays at ${say(active)}, high, whatever is sent.`;
  }
}

function stepsOf(link: Link, found: Findings, state: 'idle' | 'active'): readonly Step[] {
  const branch = found.decides;
  const input = link.branches[branch]?.input as Jack;
  const reading = found.readings[state];
  const ownFeed = styleEntry(input.style).family === 'ground-referenced';
  const paths = ownFeed
    ? [currentPath(reading, { branch }), currentPath(reading, 'output')]
    : [currentPath(reading, 'output')];
  const path = paths.find(({ hops }) => hops.length > 0);
  const opening: Step = {
    text:
      state === 'active'
        ? 'A 0 is being sent: the output stage pulls the sink line low.'
        : 'The line is at rest: the output stage lets the sink line go high, or lets go of it.',
    spot: undefined,
    amperes: 0,
  };
  const along = path ? stepsAlong(link, path, reading) : [];
  const reachesInput = path?.hops.some(({ part }) => part.owner.place === 'input') ?? false;
  return [opening, ...along, ...(reachesInput ? [] : whereItStops(link, found, branch))];
}

function whereItStops(link: Link, found: Findings, branch: number): readonly Step[] {
  const { output } = link;
  const input = link.branches[branch]?.input as Jack;
  const lines = styleEntry(output.style).lines;
  const steps: Step[] = [];
  for (const line of ['source', 'sink'] as const) {
    const contact = lines[line];
    if (contact === undefined) {
      steps.push({
        text: `The output has no ${line} line: it can only set a voltage against its ground.`,
        spot: undefined,
        amperes: 0,
      });
      continue;
    }
    const reach = found.reach.find((one) => one.contact === contact);
    const there = (reach?.inputs ?? []).filter((one) => one.branch === branch);
    const spot: Spot = { place: 'output', contact };
    const shorts = reach?.outputs ?? [];
    const shortWords =
      shorts.length > 0
        ? ` It is also joined to ${sayList(shorts.map((one) => sayContact(output, { contact: one })))} of the output itself.`
        : '';
    const text =
      there.length === 0
        ? `The ${line} line leaves the output at ${contactWords(contact)} and stops: nothing takes it to ${sayInput(branch, link.branches.length)}.${shortWords}`
        : `The ${line} line goes from ${contactWords(contact)} of the output to ${sayList(there.map((one) => sayContact(input, one)))} of ${sayInput(branch, link.branches.length)}.${shortWords}`;
    steps.push({ text, spot, amperes: 0 });
  }
  return steps;
}

function changeOf(link: Link, found: Findings): string {
  if (found.outcome === 'flows') {
    const open = found.notes.some(({ kind }) => kind === 'shield-open');
    return open
      ? 'Nothing needs to change for the current. Join the shield too: the standard wants it at both ends.'
      : 'Nothing needs to change.';
  }
  const misfit = found.notes.find(({ kind }) => kind === 'plug-does-not-fit');
  if (misfit) return `Choose ends that fit: ${misfit.detail}.`;
  if (found.outcome === 'weak' || found.outcome === 'starved') {
    if (link.branches.length > 1) return 'Give each input an output of its own: a THRU, or a hub.';
  }
  const branch = link.branches[found.decides];
  if (!branch) return '';
  const { output } = link;
  const { input } = branch;
  const wanted = lineByLine(output, input);
  const trial = makeLead(output.connector, input.connector, wanted);
  const solved = quickOutcome({ output, branches: [{ input, leads: [trial] }] }, true);
  if (solved === 'flows')
    return joinWords(
      output,
      input,
      wanted,
      found,
      branch.leads.some((lead) => lead.faults.length > 0),
    );
  if (solved === 'weak' || solved === 'starved') {
    return `The conductors are not to blame: line to line, this output and this input give '${solved}'. Another input circuit, or a powered converter, is needed.`;
  }
  return 'No passive lead can join these two: it needs a powered converter, or another outlet.';
}

function joinWords(
  output: Jack,
  input: Jack,
  wanted: readonly { readonly from: Contact; readonly to: Contact }[],
  found: Findings,
  faulty: boolean,
): string {
  const branch = found.decides;
  const reaches = (from: Contact): readonly Contact[] =>
    (found.reach.find((one) => one.contact === from)?.inputs ?? [])
      .filter((one) => one.branch === branch)
      .map((one) => one.contact);
  const missing = wanted.filter(({ from, to }) => !reaches(from).includes(to));
  const extra = wanted.flatMap(({ from, to }) =>
    reaches(from)
      .filter((one) => one !== to)
      .map((one) => ({ from, to: one })),
  );
  const pair = ({ from, to }: { from: Contact; to: Contact }): string =>
    `${sayContact(output, { contact: from })} to ${sayContact(input, { contact: to })}`;
  const parts: string[] = [];
  if (extra.length > 0) parts.push(`Take away what joins ${sayList(extra.map(pair))}.`);
  if (missing.length > 0) parts.push(`Join ${sayList(missing.map(pair))}.`);
  if (parts.length === 0) {
    return faulty
      ? 'The right contacts are meant to be joined: mend the fault in the lead.'
      : 'The right contacts are joined; something else joins contacts that should stay apart. Use a lead whose plugs match the jacks, with no bridges.';
  }
  return `${parts.join(' ')} Output first, input second.`;
}
