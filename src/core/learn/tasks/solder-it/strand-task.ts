/** A loose strand in a plug: what it joins is solved. */
import { checkLink, lineByLine, linkFor } from '../../../verdict/index.ts';
import { contactWords, dinReadingOrder, familyOf, lineAt, makeJack } from '../../../wiring/index.ts';
import type { Contact, Jack, Lead, Line, Side } from '../../../wiring/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { remembered } from '../chance.ts';
import { met, whichText } from '../forms.ts';
import { sayPair } from '../pairs.ts';
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
const TEXTS = {
  nothing: 'Notes get through, as if it were not there',
  'source grounded': 'Nothing arrives: the source goes to ground',
  'always on': 'The LED in the input is always on, even at rest',
  'pair joined': 'Nothing arrives: source meets sink on the way',
};
type Does = keyof typeof TEXTS;

/** What a strand does to the link: solved once for each. */
const doesOf = remembered(({ output, input, side, between }: Strand): Does => {
  const link = linkFor(output, input, lineByLine(output, input));
  const [branch] = link.branches;
  const lead = branch?.leads[0] as Lead;
  const faulty: Lead = { ...lead, faults: [{ kind: 'short', side, between }] };
  const { outcome, notes } = checkLink({ ...link, branches: [{ input, leads: [faulty] }] }, 'notes');
  if (outcome === 'flows') return 'nothing';
  if (outcome === 'always-on') return 'always on';
  return notes.some(({ kind }) => kind === 'source-shorted') ? 'source grounded' : 'pair joined';
});

const lineOf = ({ output, input, side }: Strand, contact: Contact): Line | undefined =>
  lineAt((side === 'from' ? output : input).style, contact);

/** What a loose strand in one plug does to the lead. */
export function strayStrand(level: Level, chance: Chance): Drawn {
  // Strands that only reach a spare pin are left to level 2; they are fewer than those that do harm.
  const all = STRANDS.filter((one) => level >= 2 || one.between.every((contact) => lineOf(one, contact)));
  const strand = chance.turn(all);
  const { side, between } = strand;
  const does = doesOf(strand);
  const lines = between.map((contact) => lineOf(strand, contact) ?? 'a spare pin');
  const [a, b] = between.map((contact) => contactWords(contact));
  return {
    ask: `A lead goes from an output to an input. ${sayPair(strand)} The sender runs on 5 V. All joints are good, and each line meets its like. But in the plug at the ${side === 'from' ? 'output' : 'input'} end a loose strand joins ${a ?? ''} and ${b ?? ''}. What does the lead do?`,
    ...whichText(TEXTS, does, (one) => met(SAID, mistakenStrand(one, does)), chance),
    hints: [
      'Write the line beside each of the two contacts: source, sink, shield, or none.',
      'The shield is tied to ground in the sender. What touches it is led to ground.',
      'Source to ground: no current is left for the LED. Sink to ground: the current never stops. Source to sink: it turns back early.',
    ],
    caution: SOLDER_CAUTION,
    steps: [`The strand joins ${lines[0] ?? ''} and ${lines[1] ?? ''}.`, `Solved: ${TEXTS[does]}.`],
  };
}

const SAID = {
  'fears a spare pin': 'One of the two contacts carries no line. What does the strand lead to?',
  'a short cut is harmless': 'The current takes the short way home, and never sees the input.',
  'the shield does nothing': 'The shield is tied to ground in the sender. What touches it is led to ground.',
  'source and sink mixed up':
    'Which of the pair does the strand touch? A grounded source starves the LED, a grounded sink keeps it lit.',
  'another line': 'Write the line beside both contacts of this plug. Is the shield one of them?',
};

function mistakenStrand(said: Does, does: Does): keyof typeof SAID {
  if (does === 'nothing') return 'fears a spare pin';
  if (said === 'nothing')
    return does === 'pair joined' ? 'a short cut is harmless' : 'the shield does nothing';
  const pair = [said, does].every((one) => one === 'source grounded' || one === 'always on');
  return pair ? 'source and sink mixed up' : 'another line';
}
