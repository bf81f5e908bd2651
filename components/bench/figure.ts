/** From a work and its verdict to what the figure draws. */
import { lineAt, mate } from '../../src/core/wiring/index.ts';
import { linkWords, sayAmperes, sayVolts } from '../../src/core/verdict/index.ts';
import type { Conductor, Contact, Lead, Line, Side, State, View } from '../../src/core/wiring/index.ts';
import type { LinkVerdict, Spot } from '../../src/core/verdict/index.ts';
import { drawLead } from '../../src/draw/lead.ts';
import type { ChainInput, LeadDrawing, LeadJoint } from '../../src/draw/lead-shape.ts';
import type { ConductorRef, ContactRef } from '../figures/refs.ts';
import { jackOn, leadsOn } from './work.ts';
import type { Work } from './work.ts';

/** What may be shown of a link, in words. */
export const STATES_SHOWN = [
  ['active', 'a 0 is sent (active)'],
  ['idle', 'at rest (idle)'],
] as const satisfies readonly (readonly [State, string])[];

/**
 * Draw the leads on the bench in one state. `labelOf` puts other words on a conductor than its line and current. Without a
 * verdict neither is drawn or told: a conductor is called by its two contacts.
 */
export function drawWork(
  work: Work,
  verdict: LinkVerdict | undefined,
  state: State,
  view: View,
  width: number,
  labelOf?: (conductor: Conductor) => string,
): LeadDrawing {
  const leads = leadsOn(work);
  const chain: ChainInput = {
    width,
    segments: leads.map((lead, at) => ({
      from: { ...lead.from, view, name: endName(leads, at, 'from') },
      to: { ...lead.to, view, name: endName(leads, at, 'to') },
      conductors: verdict
        ? lead.conductors.map((one, index) => ({
            ...one,
            line: verdict.lines[work.branch]?.[at]?.[index] ?? 'spare',
            amperes: amperesOf(work, verdict, state, at, one),
            ...(labelOf && { label: labelOf(one) }),
          }))
        : lead.conductors,
    })),
    joints: leads.slice(1).map((after, at) => jointOf(leads[at] as Lead, after)),
  };
  return drawLead(chain);
}

/** The answer in one line: the outcome, and what the input gets while a 0 is sent. */
export function shortAnswer(verdict: LinkVerdict): string {
  const { label } = linkWords(verdict);
  const input = verdict.inputs[verdict.decides];
  if (!input) return label;
  return `${label}: ${(input.kind === 'level' ? sayVolts : sayAmperes)(input.active)}`;
}

function endName(leads: readonly Lead[], at: number, side: 'from' | 'to'): string {
  const { form } = (leads[at] as Lead)[side];
  if (at === 0 && side === 'from') return `${form} at the output`;
  if (at === leads.length - 1 && side === 'to') return `${form} at the input`;
  return `${form} of lead ${at + 1}`;
}

function jointOf(before: Lead, after: Lead): LeadJoint {
  const plugFirst = before.to.form === 'plug';
  if (before.to.form === after.from.form)
    return { name: `two ${before.to.form}s: they do not join`, touches: [] };
  const mating = plugFirst
    ? mate(before.to.connector, after.from.connector)
    : mate(after.from.connector, before.to.connector);
  if (!mating.fits) return { name: 'does not fit', touches: [] };
  return {
    name: 'plug in jack',
    touches: mating.touches.map(({ plug, jack }) =>
      plugFirst ? { before: plug, after: jack } : { before: jack, after: plug },
    ),
  };
}

function amperesOf(
  work: Work,
  verdict: LinkVerdict,
  state: State,
  lead: number,
  { from, to }: Conductor,
): number {
  const found = verdict.readings[state].conductors.find(
    (one) => one.branch === work.branch && one.lead === lead && one.from === from && one.to === to,
  );
  return found?.amperes ?? 0;
}

/** The jack contact that a contact of an outer end touches, or undefined in the middle of a chain. */
function jackSpot(work: Work, ref: ContactRef): Spot | undefined {
  const leads = leadsOn(work);
  if (ref.segment === 0 && ref.side === 'from') {
    const contact = touched(leads[0] as Lead, 'from', jackOn(work, 'output').connector, ref.contact);
    return contact === undefined ? undefined : { place: 'output', contact };
  }
  if (ref.segment === leads.length - 1 && ref.side === 'to') {
    const contact = touched(leads[ref.segment] as Lead, 'to', jackOn(work, 'input').connector, ref.contact);
    return contact === undefined ? undefined : { place: 'input', branch: work.branch, contact };
  }
  return undefined;
}

function touched(
  lead: Lead,
  side: 'from' | 'to',
  jack: Parameters<typeof mate>[1],
  contact: Contact,
): Contact | undefined {
  const mating = lead[side].form === 'plug' ? mate(lead[side].connector, jack) : undefined;
  return mating?.fits ? mating.touches.find(({ plug }) => plug === contact)?.jack : undefined;
}

/** The line of the loop at a contact of an outer end. */
export function lineOfRef(work: Work, ref: ContactRef): Line | undefined {
  const spot = jackSpot(work, ref);
  if (!spot) return undefined;
  return lineAt(jackOn(work, spot.place === 'output' ? 'output' : 'input').style, spot.contact);
}

/** What a contact reads: its line and its volts. */
export function readingOfRef(
  work: Work,
  verdict: LinkVerdict,
  state: State,
  ref: ContactRef,
): string | undefined {
  const spot = jackSpot(work, ref);
  if (!spot) return undefined;
  const line = lineOfRef(work, ref);
  return `${line === undefined ? 'spare contact' : `${line} line`}, ${voltWords(verdict, state, spot)}`;
}

/** Volts at a contact of a jack in words. */
export function voltWords(verdict: LinkVerdict, state: State, spot: Spot): string {
  const found = verdict.readings[state].contacts.find(({ spot: one }) => sameSpot(one, spot));
  return found?.volts === null || found?.volts === undefined ? 'floating' : sayVolts(found.volts);
}

function sameSpot(a: Spot, b: Spot): boolean {
  if (a.place !== b.place || a.contact !== b.contact) return false;
  if (a.place === 'output' || b.place === 'output') return true;
  if (a.branch !== b.branch) return false;
  return a.place === 'input' || b.place === 'input' || (a.lead === b.lead && a.side === b.side);
}

/** The contact of the figure that stands for a contact of a jack. */
export function refOfSpot(work: Work, spot: Spot): ContactRef | undefined {
  const last = leadsOn(work).length - 1;
  const side: Side = spot.place === 'output' ? 'from' : 'to';
  if (spot.place === 'lead') return undefined;
  return { segment: side === 'from' ? 0 : last, side, contact: spot.contact };
}

/** The conductors that carry the step from one contact to the next: all those with current when nothing is stepped through. */
export function conductorsAt(work: Work, contact: Contact, side: Side): readonly ConductorRef[] {
  const leads = leadsOn(work);
  const segment = side === 'from' ? 0 : leads.length - 1;
  return (leads[segment]?.conductors ?? []).flatMap((one, index) =>
    one[side] === contact ? [{ segment, index }] : [],
  );
}
