/**
 * The shape of a plan, stated once: one file for the whole workbook, of devices with jacks, leads, and links; one lead is a
 * plan of two devices and one link. Types, reader, JSON Schema and the packing of a shared link all come from here, so a new
 * field is one line, at the end of its object and in `left`.
 */
import { CIRCUITS, CONNECTORS, CONTACTS, EXTRAS, FORMS, PARTS, STYLES, VALUES } from '../wiring/index.ts';
import {
  CONTACT_OHMS,
  CONTACT_FLOOR,
  CONTACT_RANGE,
  DIRECTIONS,
  GAUGES,
  JOINT_OHMS,
  LATENCY_SECONDS,
  LENGTH_METRES,
  SIDES,
} from '../wiring/index.ts';
import { checkJack, checkLead } from './check-parts.ts';
import { DEVICE_KINDS, EDGES, JACK_ROLES, LEAD_ORIGINS, POWERS, SETTINGS, TALKS, THRUS } from './kinds.ts';
import { PLAN_FORMAT, PLAN_LIMITS as MOST, PLAN_VERSION, PRESS_RANGES } from './kinds.ts';
import { kindsOf, record } from './record.ts';
import { anyNumber, filled, left, listOf, nameOf, number, oneNumberOf, oneOf } from './shape.ts';
import { only, pairOf, tableOf, text, truth, whole } from './shape.ts';
import type { Of } from './shape.ts';

const NAME = text(MOST.nameCharacters);
const PRICE = number([0, MOST.price]);
const CENTIMETRES = number([0, MOST.centimetres], 'cm');
const CONTACT = oneOf(CONTACTS);
const SIDE = oneOf(SIDES);

/** The shape of a jack on a device. */
export const JACK = record(
  {
    name: NAME,
    direction: oneOf(DIRECTIONS),
    connector: oneOf(CONNECTORS),
    style: oneOf(STYLES),
    circuit: oneOf(CIRCUITS),
    part: filled(oneOf(PARTS), '6N138'),
    values: filled(tableOf(VALUES, anyNumber), {}),
    role: left(oneOf(JACK_ROLES), 'plain'),
    thru: left(oneOf(THRUS), 'hardware'),
    setTo: left(oneOf(SETTINGS), 'out'),
    /** Time a software THRU or a merger needs between a byte read and its copy, seconds. */
    latencySeconds: left(number([0, MOST.latencySeconds], 's'), LATENCY_SECONDS),
    edge: left(oneOf(EDGES), 'back'),
    /** From the left end of a back or front edge, from the back end of a side, centimetres. */
    alongCentimetres: left(CENTIMETRES, 0),
    /** Styles that this jack can be set to; none when it is fixed. */
    styles: left(listOf(oneOf(STYLES), STYLES.length), []),
    /** Name of the jack of the other direction that shares the hole of an in-and-out jack; empty for none. */
    sharesHole: left(text(MOST.nameCharacters, 0), ''),
    /** Whether its spare pins carry a supply. */
    supplyOnSpares: left(truth, false),
    /** What is inside that no standard draws. */
    extras: left(listOf(oneOf(EXTRAS), EXTRAS.length), []),
  },
  { check: checkJack },
);
/** A jack on a device, by name. */
export type PlanJack = Of<typeof JACK>;

/** The shape of a device. Position: the back left corner from the back left of the board, centimetres; width 0 is not placed. */
export const DEVICE = record({
  name: NAME,
  jacks: listOf(JACK, MOST.jacks),
  kind: left(oneOf(DEVICE_KINDS), 'other'),
  talks: left(oneOf(TALKS), 'jacks'),
  power: left(oneOf(POWERS), 'unknown'),
  /** 1 to 16, or 0 where none is set: the device listens to all. */
  channel: left(whole([0, MOST.channel]), 0),
  xCentimetres: left(CENTIMETRES, 0),
  yCentimetres: left(CENTIMETRES, 0),
  widthCentimetres: left(CENTIMETRES, 0),
  depthCentimetres: left(CENTIMETRES, 0),
  /** Whether it is still to be bought. */
  toBuy: left(truth, false),
  /** The reader's own figure. */
  price: left(PRICE, 0),
});
/** A device and its jacks. */
export type Device = Of<typeof DEVICE>;

const END = record({ connector: oneOf(CONNECTORS), form: oneOf(FORMS) }, { inline: true });

/** The kinds of fault inside a lead, which a link numbers in this order. */
const FAULT = kindsOf('kind', [
  record({ kind: only('open'), side: SIDE, contact: CONTACT }, { inline: true }),
  record(
    { kind: only('joint'), side: SIDE, contact: CONTACT, ohms: number(JOINT_OHMS, 'ohm') },
    { inline: true },
  ),
  record({ kind: only('short'), side: SIDE, between: pairOf(CONTACT) }, { inline: true }),
]);

const LEAD_FIELDS = {
  name: NAME,
  from: END,
  to: END,
  conductors: listOf(record({ from: CONTACT, to: CONTACT }, { inline: true }), MOST.conductors),
  lengthMetres: number(LENGTH_METRES, 'm'),
  gauge: oneNumberOf(GAUGES),
  contactOhms: filled(number(CONTACT_RANGE, 'ohm', CONTACT_FLOOR), CONTACT_OHMS),
  faults: filled(listOf(FAULT, MOST.faults), []),
};

const LEAD = record(
  { ...LEAD_FIELDS, origin: left(oneOf(LEAD_ORIGINS), 'made'), price: left(PRICE, 0) },
  { check: checkLead },
);
/** A lead of the plan; its price is the reader's own figure. */
export type PlanLead = Of<typeof LEAD>;

/** What the fields of a lead mean that stay left out. */
export const LEAD_DEFAULTS = LEAD.defaults;

const PLACE = {
  device: nameOf('devices', MOST.nameCharacters),
  jack: nameOf('jacks', MOST.nameCharacters),
};
const PLACE_ALONE = record(PLACE, { inline: true });
/** A jack named by device and jack. */
export type JackPlace = Of<typeof PLACE_ALONE>;

const BRANCH = record({
  ...PLACE,
  leads: listOf(nameOf('leads', MOST.nameCharacters), MOST.leadsInSeries, 1),
});
/** One input of a link, with the names of the leads in series that lead to it, the one at the output first. */
export type PlanBranch = Of<typeof BRANCH>;

const LINK = record({ name: NAME, output: PLACE_ALONE, inputs: listOf(BRANCH, MOST.inputs, 1) });
/** A link of the plan: an output and one or more inputs. */
export type PlanLink = Of<typeof LINK>;

const STOCK = record(
  { lead: record(LEAD_FIELDS, { check: checkLead }), price: PRICE, owned: whole([0, MOST.ownedLeads]) },
  { packed: ['price', 'owned', 'lead'] },
);
/** A lead on offer: `owned` pieces at no cost, or 0 for the shop's, as many as wanted at `price` each. */
export type StockLead = Of<typeof STOCK>;

const MAKING = record(
  { plugs: tableOf(CONNECTORS, PRICE), plug: PRICE, wirePerMetre: PRICE, perLead: PRICE },
  { packed: ['plug', 'wirePerMetre', 'perLead', 'plugs'] },
);
/** What a made lead costs, the reader's own figures: each plug by connector, wire by the metre, and the rest by the lead. */
export type MakingPrices = Of<typeof MAKING>;

/** One unit for every part, so that plans can be compared before the reader has put prices in. */
export const MAKING_DEFAULTS: MakingPrices = { plugs: {}, plug: 1, wirePerMetre: 1, perLead: 0 };

const WISHES = record({
  noHub: truth,
  noSoldering: truth,
  mostHops: whole([0, MOST.hops]),
  spareOutlets: whole([0, MOST.hops]),
});
/** What the owner wishes: `mostHops` 0 is no wish, otherwise the most links between the controller and any device. */
export type Wishes = Of<typeof WISHES>;

/** No wish at all. */
export const WISH_DEFAULTS: Wishes = { noHub: false, noSoldering: false, mostHops: 0, spareOutlets: 0 };

const { program, bank, controller, value } = PRESS_RANGES;
/** The kinds of message in the order of `PRESS_KINDS`, which a link numbers. */
const PRESS = kindsOf('send', [
  record({ device: PLACE.device, send: only('program'), program: whole(program) }, { inline: true }),
  record({ device: PLACE.device, send: only('bank'), bank: whole(bank) }, { inline: true }),
  record(
    { device: PLACE.device, send: only('control'), controller: whole(controller), value: whole(value) },
    { inline: true },
  ),
]);
/** One message of a press, in the owner's order. */
export type PressItem = Of<typeof PRESS>;

/** The shape of a whole plan. */
export const PLAN = record({
  format: only(PLAN_FORMAT),
  version: only(PLAN_VERSION),
  title: filled(text(MOST.nameCharacters, 0), ''),
  devices: listOf(DEVICE, MOST.devices),
  leads: listOf(LEAD, MOST.leads),
  links: listOf(LINK, MOST.links),
  /** Sign or letters of the reader's currency. */
  currency: left(text(MOST.currencyCharacters, 0), ''),
  /** The longest that one press may take, seconds. */
  pressLimitSeconds: left(number([0, MOST.pressLimitSeconds], 's'), 0.1),
  stock: left(listOf(STOCK, MOST.stock), []),
  /** Hubs and converters on offer; each has a price. */
  hubs: left(listOf(DEVICE, MOST.hubs), []),
  making: left(MAKING, MAKING_DEFAULTS),
  wishes: left(WISHES, WISH_DEFAULTS),
  press: left(listOf(PRESS, MOST.press), []),
  /** The student's number in the list of the class; 0 for none. */
  student: left(whole([0, MOST.student]), 0),
});
/** A whole plan. */
export type Plan = Of<typeof PLAN>;

/** What the fields of a plan mean that stay left out. */
export const PLAN_DEFAULTS = PLAN.defaults;
