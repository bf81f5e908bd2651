/** A loose strand in a plug: what it joins is solved. */
import { checkLink, lineByLine, linkFor } from '../../../verdict/index.ts';
import { contactWords, dinReadingOrder, familyOf, lineAt, makeJack } from '../../../wiring/index.ts';
import type { Contact, Jack, Lead, Line, Side } from '../../../wiring/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { oneOf } from '../forms.ts';
import { sayJack } from '../pairs.ts';
import type { Chance, Drawn, Level } from '../task.ts';

const KINDS = [
  ['din5', 'din'],
  ['trs-3.5', 'type-a'],
  ['trs-3.5', 'type-b'],
] as const;

/** A strand between two contacts of one plug of a lead that joins line to line. */
interface Strand {
  readonly output: Jack;
  readonly input: Jack;
  readonly side: Side;
  readonly between: readonly [Contact, Contact];
}

/** Contacts of a plug that lie beside one another. */
function neighbours({ connector }: Jack): readonly (readonly [Contact, Contact])[] {
  const row: readonly Contact[] =
    familyOf(connector) === 'din'
      ? dinReadingOrder({ connector, form: 'plug', view: 'solder' })
      : ['tip', 'ring', 'sleeve'];
  return row.slice(1).map((one, at) => [row[at] as Contact, one]);
}

const STRANDS: readonly Strand[] = KINDS.flatMap(([outPlug, out]) =>
  KINDS.flatMap(([inPlug, into]) => {
    const output = makeJack('out', outPlug, out);
    const input = makeJack('in', inPlug, into);
    return (['from', 'to'] as const).flatMap((side) =>
      neighbours(side === 'from' ? output : input).map((between) => ({ output, input, side, between })),
    );
  }),
);

/** What a strand does, as a learner tells it. */
type Does = 'nothing' | 'source grounded' | 'always on' | 'pair joined';

const TEXTS: Readonly<Record<Does, string>> = {
  nothing: 'Notes get through, as if it were not there',
  'source grounded': 'Nothing arrives: the source goes to ground',
  'always on': 'The LED in the input is always on, even at rest',
  'pair joined': 'Nothing arrives: source meets sink on the way',
};

const DONE = new Map<Strand, Does>();

/** What a strand does to the link: solved once for each. */
function doesOf(strand: Strand): Does {
  const known = DONE.get(strand);
  if (known) return known;
  const { output, input, side, between } = strand;
  const link = linkFor(output, input, lineByLine(output, input));
  const [branch] = link.branches;
  const lead = branch?.leads[0] as Lead;
  const faulty: Lead = { ...lead, faults: [{ kind: 'short', side, between }] };
  const { outcome, notes } = checkLink({ ...link, branches: [{ input, leads: [faulty] }] }, 'notes');
  const found: Does =
    outcome === 'flows'
      ? 'nothing'
      : outcome === 'always-on'
        ? 'always on'
        : notes.some(({ kind }) => kind === 'source-shorted')
          ? 'source grounded'
          : 'pair joined';
  DONE.set(strand, found);
  return found;
}

const lineOf = ({ output, input, side }: Strand, contact: Contact): Line | undefined =>
  lineAt((side === 'from' ? output : input).style, contact);

/** What a loose strand in one plug does to the lead. */
export function strayStrand(level: Level, chance: Chance): Drawn {
  // Strands that only reach a spare pin are left to level 2; they are fewer than those that do harm.
  const all = STRANDS.filter((one) => level >= 2 || one.between.every((contact) => lineOf(one, contact)));
  const strand = chance.turn(all);
  const { output, input, side, between } = strand;
  const does = doesOf(strand);
  const lines = between.map((contact) => lineOf(strand, contact) ?? 'nothing');
  const [a, b] = between.map((contact) => contactWords(contact));
  return {
    ask: `A lead goes from ${sayJack(output)}, out, to ${sayJack(input)}, in, with 5 V in the sender. All joints are good, and each line meets its like. But in the plug at the ${side === 'from' ? 'output' : 'input'} end a loose strand joins ${a ?? ''} and ${b ?? ''}. What does the lead do?`,
    ...oneOf(
      (Object.keys(TEXTS) as readonly Does[]).map((one) =>
        one === does
          ? { text: TEXTS[one], right: true as const }
          : { text: TEXTS[one], ...saidToStrand(one, does) },
      ),
      chance,
    ),
    hints: [
      'Write the line beside each of the two contacts: source, sink, shield, or none.',
      'The shield is tied to ground in the sender. What touches it is led to ground.',
      'Source to ground: no current is left for the LED. Sink to ground: the current never stops. Source to sink: it turns back early.',
    ],
    caution: SOLDER_CAUTION,
    steps: [`The strand joins ${lines[0] ?? ''} and ${lines[1] ?? ''}.`, `Solved: ${TEXTS[does]}.`],
  };
}

function saidToStrand(said: Does, does: Does): { readonly slip: string; readonly says: string } {
  if (does === 'nothing')
    return {
      slip: 'fears a spare pin',
      says: 'One of the two contacts carries no line. What does the strand lead to?',
    };
  if (said === 'nothing')
    return does === 'pair joined'
      ? {
          slip: 'a short cut is harmless',
          says: 'The current takes the short way home, and never sees the input.',
        }
      : {
          slip: 'the shield does nothing',
          says: 'The shield is tied to ground in the sender. What touches it is led to ground.',
        };
  const pair = [said, does].every((one) => one === 'source grounded' || one === 'always on');
  return pair
    ? {
        slip: 'source and sink mixed up',
        says: 'Which of the pair does the strand touch? A grounded source starves the LED, a grounded sink keeps it lit.',
      }
    : {
        slip: 'another line',
        says: 'Write the line beside both contacts of this plug. Is the shield one of them?',
      };
}
