/** Findings on the solved circuits of the links. */
import { checkLink, outcomeWords, someMapWorks } from '../verdict/index.ts';
import type { LinkMemory, NoteKind } from '../verdict/index.ts';
import { finding } from './findings.ts';
import type { Finding, FindingKind, Severity } from './findings.ts';
import { sayJack } from './jacks.ts';
import type { SolvedOutput } from './solve-outputs.ts';

/** Findings on one circuit: a split, what does not work, and what its notes say. */
export function circuitFindings(solved: SolvedOutput, memory: LinkMemory): readonly Finding[] {
  const links = solved.links.map(({ name }) => name);
  return [
    ...splitFindings(solved, links),
    ...outcomeFindings(solved, links, memory),
    ...noteFindings(solved, links),
  ];
}

function splitFindings(
  { links: [first], link, judgement: { outcome } }: SolvedOutput,
  links: readonly string[],
): readonly Finding[] {
  if (!first || link.branches.length < 2) return [];
  const where = { links, devices: [first.output.device] };
  return [
    finding('split', outcome === 'flows' ? 'warning' : 'error', where, {
      what: `${sayJack(first.output)} feeds ${link.branches.length} inputs`,
      why: `One output drives one input, by the standard. This split was solved as it stands: ${outcomeWords(outcome).label.toLowerCase()}.`,
      mend: 'Chain the devices by their THRU jacks, or put a hub between.',
    }),
  ];
}

function outcomeFindings(
  { link, judgement: { outcome, notes } }: SolvedOutput,
  links: readonly string[],
  memory: LinkMemory,
): readonly Finding[] {
  if (outcome === 'flows') return [];
  const tell = (kind: FindingKind, say: string, why: string, mend: string): readonly Finding[] => {
    const what = `${links.join(', ')}: ${say}`;
    return [finding(kind, outcome === 'weak' ? 'warning' : 'error', { links }, { what, why, mend })];
  };
  if (outcome === 'unsolved') {
    const mend = 'Change a value that is far from any real part, or take another lead.';
    return tell('not-solved', 'not solved', checkLink(link, 'words', memory).sentence, mend);
  }
  const misfit = notes.find(({ kind }) => kind === 'plug-does-not-fit');
  if (misfit) {
    const mend = 'Choose a lead with the plugs of these two jacks, or add an adapter.';
    return tell('does-not-fit', 'a plug does not fit', misfit.detail, mend);
  }
  if (outcome === 'weak') {
    const { sentence, change } = checkLink(link, 'words', memory);
    return tell('weak', 'works, but not with every part at its worst', sentence, change);
  }
  const { sentence, change } = checkLink(link, 'words', memory);
  if (link.branches.some(({ input }) => !someMapWorks(link.output, input))) {
    const why = 'Every possible wiring was solved, and none works.';
    return tell('no-passive-lead', 'no passive lead can join these two jacks', why, change);
  }
  return tell('link-fails', outcomeWords(outcome).label.toLowerCase(), sentence, change);
}

type FromNote = readonly [kind: FindingKind, severity: Severity, what: string, mend: string];

const BURNS = 'do not connect: a part is over its rating';
const SHORTED = 'a line of the output is shorted';
const CHANGE = 'Change the lead before you connect it.';
const TAKE_OFF = 'Switch everything off and take the supply off before anything is plugged in.';
const HUM = 'Where it hums, use an isolated input or a hub with isolated outputs.';
const NEARER = 'Use a shorter lead, or move the devices closer.';
const SHELL = 'Join the shield to pin 2 at both ends, and leave the shells of the plugs alone.';
const VALUES =
  'The link was solved with it. Compare it with the device’s manual, or measure it with the power off.';
const SPARES = 'A lead of three wires is the safe choice; label one that carries more.';

/** Notes of a link that are findings of a board; the others are said elsewhere, or only on the bench. */
const FROM_NOTES: Readonly<Partial<Record<NoteKind, FromNote>>> = {
  'over-rating': ['over-rating', 'error', BURNS, 'Change the lead first.'],
  'foreign-supply': ['foreign-supply', 'error', 'a foreign supply on a contact', TAKE_OFF],
  'source-shorted': ['link-fails', 'error', SHORTED, CHANGE],
  'stage-shorted': ['link-fails', 'error', SHORTED, CHANGE],
  'too-long': ['too-long', 'warning', 'longer than the standard allows', NEARER],
  'spare-pins': ['supply-on-spares', 'note', 'the lead carries spare pins', SPARES],
  merged: [
    'fed-twice',
    'note',
    'solved with the other output at rest',
    'Put a merger in front of the input.',
  ],
  'depends-on-grounds': ['grounds', 'warning', 'works or not by how grounds are joined', HUM],
  'pin-2-tied': ['grounds', 'note', 'the shield contact of an input is tied to ground', HUM],
  'grounds-joined': ['grounds', 'note', 'joins the grounds of two devices', HUM],
  'pin-2-on-shell': ['off-standard', 'note', 'pin 2 is on the shell of a plug', SHELL],
  'other-resistor': ['off-standard', 'note', "a resistor of another value than the standard's", VALUES],
  'other-supply': ['off-standard', 'note', "a supply outside the standard's", VALUES],
};

function noteFindings({ judgement }: SolvedOutput, links: readonly string[]): readonly Finding[] {
  return judgement.notes.flatMap(({ kind: note, detail }) => {
    const from = FROM_NOTES[note];
    if (!from) return [];
    const [kind, severity, say, mend] = from;
    // A short that burns a part is told as that.
    if (say === SHORTED && judgement.danger !== undefined) return [];
    const what = `${links.join(', ')}: ${say}`;
    return [finding(kind, severity, { links }, { what, why: detail, mend })];
  });
}
