/** How few readings test a lead: counted on the table of the lead as it was planned. */
import { fullTable, madeLead, tableOf } from '../../../making/index.ts';
import type { ProofPlace } from '../../../making/index.ts';
import { contactsOf, familyOf, words } from '../../../wiring/index.ts';
import type { Connector, Lead } from '../../../wiring/index.ts';
import { aNumber } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { leadOf, sayPlan } from './leads.ts';

const TRS: readonly Connector[] = ['trs-3.5', 'trs-6.35', 'trs-2.5'];

/** Leads with phone plugs: all three wires, only two of them, and a TS plug at one end or at both. */
const PHONE: readonly Lead[] = [
  ...TRS.map((one) => leadOf(one, 'trs-3.5', 'tip-tip ring-ring sleeve-sleeve')),
  leadOf('ts-3.5', 'ts-3.5', 'tip-tip sleeve-sleeve'),
  ...TRS.map((one) => leadOf(one, 'trs-6.35', 'tip-ring ring-tip sleeve-sleeve')),
  leadOf('trs-3.5', 'trs-3.5', 'tip-tip ring-ring'),
  leadOf('trs-3.5', 'ts-6.35', 'tip-tip sleeve-sleeve'),
  leadOf('ts-3.5', 'trs-3.5', 'tip-tip sleeve-sleeve'),
];

/** Leads with a DIN plug: its spare pins and its shell may touch something too. */
const DIN: readonly Lead[] = [
  leadOf('din5', 'trs-3.5', '4-ring 5-tip 2-sleeve'),
  leadOf('trs-3.5', 'din5', 'tip-4 ring-5 sleeve-2'),
  leadOf('din5', 'din5', '4-4 5-5 2-2'),
  leadOf('din5', 'trs-6.35', '4-tip 5-ring'),
  leadOf('din5', 'din5', '1-1 2-2 3-3 4-4 5-5'),
];

/** Contacts that a lead joins, each group with its contacts, as the table of the lead says. */
function groupsOf(lead: Lead): { readonly groups: number; readonly joined: readonly ProofPlace[] } {
  const says = tableOf(madeLead(lead, []));
  const joined = fullTable(lead).filter((place) => place.hold === 'still' && says(place) === 'beep');
  const contacts = contactsOf(lead.from.connector).length + contactsOf(lead.to.connector).length;
  // Each conductor of these leads joins one contact to one.
  return { groups: contacts - joined.length, joined };
}

const pairsOf = (count: number): number => (count * (count - 1)) / 2;

const FEWEST_READINGS_SAID = {
  'three beeps are enough': 'The beeps are half of the test. Which contacts must stay silent to each other?',
  'a beep is a good joint':
    'A cold joint beeps while it lies still. Each conductor has two joints, so it needs a reading with each plug moved.',
  'spare contacts forgotten':
    'A contact without a wire can touch something too. Count it among those that must be silent.',
  'both ends of a wire':
    'Once a wire has beeped, its two ends are one. Test it against the others at one end only.',
  'every two contacts': 'That is every two contacts there are. Once a wire has beeped, its two ends are one.',
};

/** How few readings test a lead that lies still, and at level 3 its joints as well. */
export function fewestReadings(level: Level, chance: Chance): Drawn {
  const lead = chance.turn(level < 2 ? PHONE : [...PHONE, ...DIN]);
  const { groups, joined } = groupsOf(lead);
  const wired = joined.length;
  const moved = level === 3;
  const beeps = moved ? 2 * wired : wired;
  const silent = pairsOf(groups);
  const right = beeps + silent;
  const din = [lead.from, lead.to].some(({ connector }) => familyOf(connector) === 'din');
  const contacts = [lead.from, lead.to].map(
    ({ connector }) => `${words(connector)} with ${contactsOf(connector).length} contacts`,
  );
  return {
    ask: `${sayPlan(lead)} Its plugs: ${contacts.join(', and ')}${din ? ', the shell counted' : ''}. Continuity tells of two contacts at a time. ${moved ? 'A reading of a conductor is taken once with each plug moved, and all others once.' : 'All readings are taken with the lead lying still.'} How few readings are enough to test it?`,
    ...aNumber(right, 'readings', 0, FEWEST_READINGS_SAID, {
      'three beeps are enough': beeps,
      'a beep is a good joint': moved && wired + silent,
      'spare contacts forgotten': beeps + pairsOf(wired),
      'both ends of a wire': beeps + pairsOf(groups) + pairsOf(wired),
      'every two contacts': pairsOf(
        contactsOf(lead.from.connector).length + contactsOf(lead.to.connector).length,
      ),
    }),
    hints: [
      'A test has two halves: a beep for each conductor, and silence between all that must not touch.',
      'Once a conductor has beeped, its two ends count as one. A contact without a wire counts for itself.',
      `There are ${groups} such groups here. Each two of them need one silent reading.`,
    ],
    steps: [
      `${wired} conductors${moved ? ', each with one plug moved and with the other' : ''}: ${beeps} readings that must beep.`,
      `${groups} groups of contacts that must not touch. Each two of them: ${groups} times ${groups - 1}, halved, which is ${silent}.`,
      `${beeps} and ${silent} make ${right}.`,
    ],
  };
}
