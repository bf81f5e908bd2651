/** What to change, in words: the cheapest cure that is true, solved before it is given. */
import { CONTACT_OHMS, familyOf, lineAt, makeLead } from '../wiring/index.ts';
import type { Branch, Conductor, End, Jack, Lead, Link } from '../wiring/index.ts';
import { mendedJacks } from './beside.ts';
import type { Findings, Judge, LinkMemory } from './findings.ts';
import { lineByLine } from './needed.ts';
import { works } from './outcomes.ts';
import type { NoteKind } from './outcomes.ts';
import { sayContact, sayFault, sayList, sayOhms } from './speak.ts';
import { offStandard } from './standard.ts';

/** A link changed, and the change in words. */
interface Cure {
  readonly link: Link;
  readonly words: string;
}

/** Cures already judged: a bench goes back and forth between a few jacks, and plain leads hang on the jacks alone. */
const JUDGED: LinkMemory = new Map();

/** Length of a lead that is short, metres: any shorter one adds no more current to speak of. */
const SHORT_METRES = 1;

/** What to do about a link that works, the most pressing first. */
const ALL_THE_SAME: readonly (readonly [kind: NoteKind, words: string])[] = [
  ['foreign-supply', 'Take the foreign supply off before anything is plugged in.'],
  ['pin-2-on-shell', 'Join the shield to pin 2 at both ends, and to no shell: the standard wants it so.'],
  ['shield-open', 'Join the shield too: the standard wants it at both ends.'],
  [
    'pin-2-tied',
    'Where it hums, part the shield contact of the input from ground: the standard leaves it open.',
  ],
];

/** What would make the link work, or that no passive lead can; `judge` solves each piece of advice before it is given. */
export function changeOf(link: Link, found: Findings, judge: Judge): string {
  const kinds = found.notes.map(({ kind }) => kind);
  if (found.danger === undefined && found.outcome === 'flows') {
    const first = ALL_THE_SAME.find(([kind]) => kinds.includes(kind));
    return first ? `Nothing needs to change for the current. ${first[1]}` : 'Nothing needs to change.';
  }
  if (found.outcome === 'unsolved')
    return 'Change a value or the lead: this circuit could not be solved as it is.';
  const misfit = found.notes.find(({ kind }) => kind === 'plug-does-not-fit');
  if (misfit) return `Choose ends that fit: ${misfit.detail}.`;
  if (link.output.circuit === 'driver-off')
    return 'Switch the output on first: no lead can do anything without its supply.';
  const warning = found.danger === undefined ? '' : 'Do not connect it as it is. ';
  return `${warning}${cureWords(link, found, judge)}`;
}

/** The first cure that works with every part at its worst; else, where that is better than now, the first that works at all. */
function cureWords(link: Link, found: Findings, judge: Judge): string {
  const branch = link.branches[found.decides] as Branch;
  let marginal: string | undefined;
  for (const { link: cured, words } of curesOf(link, branch, found)) {
    const judged = judge(cured, 'outcome', JUDGED);
    if (!works(judged)) continue;
    if (judged.outcome === 'flows') return words;
    marginal ??= words;
  }
  if (marginal === undefined)
    return `No passive lead can join these two${
      judge(plainLink(link.output, branch.input), 'outcome', JUDGED).outcome === 'starved'
        ? ': line to line, too little current is left to switch the input. It needs'
        : ': it needs'
    } a powered converter, or another output.`;
  if (found.danger === undefined && found.outcome === 'weak')
    return 'The conductors are not to blame: line to line, this output and this input are marginal. Choose another output or another input, or put a powered converter between.';
  return `${marginal} Even then the link is marginal: with every tolerance at its worst the input may not switch.`;
}

/** Everything that may cure a link, the cheapest first: its leads, then the resistors of its devices, then both. */
function curesOf(link: Link, branch: Branch, found: Findings): readonly Cure[] {
  const { output } = link;
  const inLeads = [...mendings(link, branch), rejoined(output, branch, found)];
  const inJacks = [...mendingsInside(link, branch), ...resistorCures(link, branch)];
  const both = inJacks.map(({ link: { output: sender, branches }, words }) => ({
    link: plainLink(sender, (branches[found.decides] as Branch).input),
    words: `${words} ${rejoined(output, branch, found).words}`,
  }));
  return [...inLeads, ...inJacks, ...both];
}

function plainLink(output: Jack, input: Jack): Link {
  const lead = makeLead(output.connector, input.connector, lineByLine(output, input));
  return { output, branches: [{ input, leads: [lead] }] };
}

/** What to do when the right contacts are meant to be joined: mend a fault, part the inputs, take a better wire. */
function mendings(link: Link, branch: Branch): readonly Cure[] {
  const sound = branch.leads.map((lead) => ({ ...lead, faults: [] }));
  const faults = branch.leads.flatMap((lead) => lead.faults.map((fault) => sayFault(lead, fault)));
  const others = link.branches.length > 1;
  const alone = (leads: readonly Lead[]): Link => ({ output: link.output, branches: [{ ...branch, leads }] });
  const short = sound.map((lead) => ({
    ...lead,
    lengthMetres: Math.min(lead.lengthMetres, SHORT_METRES),
    contactOhms: CONTACT_OHMS,
  }));
  const first = [
    ...(faults.length > 0 ? [`mend the lead (${sayList(faults)})`] : []),
    ...(others ? ['give each input an output of its own'] : []),
  ];
  const { rivals: _, ...unrivalled } = link;
  const mended = link.branches.map((one) => (one === branch ? { ...one, leads: sound } : one));
  return [
    ...(link.rivals
      ? [{ link: unrivalled, words: 'Put a merger in front of the input, so that one output ends on it.' }]
      : []),
    ...(faults.length > 0
      ? [{ link: { ...link, branches: mended }, words: `Mend the lead: ${sayList(faults)}.` }]
      : []),
    ...(others
      ? [{ link: alone(branch.leads), words: 'Give each input an output of its own: a THRU, or a hub.' }]
      : []),
    {
      link: alone(short),
      words:
        first.length > 0
          ? `First ${first.join(', then ')}.`
          : 'The right contacts are joined, but the lead has too much resistance: take a shorter one, thicker wire or cleaner contacts.',
    },
  ];
}

/** A lead that joins line to line, and what has to be joined and parted for it. */
function rejoined(output: Jack, branch: Branch, found: Findings): Cure {
  const { input } = branch;
  const wanted = lineByLine(output, input);
  const words = bridgedByPlug(output, branch)
    ? `Use a lead with TRS plugs: in a TRS jack the long sleeve of a TS plug touches ring and sleeve at once. ${joinedWords(output, input, wanted)}`
    : joinWords(output, input, wanted, found);
  return { link: plainLink(output, input), words };
}

/** Whether a TS plug of this branch sits in a TRS jack, where its long sleeve touches ring and sleeve at once. */
function bridgedByPlug(output: Jack, { input, leads }: Branch): boolean {
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
  const joined = found.reach.flatMap(({ contact: from, inputs }) =>
    inputs.filter(({ branch }) => branch === found.decides).map(({ contact: to }) => ({ from, to })),
  );
  const among = (pairs: readonly Conductor[], one: Conductor): boolean =>
    pairs.some(({ from, to }) => from === one.from && to === one.to);
  const missing = wanted.filter((one) => !among(joined, one));
  const extra = joined.filter(
    (one) =>
      lineAt(output.style, one.from) !== undefined &&
      lineAt(input.style, one.to) !== undefined &&
      !among(wanted, one),
  );
  if (extra.length + missing.length === 0)
    return 'The right contacts are joined, but so are others that should stay apart. Use a lead whose plugs match the jacks, with no bridges.';
  return [
    ...(extra.length > 0
      ? [`Take away what joins ${sayList(extra.map((one) => sayPair(output, input, one)))}.`]
      : []),
    ...(missing.length > 0 ? [joinedWords(output, input, missing)] : []),
  ].join(' ');
}

function joinedWords(output: Jack, input: Jack, pairs: readonly Conductor[]): string {
  return `Join ${sayList(pairs.map((one) => sayPair(output, input, one)))} (output first, input second).`;
}

function sayPair(output: Jack, input: Jack, { from, to }: Conductor): string {
  return `${sayContact(output, { contact: from })} to ${sayContact(input, { contact: to })}`;
}

/** What no standard draws, taken away: at the output, at the input, at both. */
function mendingsInside(link: Link, branch: Branch): readonly Cure[] {
  const senders = mendedJacks(link.output, 'the output');
  const receivers = mendedJacks(branch.input, 'the input');
  const [sender, receiver] = [senders.at(-1), receivers.at(-1)];
  const cure = (output: Jack, input: Jack, words: string): Cure => ({
    link: withJacks(link, branch, output, input),
    words,
  });
  return [
    ...senders.map(({ jack, words }) => cure(jack, branch.input, words)),
    ...receivers.map(({ jack, words }) => cure(link.output, jack, words)),
    ...(sender && receiver ? [cure(sender.jack, receiver.jack, `${sender.words} ${receiver.words}`)] : []),
  ];
}

/** A link with another output, and another input at the end of one branch. */
function withJacks(link: Link, branch: Branch, output: Jack, input: Jack): Link {
  const branches = link.branches.map((one) => (one === branch ? { ...one, input } : one));
  return { ...link, output, branches };
}

/** The resistors of a device put to what the standard has for its supply: of the output, of the input, of both. */
function resistorCures(link: Link, branch: Branch): readonly Cure[] {
  const sender = standardJack(link.output, 'the output');
  const receiver = standardJack(branch.input, 'the input');
  const cure = (output: Jack, input: Jack, words: readonly string[]): readonly Cure[] =>
    words.length === 0
      ? []
      : [
          {
            link: withJacks(link, branch, output, input),
            words: `Change ${sayList(words)}, as the standard has ${words.length > 1 ? 'them' : 'it'}.`,
          },
        ];
  return [
    ...cure(sender.jack, branch.input, sender.words),
    ...cure(link.output, receiver.jack, receiver.words),
    ...(sender.words.length > 0 && receiver.words.length > 0
      ? cure(sender.jack, receiver.jack, [...sender.words, ...receiver.words])
      : []),
  ];
}

/** A jack with the standard's resistors, and each that differs in words: 'the source resistor of the output to 33 ohm'. */
function standardJack(jack: Jack, place: string): { readonly jack: Jack; readonly words: readonly string[] } {
  const differing = offStandard(jack).filter(({ name }) => name !== 'supplyVolts');
  const values = Object.fromEntries(differing.map(({ name, standard }) => [name, standard]));
  return {
    jack: { ...jack, values: { ...jack.values, ...values } },
    words: differing.map(({ label, standard }) => `the ${label} of ${place} to ${sayOhms(standard)}`),
  };
}
