/** Tasks on joints: what came and went when a plug was moved, and what a joint of so many ohms means. Both are asked of the core. */
import { meterProfile, readLead, sayReading } from '../../../readings/index.ts';
import type { Reading } from '../../../readings/index.ts';
import { capital, checkLink, linkFor, sayList, sayOhms, works } from '../../../verdict/index.ts';
import { SIDES, conductorWords, contactWords, makeJack } from '../../../wiring/index.ts';
import type { Jack, Lead, Link, Side } from '../../../wiring/index.ts';
import type { LeadFault } from '../../../making/index.ts';
import { SOLDER_CAUTION, TEST_CAUTION } from '../cautions.ts';
import { remembered } from '../chance.ts';
import { inRows, oneOf, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { PLANS, sayConductor, sayPlan } from './leads.ts';

/** A joint of a lead: one end of one conductor. */
interface Joint {
  readonly conductor: number;
  readonly side: Side;
}

const coldAt = ({ conductor, side }: Joint): LeadFault => ({ kind: 'cold-joint', side, conductor });
const otherSide = (side: Side): Side => (side === 'from' ? 'to' : 'from');
const endWords = (side: Side): string => (side === 'from' ? 'the output end' : 'the input end');

function jointWords({ conductors }: Lead, { conductor, side }: Joint): string {
  const one = conductors[conductor];
  return one ? `${contactWords(one[side])} at ${endWords(side)}` : '';
}

function jointsText(lead: Lead, joints: readonly Joint[]): string {
  return capital(sayList(joints.map((one) => jointWords(lead, one))));
}

/** The answer of who trusts a beep, and of who looks for one fault where there are two. */
const NONE = {
  text: 'None: all beep while the lead lies still',
  slip: 'a beep is a good joint',
  says: 'A beep at rest says that metal touches metal. A good joint still beeps when its plug is moved.',
};
const ONE_FOR_BOTH = {
  text: 'Only one of them: one fault explains both',
  slip: 'one fault for two',
  says: 'Each wire has joints of its own. A cold joint of one does not make another flicker.',
};

/** Which joint parts when a plug is moved; two of them at level 3. */
export function stillAndMoved(level: Level, chance: Chance): Drawn {
  const cases = PLANS.flatMap(({ lead }) =>
    lead.conductors.flatMap((_, conductor) => SIDES.map((side) => ({ lead, joint: { conductor, side } }))),
  );
  const { lead, joint } = chance.turn(cases);
  const { conductor, side } = joint;
  const [second = 0, third = 0] = chance.shuffled(
    [...lead.conductors.keys()].filter((one) => one !== conductor),
  );
  const more: readonly Joint[] = level === 3 ? [{ conductor: second, side: chance.pick(SIDES) }] : [];
  const right = [joint, ...more];
  const turned = right.map((one) => ({ ...one, side: otherSide(one.side) }));
  const wrongWire =
    level === 3 ? [joint, { ...(more[0] as Joint), conductor: third }] : [{ conductor: second, side }];
  return {
    ask: `${sayPlan(lead)} Each conductor is read while the lead lies still, then while each plug is moved. Which ${level === 3 ? 'joints have' : 'joint has'} to be soldered again?`,
    shows: inRows(
      lead.conductors.map((one, at) => [conductorWords(one), sayConductor(lead, at, right.map(coldAt))]),
    ),
    ...oneOf(
      [
        { text: jointsText(lead, right), right: true },
        {
          text: jointsText(lead, turned),
          slip: 'wrong end',
          says: 'It flickers while one plug is moved. The bad joint is in the plug that you move.',
        },
        {
          text: jointsText(lead, wrongWire),
          slip: 'wrong wire',
          says: 'Which of the wires flickers? The others beep, whatever you move.',
        },
        level === 3 ? ONE_FOR_BOTH : NONE,
      ],
      chance,
    ),
    hints: [
      'A good joint beeps, whatever you move.',
      'Find the wire that flickers. Then see which plug was moved.',
      'The bad joint sits in the plug that you moved, on the contact of that wire.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      ...right.map(
        (one) =>
          `One wire flickers while the plug at ${endWords(one.side)} is moved: the one to ${contactWords(lead.conductors[one.conductor]?.[one.side] ?? 'tip')} there.`,
      ),
      `To be soldered again: ${right.map((one) => jointWords(lead, one)).join(', and ')}. Then test the whole lead from the top.`,
    ],
  };
}

/** Ohms that a joint adds, far from where the meter or the input changes its mind; 0 adds none. */
const OHMS = [0, 5, 20, 40, 0.3, 120, 300, 600, 10e3, 33e3, 100e3] as const;

/** A line that reads more than this many ohms has a bad joint (common practice: a good one cannot be told from the wire). */
const GOOD_LINE_OHMS = 1;

const PROFILE = meterProfile('usual');

const DIN_OUT = makeJack('out', 'din5', 'din');
const A_IN = makeJack('in', 'trs-3.5', 'type-a');
/** Jacks at the ends of the lead: senders of 5 V and of 3.3 V. */
const JACKS: readonly (readonly [output: Jack, input: Jack, volts: string])[] = [
  [DIN_OUT, A_IN, '5 V'],
  [makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' }), A_IN, '3.3 V'],
];

const LINES = [
  { line: 'source', from: '4', to: 'ring' },
  { line: 'sink', from: '5', to: 'tip' },
] as const;

function linkWith(output: Jack, input: Jack, contact: '4' | '5', ohms: number): Link {
  const conductors = [...LINES.map(({ from, to }) => ({ from, to })), { from: '2', to: 'sleeve' } as const];
  const link = linkFor(output, input, conductors);
  const [branch] = link.branches;
  const [lead] = branch?.leads ?? [];
  if (!branch || !lead) throw new Error('task: needs a link with a lead, got none');
  const faulty: Lead = {
    ...lead,
    faults: ohms === 0 ? [] : [{ kind: 'joint', side: 'from', contact, ohms }],
  };
  return { ...link, branches: [{ ...branch, leads: [faulty] }] };
}

/** What may be true of a joint. */
const MEANINGS = {
  good: 'It beeps, notes get through, and the joint is good',
  poor: 'It beeps, notes get through, and the joint is bad',
  quiet: 'It stays silent, and yet notes get through',
  dead: 'It stays silent, and no note gets through',
};
type Meaning = keyof typeof MEANINGS;

const SAID_TO_MEANING: Readonly<Record<Meaning, Mistake>> = {
  good: ['a beep is a good joint', 'It does beep. But a good joint has less than 1 ohm.'],
  poor: [
    'beep misjudged',
    'Compare the ohms with where the meter stops to beep, and with what a good joint has.',
  ],
  quiet: [
    'silence misjudged',
    'Silent means more than the bound of the meter. Compare these ohms with those of the whole loop.',
  ],
  dead: [
    'silence means dead',
    'Silence is not the end of the current. The loop has hundreds of ohms of its own: what do these add?',
  ],
};

interface Case {
  readonly reads: string;
  readonly beeps: boolean;
  readonly carries: boolean;
  readonly meaning: Meaning;
}

type At = (typeof LINES)[number];

/** What a meter and a link make of a joint: asked and solved once for each. */
const caseOf = remembered(([output, input]: (typeof JACKS)[number], at: At, ohms: number): Case => {
  const link = linkWith(output, input, at.from, ohms);
  const lead = link.branches[0]?.leads[0] as Lead;
  const read = (meter: 'continuity' | 'ohms'): Reading =>
    readLead(lead, meter, { side: 'from', contact: at.from }, { side: 'to', contact: at.to }, PROFILE);
  const measured = read('ohms');
  const beeps = read('continuity').shows === 'beep';
  const carries = works(checkLink(link, 'outcome'));
  const good = measured.shows === 'value' && measured.value < GOOD_LINE_OHMS;
  return {
    reads: sayReading(measured),
    beeps,
    carries,
    meaning: beeps ? (good ? 'good' : 'poor') : carries ? 'quiet' : 'dead',
  };
});

/** What a joint of so many ohms means: the meter is asked, and the link is solved. */
export function beepAtOhms(level: Level, chance: Chance): Drawn {
  const cases = OHMS.flatMap((ohms) => LINES.map((at) => ({ ohms, at })));
  const { ohms, at } = chance.turn(level < 2 ? cases.filter((one) => one.at.line === 'source') : cases);
  const jacks = chance.pick(level < 2 ? JACKS.slice(0, 1) : JACKS) as (typeof JACKS)[number];
  const { reads, beeps, carries, meaning } = caseOf(jacks, at, ohms);
  const bound = sayOhms(PROFILE.beepOhms);
  return {
    ask: `A lead goes from a DIN output with ${jacks[2]} to a Type A input. Unplugged, its ${at.line} line from ${conductorWords(at)} reads ${reads}. All else is in order. What does a meter that beeps below ${bound} do, and what does the lead?`,
    ...whichText(MEANINGS, meaning, (one) => SAID_TO_MEANING[one], chance),
    hints: [
      'A beep says less than a number of ohms. It says nothing of how good a joint is.',
      `Below ${bound} it beeps. A line with good joints cannot be told from its wire: it has less than 1 ohm.`,
      'The loop has hundreds of ohms of its own. Add these, and ask how much current is left.',
    ],
    caution: TEST_CAUTION,
    steps: [
      `${reads} is ${beeps ? 'less' : 'more'} than ${bound}: the meter ${beeps ? 'beeps' : 'stays silent'}.`,
      `Solved with so much in that line, notes ${carries ? 'get' : 'do not get'} through.`,
      `${MEANINGS[meaning]}.${meaning === 'good' ? '' : ' Solder that joint again, and test the lead.'}`,
    ],
  };
}
