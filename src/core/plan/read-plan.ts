/** Reading a plan: every field checked, every message with its place, what was expected and what came. */
import { CIRCUITS, PARTS, VALUES } from '../wiring/index.ts';
import type { ValueName } from '../wiring/index.ts';
import { CONNECTORS, CONTACTS, FORMS, contactsOf } from '../wiring/index.ts';
import type { Contact } from '../wiring/index.ts';
import { DIRECTIONS, JOINT_OHMS, SIDES, jackProblem } from '../wiring/index.ts';
import type { Conductor, End, Fault, Lead } from '../wiring/index.ts';
import { STYLES } from '../wiring/index.ts';
import { CONTACT_OHMS, GAUGES, LENGTH_METRES } from '../wiring/index.ts';
import { checkNames } from './check-names.ts';
import { PLAN_FORMAT, PLAN_LIMITS as MOST, PLAN_VERSION } from './plan.ts';
import type { Device, JackPlace, Plan, PlanBranch, PlanJack, PlanLead, PlanLink } from './plan.ts';
import {
  BOARD_FIELDS,
  DEVICE_FIELDS,
  JACK_FIELDS,
  LEAD_FIELDS,
  readMaking,
  readPress,
  readWishes,
} from './read-board.ts';
import type { StockLead } from './plan.ts';
import { listOf, miss, number, objectOf, oneOf, sayProblem, show, text, whole } from './read.ts';
import type { Problem, Reader, Reading } from './read.ts';

/** A plan, or everything that is wrong with it. */
export type PlanReading =
  { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly problems: readonly Problem[] };

/** Problems named in one message; the rest are counted. */
const PROBLEMS_NAMED = 5;

const name = text(MOST.nameCharacters);

const readValues: Reader<PlanJack['values']> = (value, place, reading) => {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return miss(reading, place, 'an object of values', value);
  for (const [key, one] of Object.entries(value)) {
    if (!(VALUES as readonly string[]).includes(key))
      return miss(reading, `${place}.${key}`, `one of ${VALUES.join(', ')}`, key);
    if (typeof one !== 'number' || !Number.isFinite(one))
      return miss(reading, `${place}.${key}`, 'a number', one);
  }
  return value as Partial<Record<ValueName, number>>;
};

const jackFields = objectOf<PlanJack>(
  {
    name,
    direction: oneOf(DIRECTIONS),
    connector: oneOf(CONNECTORS),
    style: oneOf(STYLES),
    circuit: oneOf(CIRCUITS),
    part: oneOf(PARTS),
    values: readValues,
    ...JACK_FIELDS,
  },
  { part: '6N138', values: {} },
  Object.keys(JACK_FIELDS) as (keyof PlanJack)[],
);

const readJack: Reader<PlanJack> = (value, place, reading) => {
  const jack = jackFields(value, place, reading);
  if (!jack) return undefined;
  const problem = jackProblem(jack);
  if (problem === undefined) return jack;
  reading.problems.push({ place, expected: 'a jack that can be', got: problem });
  return undefined;
};

const readDevice: Reader<Device> = objectOf<Device>(
  { name, jacks: listOf(readJack, MOST.jacks), ...DEVICE_FIELDS },
  {},
  Object.keys(DEVICE_FIELDS) as (keyof Device)[],
);

const readEnd: Reader<End> = objectOf<End>({ connector: oneOf(CONNECTORS), form: oneOf(FORMS) });
const readConductor: Reader<Conductor> = objectOf<Conductor>({ from: oneOf(CONTACTS), to: oneOf(CONTACTS) });

const pair: Reader<readonly [Contact, Contact]> = (value, place, reading) => {
  const read = listOf(oneOf(CONTACTS), 2, 2)(value, place, reading);
  if (!read) return undefined;
  return read[0] === read[1]
    ? miss(reading, place, 'two different contacts', read[0])
    : (read as readonly [Contact, Contact]);
};

const readFault: Reader<Fault> = (value, place, reading) => {
  const kind = value !== null && typeof value === 'object' && 'kind' in value ? value.kind : undefined;
  const side = oneOf(SIDES);
  const contact = oneOf(CONTACTS);
  switch (kind) {
    case 'open':
      return objectOf<Extract<Fault, { kind: 'open' }>>({ kind: oneOf(['open']), side, contact })(
        value,
        place,
        reading,
      );
    case 'joint':
      return objectOf<Extract<Fault, { kind: 'joint' }>>({
        kind: oneOf(['joint']),
        side,
        contact,
        ohms: number(...JOINT_OHMS, 'ohm'),
      })(value, place, reading);
    case 'short':
      return objectOf<Extract<Fault, { kind: 'short' }>>({ kind: oneOf(['short']), side, between: pair })(
        value,
        place,
        reading,
      );
    default:
      return miss(reading, `${place}.kind`, 'one of open, joint, short', kind);
  }
};

const PLAIN_LEAD = {
  name,
  from: readEnd,
  to: readEnd,
  conductors: listOf(readConductor, MOST.conductors),
  lengthMetres: number(...LENGTH_METRES, 'm'),
  gauge: oneOf(GAUGES),
  contactOhms: number(0, 10, 'ohm'),
  faults: listOf(readFault, MOST.faults),
} as const;
const LEAD_OPTIONAL = { contactOhms: CONTACT_OHMS, faults: [] };

const readPlainLead = objectOf<Lead>(PLAIN_LEAD, LEAD_OPTIONAL);
const readPlanLead = objectOf<PlanLead>(
  { ...PLAIN_LEAD, ...LEAD_FIELDS },
  LEAD_OPTIONAL,
  Object.keys(LEAD_FIELDS) as (keyof PlanLead)[],
);

/** A lead whose contacts are on its connectors, each conductor once. */
const checked =
  <L extends Lead>(fields: Reader<L>): Reader<L> =>
  (value, place, reading) => {
    const lead = fields(value, place, reading);
    if (!lead) return undefined;
    const has = (side: 'from' | 'to', contact: Contact, where: string): void => {
      const { connector } = lead[side];
      if (!contactsOf(connector).includes(contact))
        miss(reading, where, `a contact of ${connector} (${contactsOf(connector).join(', ')})`, contact);
    };
    lead.conductors.forEach(({ from, to }, at) => {
      has('from', from, `${place}.conductors[${at}].from`);
      has('to', to, `${place}.conductors[${at}].to`);
      if (lead.conductors.findIndex((one) => one.from === from && one.to === to) !== at) {
        miss(reading, `${place}.conductors[${at}]`, 'each conductor once', `${from} to ${to}`);
      }
    });
    lead.faults.forEach((fault, at) => {
      const where = `${place}.faults[${at}]`;
      if (fault.kind === 'short')
        fault.between.forEach((contact) => has(fault.side, contact, `${where}.between`));
      else has(fault.side, fault.contact, `${where}.contact`);
    });
    return lead;
  };

const readPlace: Reader<JackPlace> = objectOf<JackPlace>({ device: name, jack: name });
const readBranch: Reader<PlanBranch> = objectOf<PlanBranch>({
  device: name,
  jack: name,
  leads: listOf(name, MOST.leadsInSeries, 1),
});
const readLink: Reader<PlanLink> = objectOf<PlanLink>({
  name,
  output: readPlace,
  inputs: listOf(readBranch, MOST.inputs, 1),
});

const planFields = objectOf<Plan>(
  {
    format: oneOf([PLAN_FORMAT]),
    version: oneOf([PLAN_VERSION]),
    title: text(MOST.nameCharacters, 0),
    devices: listOf(readDevice, MOST.devices),
    leads: listOf(checked(readPlanLead), MOST.leads),
    links: listOf(readLink, MOST.links),
    ...BOARD_FIELDS,
    stock: listOf(
      objectOf<StockLead>({
        lead: checked(readPlainLead),
        price: number(0, MOST.price, ''),
        owned: whole(0, MOST.ownedLeads),
      }),
      MOST.stock,
    ),
    hubs: listOf(readDevice, MOST.hubs),
    making: readMaking,
    wishes: readWishes,
    press: listOf(readPress, MOST.press),
  },
  { title: '' },
  [...(Object.keys(BOARD_FIELDS) as (keyof Plan)[]), 'stock', 'hubs', 'making', 'wishes', 'press'],
);

/** Read a plan from text. */
export function readPlanText(json: string): PlanReading {
  if (json.length > MOST.characters) {
    return failed('the file', `at most ${MOST.characters} characters`, `${json.length} characters`);
  }
  let value: unknown;
  try {
    value = JSON.parse(json.replace(/^\uFEFF/, ''));
  } catch (error) {
    return failed(
      'the file',
      'JSON',
      `other text (${error instanceof Error ? error.message : String(error)})`,
    );
  }
  return readPlan(value);
}

/** Read a plan from parsed JSON. */
export function readPlan(value: unknown): PlanReading {
  const newer = value !== null && typeof value === 'object' && 'version' in value ? value.version : undefined;
  if (typeof newer === 'number' && newer > PLAN_VERSION) {
    return failed('version', `${PLAN_VERSION}: this file was made by a newer workbook`, String(newer));
  }
  // A file of another kind is told so at once, not by everything in it that a plan has not.
  if (value !== null && typeof value === 'object' && !Array.isArray(value)) {
    const format = 'format' in value ? value.format : undefined;
    if (format !== PLAN_FORMAT) return failed('format', `one of ${PLAN_FORMAT}`, show(format));
  }
  const reading: Reading = { problems: [] };
  const plan = planFields(value, '', reading);
  if (plan) checkNames(plan, reading);
  if (!plan || reading.problems.length > 0) {
    return {
      ok: false,
      problems: reading.problems.map((one) => (one.place === '' ? { ...one, place: 'the file' } : one)),
    };
  }
  return { ok: true, plan };
}

/** Every problem in one message, the first few by name. */
export function sayProblems(problems: readonly Problem[]): string {
  const named = problems.slice(0, PROBLEMS_NAMED).map(sayProblem);
  const more = problems.length - named.length;
  return named.join('; ') + (more > 0 ? `; and ${more} more` : '');
}

/** Write a plan as text, the same plan always the same text. */
export function writePlanText(plan: Plan): string {
  return `${JSON.stringify(plan, undefined, 2)}\n`;
}

function failed(place: string, expected: string, got: string): PlanReading {
  return { ok: false, problems: [{ place, expected, got }] };
}
