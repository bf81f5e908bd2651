/** Tasks on a lead that was tested with four beeps. What each fault makes of them is asked of the floor of making. */
import { contactWords, makeLead, wires } from '../../../wiring/index.ts';
import type { Conductor, Connector } from '../../../wiring/index.ts';
import { madeLead, tableOf } from '../../../making/index.ts';
import type { LeadFault } from '../../../making/index.ts';
import { oneOf } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Leads from a DIN plug as they were planned. */
const PLANS: readonly { readonly to: Connector; readonly conductors: readonly Conductor[] }[] = [
  { to: 'din5', conductors: wires('4-4', '5-5', '2-2') },
  { to: 'trs-3.5', conductors: wires('4-ring', '5-tip', '2-sleeve') },
  { to: 'trs-3.5', conductors: wires('4-tip', '5-ring', '2-sleeve') },
  { to: 'din5', conductors: wires('4-5', '5-4', '2-2') },
];

/** What may be the matter with a lead, each a set of faults of the floor of making. */
const MATTERS: Readonly<
  Record<string, { readonly text: string; readonly faults: readonly LeadFault[]; readonly says: string }>
> = {
  planned: {
    text: 'Nothing: it is as planned',
    faults: [],
    says: 'Compare each beep with the plan: which two contacts should beep?',
  },
  mirrored: {
    text: 'One DIN plug is mirrored',
    faults: [{ kind: 'mirrored', side: 'from' }],
    says: 'A mirrored plug puts the wire of pin 4 on pin 5. Then both beeps change places.',
  },
  'open at 4': {
    text: 'The wire at pin 4 is broken',
    faults: [{ kind: 'open', conductor: 0 }],
    says: 'With that wire broken, pin 4 beeps to nothing, and pin 5 as planned.',
  },
  'open at 5': {
    text: 'The wire at pin 5 is broken',
    faults: [{ kind: 'open', conductor: 1 }],
    says: 'With that wire broken, pin 5 beeps to nothing, and pin 4 as planned.',
  },
  touching: {
    text: 'Pins 4 and 5 touch in the first plug',
    faults: [{ kind: 'short', side: 'from', between: ['4', '5'] }],
    says: 'If the two pins touched, all four would beep.',
  },
  'both open': {
    text: 'Both wires are broken',
    faults: [
      { kind: 'open', conductor: 0 },
      { kind: 'open', conductor: 1 },
    ],
    says: 'With both wires broken, none of the four would beep.',
  },
};

function fourBeeps(level: Level, chance: Chance): Drawn {
  const names = Object.keys(MATTERS).filter((name) => level === 3 || name !== 'both open');
  const name = chance.turn(['mirrored', ...names.filter((one) => one !== 'mirrored')]);
  const { to, conductors } = chance.pick(level < 2 ? PLANS.slice(0, 2) : PLANS);
  const lead = makeLead('din5', to, conductors);
  const beepsWith = (faults: readonly LeadFault[]): readonly string[] => {
    const says = tableOf(madeLead(lead, faults));
    return PAIRS.map(([one, other]) =>
      says({
        a: { side: 'from', contact: conductors[one]?.from ?? '4' },
        b: { side: 'to', contact: conductors[other]?.to ?? '4' },
        hold: 'still',
      }),
    );
  };
  const matter = MATTERS[name] as (typeof MATTERS)[string];
  const heard = beepsWith(matter.faults);
  const plan = conductors
    .map(({ from, to: into }) => `${contactWords(from)} to ${contactWords(into)}`)
    .join(', ');
  return {
    ask: `A lead was planned so: ${plan}. It was tested with four touches. What is the matter with it?`,
    shows: {
      shows: 'rows',
      rows: PAIRS.map(([one, other], at) => [
        `${contactWords(conductors[one]?.from ?? '4')}, first plug, to ${contactWords(conductors[other]?.to ?? '4')}, second plug`,
        heard[at] === 'beep' ? 'beeps' : 'silent',
      ]),
    },
    material: { on: 'lead test', lead, faults: matter.faults },
    ...oneOf(
      names.map((one) => {
        const { text, says } = MATTERS[one] as (typeof MATTERS)[string];
        return one === name ? { text, right: true } : { text, slip: `says ${one}`, says };
      }),
      chance,
    ),
    hints: [
      'Two touches should beep by the plan. Two should stay silent.',
      'Mark what differs from the plan.',
      'A mirrored DIN plug makes pins 4 and 5 change places. Pin 2 stays in the middle.',
    ],
    steps: [
      `By the plan, these beep: ${plan.split(', ').slice(0, 2).join(' and ')}.`,
      `Heard: ${heard.filter((one) => one === 'beep').length} of four beep, ${heard.join() === beepsWith([]).join() ? 'just as planned' : 'and not as planned'}.`,
      `${matter.text}.`,
    ],
  };
}

/** Each of the two wires at the first plug against each at the second. */
const PAIRS = [
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
] as const;

/** The tasks on beeps. */
export const BEEP_TASKS: readonly TaskKind[] = [{ kind: 'four-beeps', title: 'Four beeps', draw: fourBeeps }];
