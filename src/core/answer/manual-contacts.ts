/** From what a text puts on each contact to the types that do so. */
import { STYLES, styleEntry } from '../wiring/index.ts';
import type { Style } from '../wiring/index.ts';
import { ASK_CONTACTS, contradicts, said } from './manual-reading.ts';
import type { ManualReading } from './manual-reading.ts';
import type { Assigned, PhoneContact } from './manual-words.ts';

/** Types whose contacts agree with everything that a text says of them. */
export function fromContacts(assigned: readonly Assigned[]): ManualReading | undefined {
  if (assigned.length === 0) return undefined;
  const told = new Map<PhoneContact, Assigned>();
  for (const one of assigned) {
    const before = told.get(one.contact);
    if (before && before.carried !== one.carried)
      return contradicts(`it says ${before.words} and ${one.words}`);
    told.set(one.contact, one);
  }
  const reason = `it says ${[...told.values()].map(({ words }) => words).join(', ')}`;
  const could = STYLES.filter(
    (style) => style !== 'din' && style !== 'both-ways' && agrees(style, told),
  ).sort((one, other) => likelihood(other, told) - likelihood(one, told));
  const type = could[0];
  if (type === undefined) return contradicts(`${reason}, which no type known here does`);
  if (could.length === 1) return said(type, reason);
  return { state: 'half', type, could, reason, questions: [openQuestion(told)] };
}

/** Whether a type puts on each contact what the text says. A word such as 'data' may stand for either live line of the loop. */
function agrees(style: Style, told: ReadonlyMap<PhoneContact, Assigned>): boolean {
  const { lines } = styleEntry(style);
  return [...told.values()].every(({ contact, carried }) => {
    const own = (Object.keys(lines) as (keyof typeof lines)[]).find((line) => lines[line] === contact);
    if (carried === 'nothing') return own === undefined;
    return own === carried;
  });
}

/** How well a type fits what is told and what is not: a loop where pins are named, a signal to ground where only 'signal' is. */
function likelihood(style: Style, told: ReadonlyMap<PhoneContact, Assigned>): number {
  const { family } = styleEntry(style);
  const exact = [...told.values()].some((one) => one.exact && one.carried !== 'nothing');
  const grounded = told.get('sleeve')?.carried === 'shield';
  return (exact === (family === 'loop') ? 2 : 0) + (grounded && style.startsWith('two-contact') ? -4 : 0);
}

function openQuestion(told: ReadonlyMap<PhoneContact, Assigned>): string {
  const missing = (['tip', 'ring', 'sleeve'] as const).find((contact) => !told.has(contact));
  const known = [...told.values()].some(({ carried }) => carried === 'source');
  if (missing === undefined) return ASK_CONTACTS;
  return missing === 'sleeve'
    ? 'What is on the sleeve: pin 2 (ground), or one of the pins 4 and 5?'
    : `What is on the ${missing}: DIN pin ${known ? '5' : '4'}, or nothing?`;
}
