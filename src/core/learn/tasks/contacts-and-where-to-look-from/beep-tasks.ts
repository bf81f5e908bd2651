/** Tasks on a lead that was tested with four beeps. What each fault makes of them is asked of the floor of making. */
import { conductorWords, contactWords, makeLead, wires, wiringWords } from '../../../wiring/index.ts';
import type { Conductor, Connector } from '../../../wiring/index.ts';
import { madeLead, tableOf } from '../../../making/index.ts';
import type { LeadFault } from '../../../making/index.ts';
import { inRows, whichOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Leads from a DIN plug as they were planned. */
const PLANS: readonly { readonly to: Connector; readonly conductors: readonly Conductor[] }[] = [
  { to: 'din5', conductors: wires('4-4', '5-5', '2-2') },
  { to: 'trs-3.5', conductors: wires('4-ring', '5-tip', '2-sleeve') },
  { to: 'trs-3.5', conductors: wires('4-tip', '5-ring', '2-sleeve') },
  { to: 'din5', conductors: wires('4-5', '5-4', '2-2') },
];

/** What may be the matter with a lead, each a set of faults of the floor of making. */
const OPEN = ([0, 1] as const).map((conductor) => ({ kind: 'open', conductor }) as const);
const MATTERS = {
  planned: [],
  mirrored: [{ kind: 'mirrored', side: 'from' }],
  'open at 4': OPEN.slice(0, 1),
  'open at 5': OPEN.slice(1),
  touching: [{ kind: 'short', side: 'from', between: ['4', '5'] }],
  'both open': OPEN,
} as const satisfies Readonly<Record<string, readonly LeadFault[]>>;
type Matter = keyof typeof MATTERS;

const TEXTS: Readonly<Record<Matter, string>> = {
  planned: 'Nothing: it is as planned',
  mirrored: 'One DIN plug is mirrored',
  'open at 4': 'The wire at pin 4 is broken',
  'open at 5': 'The wire at pin 5 is broken',
  touching: 'Pins 4 and 5 touch in the first plug',
  'both open': 'Both wires are broken',
};

const SAID: Readonly<Record<Matter, string>> = {
  planned: 'Compare each beep with the plan: which two contacts should beep?',
  mirrored: 'A mirrored plug puts the wire of pin 4 on pin 5. Then both beeps change places.',
  'open at 4': 'With that wire broken, pin 4 beeps to nothing, and pin 5 as planned.',
  'open at 5': 'With that wire broken, pin 5 beeps to nothing, and pin 4 as planned.',
  touching: 'If the two pins touched, all four would beep.',
  'both open': 'With both wires broken, none of the four would beep.',
};

/** What is the matter with a lead that was tested with four touches. */
export function fourBeeps(level: Level, chance: Chance): Drawn {
  const names = (Object.keys(MATTERS) as readonly Matter[]).slice(0, level === 3 ? 6 : 5);
  const name = chance.turn(['mirrored', ...names.filter((one) => one !== 'mirrored')] as const);
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
  const faults = MATTERS[name];
  const heard = beepsWith(faults);
  return {
    ask: `A lead was planned so: ${wiringWords(conductors)}. It was tested with four touches. What is the matter with it?`,
    shows: inRows(
      PAIRS.map(([one, other], at) => [
        `${contactWords(conductors[one]?.from ?? '4')}, first plug, to ${contactWords(conductors[other]?.to ?? '4')}, second plug`,
        heard[at] === 'beep' ? 'beeps' : 'silent',
      ]),
    ),
    material: { on: 'lead test', lead, faults },
    ...whichOf(
      names,
      name,
      (one) => TEXTS[one],
      (one) => [`says ${one}`, SAID[one]],
      chance,
    ),
    hints: [
      'Two touches should beep by the plan. Two should stay silent.',
      'Mark what differs from the plan.',
      'A mirrored DIN plug makes pins 4 and 5 change places. Pin 2 stays in the middle.',
    ],
    steps: [
      `By the plan, these beep: ${conductors.slice(0, 2).map(conductorWords).join(' and ')}.`,
      `Heard: ${heard.filter((one) => one === 'beep').length} of four beep, ${heard.join() === beepsWith([]).join() ? 'just as planned' : 'and not as planned'}.`,
      `${TEXTS[name]}.`,
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
