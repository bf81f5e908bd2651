/** What gets over its rating where a caution is not heeded: links of usual circuits, judged by the core. */
import { checkLink } from '../verdict/index.ts';
import { makeJack, makeLead, wires } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import { dinLink } from './links.ts';

/** One way to do harm: the caution that warns of it (its identifier in the reference), the case, and the parts over their own ratings. */
interface Harm {
  readonly caution: string;
  readonly what: string;
  readonly danger: string;
}

const CASES: readonly { readonly caution: string; readonly what: string; readonly link: Link }[] = [
  {
    caution: 'two-contact-plug',
    what: 'A 3.3 V Type A output on a TS lead, into an input that listens on its tip',
    link: {
      output: makeJack('out', 'trs-3.5', 'type-a', { circuit: 'driver-3v3' }),
      branches: [
        {
          input: makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' }),
          leads: [makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'))],
        },
      ],
    },
  },
  {
    caution: 'foreign-supply',
    what: '12 V from source to sink of an input',
    link: dinLink({ circuit: 'driver-off' }, { values: { foreignAcrossVolts: 12 } }),
  },
  {
    caution: 'foreign-supply',
    what: '12 V below ground on the source line of a 5 V output',
    link: dinLink({ values: { foreignSourceVolts: -12 } }),
  },
];

/**
 * Every such case with what in it is over its rating, in words; each figure is held against that part's own rating.
 * @throws when nothing is over its rating, so that no caution claims more than the core finds.
 */
export function harms(): readonly Harm[] {
  return CASES.map(({ caution, what, link: one }) => {
    const { danger } = checkLink(one, 'outcome');
    if (danger === undefined) throw new Error(`harm: ${what}: expected a part over its rating, got none`);
    return { caution, what, danger };
  });
}
