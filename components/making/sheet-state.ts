/** What the build sheet shows, as one plain value, and how it is kept in the browser. */
import { NO_CHOICES, PLUG_BODIES } from '../../src/core/making/index.ts';
import { readPlanText, writePlanText } from '../../src/core/plan/index.ts';
import type { Lead, Side } from '../../src/core/wiring/index.ts';
import type { PlanLead } from '../../src/core/plan/index.ts';
import type { SheetChoices, Stock } from '../../src/core/making/index.ts';
import { workOfPlan } from '../bench/work.ts';
import type { Work } from '../bench/work.ts';
import { dropNote, fieldOf, keepNote, keptNote, oneOf } from '../keep/notes.ts';
import { WAYS_BACK } from './way-back.ts';
import type { WayBack } from './way-back.ts';

/** The sheet. `opened`: the work is a plan that was opened, otherwise two jacks with the best lead between them. */
export interface SheetState {
  readonly work: Work;
  readonly opened: boolean;
  /** Name of the lead of the plan; empty for the first. */
  readonly lead: string;
  readonly choices: SheetChoices;
  /** What the search for the lead between two jacks said, and whether it found one. */
  readonly said: string;
  readonly found: boolean;
  readonly way: WayBack;
  /** Whether the full proof table is on the paper too. */
  readonly full: boolean;
}

/** The lead that the sheet is for, as long as the plan has any. */
export function leadOf({ work, lead }: SheetState): PlanLead | undefined {
  return work.plan.leads.find(({ name }) => name === lead) ?? work.plan.leads[0];
}

/** What the proof of a lead depends on: another wiring is another proof. */
export function wiringOf(lead: Lead): string {
  return JSON.stringify([lead.from, lead.to, lead.conductors]);
}

const NOTE = 'sheet';

/** Keep the sheet; says what went wrong when the browser refuses. */
export function keepSheet({ work, ...rest }: SheetState): string | undefined {
  return keepNote(NOTE, { ...rest, plan: writePlanText(work.plan) });
}

/** Forget the sheet that was kept. */
export function forgetSheet(): void {
  dropNote(NOTE);
}

/** The sheet kept last, on top of what a fresh page shows; undefined when nothing was kept that can still be read. */
export function keptSheet(fresh: SheetState): SheetState | undefined {
  const note = keptNote(NOTE);
  const text = fieldOf(note, 'plan');
  if (typeof text !== 'string') return undefined;
  const reading = readPlanText(text);
  const work = reading.ok ? workOfPlan(reading.plan) : '';
  if (typeof work === 'string') return undefined;
  const words = (name: string): string | undefined => {
    const value = fieldOf(note, name);
    return typeof value === 'string' ? value : undefined;
  };
  return {
    work,
    opened: fieldOf(note, 'opened') === true,
    lead: words('lead') ?? '',
    choices: choicesOf(fieldOf(note, 'choices')),
    said: words('said') ?? fresh.said,
    found: fieldOf(note, 'found') !== false,
    way: oneOf(WAYS_BACK, fieldOf(note, 'way'), fresh.way),
    full: fieldOf(note, 'full') === true,
  };
}

/** Choices as they were kept: what is not as it should be is as if it had not been chosen. */
function choicesOf(note: unknown): SheetChoices {
  const bodies = fieldOf(note, 'bodies');
  const takes = fieldOf(note, 'plugTakesMetres');
  const colours = fieldOf(note, 'colours');
  const body = (side: Side) => oneOf(PLUG_BODIES, fieldOf(bodies, side), NO_CHOICES.bodies[side]);
  const take = (side: Side): Partial<Record<Side, number>> => {
    const metres = fieldOf(takes, side);
    return typeof metres === 'number' ? { [side]: metres } : {};
  };
  return {
    bodies: { from: body('from'), to: body('to') },
    plugTakesMetres: { ...take('from'), ...take('to') },
    colours: Array.isArray(colours)
      ? colours.map((one: unknown) => (typeof one === 'string' ? one : undefined))
      : [],
    stock: stockOf(fieldOf(note, 'stock')),
  };
}

function stockOf(note: unknown): Stock | undefined {
  const [cores, outsideMetres] = [fieldOf(note, 'cores'), fieldOf(note, 'outsideMetres')];
  if (typeof cores !== 'number' || typeof outsideMetres !== 'number') return undefined;
  return { cores, outsideMetres, shielded: fieldOf(note, 'shielded') === true };
}
