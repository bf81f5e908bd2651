/** What to change, in words; every piece of advice has been solved before it is given. */
import { CONTACT_OHMS, familyOf, lineAt, makeLead } from '../wiring/index.ts';
import type { Branch, Conductor, End, Jack, Lead, Link } from '../wiring/index.ts';
import type { Findings, Judge, LinkMemory } from './findings.ts';
import { lineByLine } from './needed.ts';
import type { Outcome } from './outcomes.ts';
import { sayContact, sayFault, sayList } from './speak.ts';

/** Plain leads already judged: a bench goes back and forth between a few jacks, and their answer hangs on the jacks alone. */
const PLAIN_LEADS: LinkMemory = new Map();

/** What would make the link flow, or that no passive lead can; `judge` solves each piece of advice before it is given. */
export function changeOf(link: Link, found: Findings, judge: Judge): string {
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
  const plain = makeLead(output.connector, input.connector, wanted);
  const alone = judge({ output, branches: [{ input, leads: [plain] }] }, 'outcome', PLAIN_LEADS).outcome;
  if (alone === 'starved')
    return 'No passive lead can join these two: line to line, too little current is left to switch the input. It needs a powered converter, or another outlet.';
  if (alone !== 'flows' && alone !== 'weak')
    return 'No passive lead can join these two: it needs a powered converter, or another outlet.';
  if (found.outcome === alone)
    return "The conductors are not to blame: line to line, this output and this input give 'weak'. Choose another output or another input, or put a powered converter between.";
  const words =
    mendWords(link, branch, alone, judge) ??
    (bridgedByPlug(link, branch)
      ? `Use a lead with TRS plugs: in a TRS jack the long sleeve of a TS plug touches ring and sleeve at once. ${joinedWords(output, input, wanted)}`
      : joinWords(output, input, wanted, found));
  return alone === 'weak'
    ? `${words} Even then the link is weak: with every tolerance at its worst the input may not switch.`
    : words;
}

/**
 * What to do when the right contacts are meant to be joined: mend a fault, part the inputs, take a better wire.
 * @param best what the two jacks give line to line.
 */
function mendWords(
  { output, branches }: Link,
  branch: Branch,
  best: Outcome,
  judge: Judge,
): string | undefined {
  const works = (leads: readonly Lead[], beside: readonly Branch[]): boolean =>
    judge({ output, branches: [{ ...branch, leads }, ...beside] }, 'outcome').outcome === best;
  const sound = branch.leads.map((lead) => ({ ...lead, faults: [] }));
  const others = branches.filter((one) => one !== branch);
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
    const first = [
      ...(faults.length > 0 ? [`mend the lead (${sayList(faults)})`] : []),
      ...(others.length > 0 ? ['give each input an output of its own'] : []),
    ];
    return first.length > 0
      ? `First ${first.join(', then ')}.`
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
