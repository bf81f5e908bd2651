/** What the build sheet keeps of its own in the browser: which lead, and what was chosen for it. The lead itself is in hand. */
import { NO_CHOICES, PLUG_BODIES } from '../../src/core/making/index.ts';
import type { Lead, Side } from '../../src/core/wiring/index.ts';
import type { Plan, PlanLead } from '../../src/core/plan/index.ts';
import type { SheetChoices, Stock } from '../../src/core/making/index.ts';
import { noteKind } from '../keep/kind.ts';
import { fieldOf, oneOf } from '../keep/notes.ts';
import { WAYS_BACK } from './way-back.ts';
import type { WayBack } from './way-back.ts';

/** The sheet's own choices. */
export interface SheetNote {
  /** Name of the lead of the plan; empty for the first. */
  readonly lead: string;
  readonly choices: SheetChoices;
  /** The wiring that the colours were chosen for: another one has the usual colours. */
  readonly coloursOf: string;
  readonly way: WayBack;
  /** Whether the full table of the test is on the paper too. */
  readonly full: boolean;
}

/** The choices of a first visit. */
export const NO_NOTE: SheetNote = { lead: '', choices: NO_CHOICES, coloursOf: '', way: 'qr', full: false };

/** The lead that the sheet is for; undefined as long as there is none, or none with a wire in it. */
export function leadOf(plan: Plan, { lead }: SheetNote): PlanLead | undefined {
  const wired = plan.leads.filter(({ conductors }) => conductors.length > 0);
  return wired.find(({ name }) => name === lead) ?? wired[0];
}

/** What the test of a lead depends on: another wiring is another test. */
export function wiringOf(lead: Lead): string {
  return JSON.stringify([lead.from, lead.to, lead.conductors]);
}

/** The choices as far as they are meant for this lead. */
export function choicesFor({ choices, coloursOf }: SheetNote, lead: Lead): SheetChoices {
  return coloursOf === wiringOf(lead) ? choices : { ...choices, colours: [] };
}

/** The choices as the keeper of their shelf knows them; what cannot be read in them is as on a first visit. */
export const SHEET_KIND = noteKind<SheetNote>(
  'set of choices',
  (note) => {
    const words = (name: string): string => {
      const value = fieldOf(note, name);
      return typeof value === 'string' ? value : '';
    };
    return {
      lead: words('lead'),
      choices: choicesOf(fieldOf(note, 'choices')),
      coloursOf: words('coloursOf'),
      way: oneOf(WAYS_BACK, fieldOf(note, 'way'), NO_NOTE.way),
      full: fieldOf(note, 'full') === true,
    };
  },
  (choices) => choices,
);

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
