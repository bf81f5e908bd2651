/** The verdict in words: one line, then the way of the current step by step, then what to change. */
import { contactWords, familyOf } from '../wiring/connectors.ts';
import type { Branch, Conductor, End, Jack, Lead, Link } from '../wiring/link.ts';
import { makeLead } from '../wiring/link.ts';
import { lineAt, styleEntry } from '../wiring/styles.ts';
import { CONTACT_OHMS } from '../wiring/wire.ts';
import { quickOutcome } from './check.ts';
import type { InputVerdict } from './judge.ts';
import { lineByLine } from './needed.ts';
import type { Note, Outcome } from './outcomes.ts';
import { pathOf } from './path.ts';
import type { Reach } from './reach.ts';
import type { Spot, StateReading } from './readings.ts';
import { sayAmperes, sayContact, sayFault, sayInput, sayList, sayVolts } from './speak.ts';
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
  const { idle, active, worstIdle, worstActive, on } = verdict;
  const misfit = found.notes.find(({ kind }) => kind === 'plug-does-not-fit');
  switch (found.outcome) {
    case 'flows':
      return verdict.kind === 'current'
        ? `Current flows: ${say(active)} through the LED of ${who} while a 0 is sent, still ${say(worstActive)} with every tolerance at its worst; it turns on at ${say(on)}.`
        : `The signal arrives: ${who} sees ${say(active)} while a 0 is sent (low is below ${say(on)}) and ${say(idle)} at rest.`;
    case 'weak':
      return verdict.kind === 'current'
        ? `Weak: ${say(active)} would do, but with every tolerance at its worst only ${say(worstActive)} is left, and ${who} turns on at ${say(on)}.`
        : `Weak: right as designed, but with every tolerance at its worst ${who} sees ${say(worstActive)} while a 0 is sent (low is below ${say(on)}) and ${say(worstIdle)} at rest (high is above ${say(verdict.off)}).`;
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
      if (link.output.circuit === 'driver-off')
        return 'No path: the output has no supply, so nothing drives a current.';
      return verdict.kind === 'current'
        ? `No path: no current to speak of flows through ${who} while a 0 is sent.`
        : `No path: ${who} stays at ${say(active)}, high, whatever is sent.`;
  }
}

function stepsOf(link: Link, found: Findings, state: 'idle' | 'active'): readonly Step[] {
  const branch = found.decides;
  const reading = found.readings[state];
  const path = pathOf(reading, branch);
  const reachesInput = path.hops.some(
    ({ part: { owner } }) => owner.place === 'input' && owner.branch === branch,
  );
  return [
    { text: openingOf(link, state), spot: undefined, amperes: 0 },
    ...stepsAlong(link, path, reading),
    ...(reachesInput || path.hops.length === 0
      ? []
      : [
          {
            text: `None of it passes through ${sayInput(branch, link.branches.length)}.`,
            spot: undefined,
            amperes: 0,
          },
        ]),
    ...(reachesInput ? [] : whereItStops(link, found, branch)),
  ];
}

function openingOf({ output }: Link, state: 'idle' | 'active'): string {
  const line = styleEntry(output.style).family === 'loop' ? 'sink line' : 'signal line';
  if (output.circuit === 'driver-off')
    return 'The output has no supply: it drives nothing, whatever is sent.';
  if (state === 'active') return `A 0 is being sent: the output stage pulls the ${line} low.`;
  return output.circuit === 'driver-3v3'
    ? `The line is at rest: the output stage lets go of the ${line}.`
    : `The line is at rest: the output stage holds the ${line} high.`;
}

function whereItStops(link: Link, found: Findings, branch: number): readonly Step[] {
  const { output } = link;
  const input = link.branches[branch]?.input as Jack;
  const lines = styleEntry(output.style).lines;
  const steps: Step[] = [];
  for (const line of ['source', 'sink'] as const) {
    const contact = lines[line];
    const name = line === 'sink' && lines.source === undefined ? 'signal' : line;
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
        ? `The ${name} line leaves the output at ${contactWords(contact)} and stops: nothing takes it to ${sayInput(branch, link.branches.length)}.${shortWords}`
        : `The ${name} line goes from ${contactWords(contact)} of the output to ${sayList(there.map((one) => sayContact(input, one)))} of ${sayInput(branch, link.branches.length)}.${shortWords}`;
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
  const { output } = link;
  if (output.circuit === 'driver-off')
    return 'Switch the output on first: no lead can do anything without its supply.';
  const branch = link.branches[found.decides];
  if (!branch) return '';
  const { input } = branch;
  const wanted = lineByLine(output, input);
  const alone = quickOutcome(
    { output, branches: [{ input, leads: [makeLead(output.connector, input.connector, wanted)] }] },
    true,
  );
  if (alone === 'starved')
    return 'No passive lead can join these two: line to line, too little current is left to switch the input. It needs a powered converter, or another outlet.';
  if (alone !== 'flows' && alone !== 'weak')
    return 'No passive lead can join these two: it needs a powered converter, or another outlet.';
  if (found.outcome === alone)
    return "The conductors are not to blame: line to line, this output and this input give 'weak'. Choose another output or another input, or put a powered converter between.";
  const words =
    mendWords(link, branch, alone) ??
    (bridgedByPlug(link, branch)
      ? `Use a lead with TRS plugs: in a TRS jack the long sleeve of a TS plug touches ring and sleeve at once. ${joinedWords(output, input, wanted)}`
      : joinWords(output, input, wanted, found));
  return alone === 'weak'
    ? `${words} Even then the link is weak: with every tolerance at its worst the input may not switch.`
    : words;
}

/** What to do when the right contacts are meant to be joined: mend a fault, part the inputs, take a better wire. */
/** `best` is what the two jacks give line to line. */
function mendWords(link: Link, branch: Branch, best: Outcome): string | undefined {
  const works = (leads: readonly Lead[], others: readonly Branch[]): boolean =>
    quickOutcome({ output: link.output, branches: [{ input: branch.input, leads }, ...others] }, true) ===
    best;
  const sound = branch.leads.map((lead) => ({ ...lead, faults: [] }));
  const others = link.branches.filter((one) => one !== branch);
  const faults = branch.leads.flatMap((lead) => lead.faults.map((fault) => sayFault(lead, fault)));
  if (faults.length > 0 && works(sound, others)) return `Mend the lead: ${sayList(faults)}.`;
  if (others.length > 0 && works(branch.leads, []))
    return 'Give each input an output of its own: a THRU, or a hub.';
  const short = sound.map((lead) => ({
    ...lead,
    lengthMetres: Math.min(lead.lengthMetres, 1),
    contactOhms: CONTACT_OHMS,
  }));
  if (works(short, [])) {
    const steps = [
      ...(faults.length > 0 ? [`mend the lead (${sayList(faults)})`] : []),
      ...(others.length > 0 ? ['give each input an output of its own'] : []),
    ];
    return steps.length > 0
      ? `First ${steps.join(', then ')}.`
      : 'The right contacts are joined, but the lead has too much resistance: take a shorter one, thicker wire or cleaner contacts.';
  }
  return undefined;
}

/** Whether a TS plug of this branch sits in a TRS jack, where its long sleeve touches ring and sleeve at once. */
function bridgedByPlug({ output }: Link, { input, leads }: Branch): boolean {
  const ends: readonly End[] = [
    { connector: output.connector, form: 'jack' },
    ...leads.flatMap(({ from, to }) => [from, to]),
    { connector: input.connector, form: 'jack' },
  ];
  return ends.some((one, at) => {
    const other = ends[at % 2 === 0 ? at + 1 : at - 1];
    return (
      one.form === 'plug' &&
      familyOf(one.connector) === 'ts' &&
      other !== undefined &&
      familyOf(other.connector) === 'trs'
    );
  });
}

function joinWords(output: Jack, input: Jack, wanted: readonly Conductor[], found: Findings): string {
  const branch = found.decides;
  const joined = found.reach.flatMap(({ contact: from, inputs }) =>
    inputs.filter((one) => one.branch === branch).map(({ contact: to }) => ({ from, to })),
  );
  const same = (one: Conductor) => (other: Conductor) => one.from === other.from && one.to === other.to;
  const missing = wanted.filter((one) => !joined.some(same(one)));
  const extra = joined.filter(
    (one) =>
      lineAt(output.style, one.from) !== undefined &&
      lineAt(input.style, one.to) !== undefined &&
      !wanted.some(same(one)),
  );
  const parts: string[] = [];
  if (extra.length > 0)
    parts.push(`Take away what joins ${sayList(extra.map((one) => sayPair(output, input, one)))}.`);
  if (missing.length > 0) parts.push(joinedWords(output, input, missing));
  if (parts.length === 0)
    return 'The right contacts are joined, but so are others that should stay apart. Use a lead whose plugs match the jacks, with no bridges.';
  return parts.join(' ');
}

function joinedWords(output: Jack, input: Jack, pairs: readonly Conductor[]): string {
  return `Join ${sayList(pairs.map((one) => sayPair(output, input, one)))} (output first, input second).`;
}

function sayPair(output: Jack, input: Jack, { from, to }: Conductor): string {
  return `${sayContact(output, { contact: from })} to ${sayContact(input, { contact: to })}`;
}
