/** What lies on the bench: a plan, and which of its links is being wired. Every change makes a new work. */
import { checkLink } from '../../src/core/verdict/index.ts';
import {
  contactWords,
  PIGTAIL_METRES,
  contactsOf,
  makeJack,
  makeLead,
  newJack,
  settleJack,
  wires,
} from '../../src/core/wiring/index.ts';
import { findJack, linkOf, planOfLink, wholeLink } from '../../src/core/plan/index.ts';
import type {
  Conductor,
  Connector,
  Contact,
  End,
  Fault,
  Jack,
  Lead,
  Link,
  Side,
} from '../../src/core/wiring/index.ts';
import type { LinkVerdict } from '../../src/core/verdict/index.ts';
import type { Plan, PlanBranch, PlanJack, PlanLink } from '../../src/core/plan/index.ts';

/** A plan with the link and the input that are on the bench. */
export interface Work {
  readonly plan: Plan;
  readonly link: number;
  readonly branch: number;
}

/** Which of the two jacks of the link on the bench. */
export type JackSide = 'output' | 'input';

/** A work of two jacks and the leads between them. */
export function workOf(output: Jack, input: Jack, leads: readonly Lead[]): Work {
  return { plan: planOfLink(output, input, leads), link: 0, branch: 0 };
}

/** The first thing a new reader meets: a DIN output, a Type A input, and a lead with no conductors yet. */
export function firstWork(): Work {
  const output = makeJack('out', 'din5', 'din');
  const input = newJack('in', 'trs-3.5', 'type-a');
  return workOf(output, input, [makeLead('din5', 'trs-3.5', [])]);
}

/** What a bench begins with: a plan that the page hands it, or the first thing a new reader meets. @throws when the plan has no link. */
export function startingWork(plan: Plan | undefined): Work {
  const given = plan === undefined ? firstWork() : workOfPlan(plan);
  if (typeof given === 'string') throw new Error(`bench: ${given}`);
  return given;
}

/** The work a plan opens with, or why the bench cannot show it. */
export function workOfPlan(plan: Plan): Work | string {
  if (plan.links.length === 0) return 'links: expected at least one link to wire, got none';
  return { plan, link: 0, branch: 0 };
}

/** The link on the bench as the plan holds it. */
export function planLink(work: Work): PlanLink {
  return work.plan.links[work.link] as PlanLink;
}

function planBranch(work: Work): PlanBranch {
  return planLink(work).inputs[work.branch] as PlanBranch;
}

/** The link on the bench, with jacks and leads in place. */
export function linkOn(work: Work): Link {
  return linkOf(work.plan, planLink(work));
}

/** The link on the bench with the input on the bench first: for what follows one input. */
export function linkAhead(work: Work): Link {
  const link = linkOn(work);
  const first = link.branches[work.branch];
  const others = link.branches.filter((_, at) => at !== work.branch);
  return first === undefined ? link : { ...link, branches: [first, ...others] };
}

/** A work is judged once: undo, redo and whoever else asks find its verdict again. */
const verdicts = new WeakMap<Work, LinkVerdict>();

/** The verdict on the link on the bench, solved with all of the plan that shares its output or an input; its own inputs first. */
export function verdictOf(work: Work): LinkVerdict {
  const known = verdicts.get(work) ?? checkLink(wholeLink(work.plan, planLink(work)));
  verdicts.set(work, known);
  return known;
}

/** The jack on one side of the link on the bench. @throws when the plan has no such jack. */
export function jackOn(work: Work, side: JackSide): Jack {
  const place = side === 'output' ? planLink(work).output : planBranch(work);
  const found = findJack(work.plan, place);
  if (!found) throw new Error(`bench: no jack '${place.jack}' on '${place.device}'`);
  return withoutName(found);
}

/** The same jack is handed out again as long as nothing about it changes, so that what hangs on it need not be worked out anew. */
const unnamed = new WeakMap<PlanJack, Jack>();

function withoutName(named: PlanJack): Jack {
  const known = unnamed.get(named);
  if (known) return known;
  const { name: _, ...jack } = named;
  unnamed.set(named, jack);
  return jack;
}

/** The leads of the input on the bench, in series from the output. */
export function leadsOn(work: Work): readonly Lead[] {
  return planBranch(work).leads.map((name) => work.plan.leads.find((lead) => lead.name === name) as Lead);
}

/** Change a jack; what no longer suits falls back to the usual, and a plug on the lead follows its jack. */
export function changeJack(work: Work, side: JackSide, changes: Partial<Jack>): Work {
  const before = jackOn(work, side);
  const jack = settleJack({ ...before, ...changes });
  const place = side === 'output' ? planLink(work).output : planBranch(work);
  const devices = work.plan.devices.map((device) =>
    device.name !== place.device
      ? device
      : {
          ...device,
          jacks: device.jacks.map((one) => (one.name === place.jack ? { ...jack, name: one.name } : one)),
        },
  );
  const changed = { ...work, plan: { ...work.plan, devices } };
  if (jack.connector === before.connector) return changed;
  const leads = leadsOn(work);
  return side === 'output'
    ? changeEnd(changed, 0, 'from', { connector: jack.connector, form: 'plug' })
    : changeEnd(changed, leads.length - 1, 'to', { connector: jack.connector, form: 'plug' });
}

/** Change one of the leads in series. */
export function changeLead(work: Work, at: number, changes: Partial<Lead>): Work {
  const name = planBranch(work).leads[at];
  const leads = work.plan.leads.map((lead) => (lead.name === name ? { ...lead, ...changes } : lead));
  return { ...work, plan: { ...work.plan, leads } };
}

/** Put another end on a lead; conductors and faults on contacts that the new end lacks go. */
export function changeEnd(work: Work, at: number, side: Side, end: End): Work {
  const lead = leadsOn(work)[at] as Lead;
  const has = (contact: Contact): boolean => contactsOf(end.connector).includes(contact);
  return changeLead(work, at, {
    [side]: end,
    conductors: lead.conductors.filter((one) => has(one[side])),
    faults: lead.faults.filter(
      (fault) =>
        fault.side !== side || (fault.kind === 'short' ? fault.between.every(has) : has(fault.contact)),
    ),
  });
}

/** Lay the conductor, or take it out where it is laid already. */
export function toggleConductor(work: Work, at: number, conductor: Conductor): Work {
  const { conductors } = leadsOn(work)[at] as Lead;
  const same = (one: Conductor): boolean => one.from === conductor.from && one.to === conductor.to;
  return changeLead(work, at, {
    conductors: conductors.some(same) ? conductors.filter((one) => !same(one)) : [...conductors, conductor],
  });
}

/** What a toggle does, in words for who does not see it; `at` is the number of the lead. */
export function sayToggle(work: Work, at: number, conductor: Conductor): string {
  const leads = leadsOn(work);
  const laid = leads[at]?.conductors.some(({ from, to }) => from === conductor.from && to === conductor.to);
  const [from, to] = [contactWords(conductor.from), contactWords(conductor.to)];
  const words = laid === true ? `${from} and ${to} taken apart.` : `${from} joined to ${to}.`;
  return leads.length === 1 ? words : `Lead ${at + 1}: ${words}`;
}

/** Whether anything is laid. */
export function isEmpty(work: Work): boolean {
  return leadsOn(work).every(({ conductors, faults }) => conductors.length === 0 && faults.length === 0);
}

/** Take every conductor and fault out of every lead on the bench. */
export function clearLeads(work: Work): Work {
  return leadsOn(work).reduce((made, _, at) => changeLead(made, at, { conductors: [], faults: [] }), work);
}

/** Replace the leads on the bench by one that fits both jacks and has these conductors. */
export function layLead(work: Work, conductors: readonly Conductor[]): Work {
  const one = dropSecond(work);
  const fitted = changeEnd(one, 0, 'from', { connector: jackOn(work, 'output').connector, form: 'plug' });
  const both = changeEnd(fitted, 0, 'to', { connector: jackOn(work, 'input').connector, form: 'plug' });
  return changeLead(both, 0, { conductors, faults: [] });
}

/** Put an adapter behind the lead: a jack that takes its plug, a plug for the input, each contact to the same contact. */
export function addSecond(work: Work): Work {
  const leads = leadsOn(work);
  const first = leads[leads.length - 1] as Lead;
  const input = jackOn(work, 'input');
  const taken = work.plan.leads.map(({ name }) => name);
  let number = taken.length + 1;
  while (taken.includes(`adapter ${number}`)) number++;
  const adapter = makeLead(
    first.to.connector,
    input.connector,
    straight(first.to.connector, input.connector),
    {
      name: `adapter ${number}`,
      from: { connector: first.to.connector, form: 'jack' },
      lengthMetres: PIGTAIL_METRES,
    },
  );
  return changeBranch({ ...work, plan: { ...work.plan, leads: [...work.plan.leads, adapter] } }, [
    ...planBranch(work).leads,
    adapter.name,
  ]);
}

/** Take the second lead away; the first gets a plug for the input again. */
export function dropSecond(work: Work): Work {
  const [first, ...others] = planBranch(work).leads;
  if (first === undefined || others.length === 0) return work;
  const elsewhere = (name: string): boolean =>
    work.plan.links.some((link, at) =>
      link.inputs.some(
        (input, branch) => (at !== work.link || branch !== work.branch) && input.leads.includes(name),
      ),
    );
  const leads = work.plan.leads.filter(({ name }) => !others.includes(name) || elsewhere(name));
  const dropped = changeBranch({ ...work, plan: { ...work.plan, leads } }, [first]);
  return changeEnd(dropped, 0, 'to', { connector: jackOn(work, 'input').connector, form: 'plug' });
}

function changeBranch(work: Work, leads: readonly string[]): Work {
  const links = work.plan.links.map((link, at) =>
    at !== work.link
      ? link
      : {
          ...link,
          inputs: link.inputs.map((input, branch) => (branch === work.branch ? { ...input, leads } : input)),
        },
  );
  return { ...work, plan: { ...work.plan, links } };
}

function straight(from: Connector, to: Connector): readonly Conductor[] {
  const there = contactsOf(to);
  const same = contactsOf(from).filter((contact) => contact !== 'shell' && there.includes(contact));
  if (same.length > 0) return same.map((contact) => ({ from: contact, to: contact }));
  return there.includes('tip')
    ? wires('5-tip', '4-ring', '2-sleeve').filter((one) => there.includes(one.to))
    : wires('tip-5', 'ring-4', 'sleeve-2').filter((one) => contactsOf(from).includes(one.from));
}

/** Put a fault into a lead. */
export function addFault(work: Work, at: number, fault: Fault): Work {
  const { faults } = leadsOn(work)[at] as Lead;
  return changeLead(work, at, { faults: [...faults, fault] });
}

/** Take the fault at `index` of the lead's list out. */
export function dropFault(work: Work, at: number, index: number): Work {
  const { faults } = leadsOn(work)[at] as Lead;
  return changeLead(work, at, { faults: faults.filter((_, one) => one !== index) });
}
