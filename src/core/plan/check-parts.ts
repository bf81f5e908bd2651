/** What must hold of a jack or a lead whose fields are right one by one. */
import { contactsOf, jackProblem } from '../wiring/index.ts';
import type { Contact, Jack, Lead, Side } from '../wiring/index.ts';
import { miss } from './reading.ts';
import type { Problem } from './reading.ts';

/** Note a jack that cannot be: a style that its connector does not take, a value out of its range. */
export function checkJack(jack: Jack, place: string, problems: Problem[]): void {
  const got = jackProblem(jack);
  if (got !== undefined) problems.push({ place, expected: 'a jack that can be', got });
}

/** Note contacts that are not on their connectors, and a conductor that is laid twice. */
export function checkLead(lead: Omit<Lead, 'name'>, place: string, problems: Problem[]): void {
  const has = (side: Side, contact: Contact, where: string): void => {
    const { connector } = lead[side];
    if (!contactsOf(connector).includes(contact))
      miss(problems, where, `a contact of ${connector} (${contactsOf(connector).join(', ')})`, contact);
  };
  lead.conductors.forEach(({ from, to }, at) => {
    has('from', from, `${place}.conductors[${at}].from`);
    has('to', to, `${place}.conductors[${at}].to`);
    if (lead.conductors.findIndex((one) => one.from === from && one.to === to) !== at)
      miss(problems, `${place}.conductors[${at}]`, 'each conductor once', `${from} to ${to}`);
  });
  lead.faults.forEach((fault, at) => {
    const where = `${place}.faults[${at}]`;
    if (fault.kind === 'short')
      fault.between.forEach((contact) => has(fault.side, contact, `${where}.between`));
    else has(fault.side, fault.contact, `${where}.contact`);
  });
}
