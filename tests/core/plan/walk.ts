/** Seeded walks of edits over a board: every edit there is, with good and bad values, plans taken, undo and redo. */
import { isDeepStrictEqual } from 'node:util';
import { changeLead, connect, demoBoard, disconnect, refitLink } from '../../../src/core/board/index.ts';
import { addInAndOut, addJack, changeJack, removeJack } from '../../../src/core/plan/edit-jacks.ts';
import * as lists from '../../../src/core/plan/edit-lists.ts';
import * as edits from '../../../src/core/plan/edit.ts';
import { edited } from '../../../src/core/plan/edited.ts';
import type { Edit } from '../../../src/core/plan/edited.ts';
import {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  LEAD_ORIGINS,
  POWERS,
  PRESS_KINDS,
  SETTINGS,
  TALKS,
  THRUS,
} from '../../../src/core/plan/kinds.ts';
import { LIBRARY } from '../../../src/core/plan/library.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { JackPlace, Plan } from '../../../src/core/plan/plan.ts';
import { readPlanText, sayProblems, writePlanText } from '../../../src/core/plan/read-plan.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { planBoard } from '../../../src/core/planner/index.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';
import { CONNECTORS, DIRECTIONS, STYLES, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { STOCK, randomBoard, wiredBoard } from '../board/boards.ts';
import { randomPlan } from './plans.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** A number that a field may be given: most within its bounds, some not, some no number at all. */
function figure(random: Random, most: number): number {
  if (random.chance(0.8)) return random.chance(0.5) ? random.integer(0, most) : random.next() * most;
  return random.pick([-1, most * 2, 1e12, NaN, Infinity, 0.5]);
}

/** A name: most plain, some in use, empty, too long, of two words, or with signs of other alphabets. */
function word(random: Random, taken: readonly { readonly name: string }[]): string {
  const used = taken.length > 0 ? random.pick(taken).name : 'echo';
  return random.pick([
    'a',
    'b c',
    'a b',
    'c',
    ' ',
    '',
    'x'.repeat(81),
    '舞台 2',
    '"quoted"',
    used,
    `${used}!`,
  ]);
}

function someLead(random: Random) {
  const [from, to] = [random.pick(CONNECTORS), random.pick(CONNECTORS)];
  const conductors = random.pick([wires('tip-tip'), wires('4-4', '5-5', '2-2'), [], wires('4-tip', '4-tip')]);
  return makeLead(from, to, conductors, { name: word(random, []), lengthMetres: figure(random, 100) });
}

type Change = (plan: Plan, random: Random, memory: LinkMemory) => Plan | Edit;

const name = (plan: Plan, random: Random): string => random.pick(plan.devices).name;

function jack(plan: Plan, random: Random): JackPlace {
  const { name: device, jacks } = random.pick(plan.devices.filter((one) => one.jacks.length > 0));
  return { device, jack: random.pick(jacks).name };
}

function input(plan: Plan, random: Random): readonly [link: string, input: number] {
  const link = random.pick(plan.links);
  return [link.name, random.integer(0, link.inputs.length - 1)];
}

/** Every edit, those of a plan that has devices, and those of one that has links. */
const ALWAYS: readonly Change[] = [
  (plan, random) => edits.namePlan(plan, { title: word(random, []) }),
  (plan, random) => edits.namePlan(plan, { student: random.integer(0, 99) }),
  (plan, random) => edits.addDevice(plan, { ...random.pick(LIBRARY), name: word(random, plan.devices) }),
  (plan) => edits.numberChannels(plan),
  (plan, random) => lists.addStock(plan, someLead(random), figure(random, 1e9), figure(random, 64)),
  (plan, random) => lists.changeStock(plan, random.integer(0, 3), { price: figure(random, 1e9) }),
  (plan, random) => lists.changeStock(plan, random.integer(0, 3), { lead: someLead(random) }),
  (plan, random) => lists.removeStock(plan, random.integer(0, 3)),
  (plan, random) => lists.addHub(plan, random.pick(LIBRARY)),
  (plan, random) => lists.changeHub(plan, random.integer(0, 3), { price: figure(random, 1e9) }),
  (plan, random) => lists.changeHub(plan, random.integer(0, 3), { name: word(random, plan.hubs ?? []) }),
  (plan, random) => lists.removeHub(plan, random.integer(0, 3)),
  (plan, random) => lists.setMaking(plan, { plug: figure(random, 1e9), wirePerMetre: figure(random, 1e9) }),
  (plan, random) => lists.setMaking(plan, { plugs: { din5: figure(random, 1e9) } }),
  (plan, random) => lists.setWishes(plan, { noHub: random.chance(0.5), mostHops: figure(random, 64) }),
  (plan, random) => lists.removePress(plan, random.integer(0, 3)),
  (plan, random) => lists.movePress(plan, random.integer(0, 3), random.pick([-1, 1])),
  (plan, random) => ({ ...plan, pressLimitSeconds: figure(random, 60), currency: word(random, []) }),
];
const OF_DEVICES: readonly Change[] = [
  (plan, random) => edits.duplicateDevice(plan, name(plan, random)),
  (plan, random) => edits.removeDevice(plan, name(plan, random)),
  (plan, random) => edits.moveDevice(plan, name(plan, random), figure(random, 1000), figure(random, 1000)),
  (plan, random) => edits.changeDevice(plan, name(plan, random), { name: word(random, plan.devices) }),
  (plan, random) =>
    edits.changeDevice(plan, name(plan, random), {
      kind: random.pick(DEVICE_KINDS),
      talks: random.pick(TALKS),
      power: random.pick(POWERS),
      toBuy: random.chance(0.5),
    }),
  (plan, random) => edits.changeDevice(plan, name(plan, random), { channel: figure(random, 16) }),
  (plan, random) => edits.changeDevice(plan, name(plan, random), { price: figure(random, 1e9) }),
  (plan, random) => edits.changeDevice(plan, name(plan, random), { widthCentimetres: figure(random, 1000) }),
  (plan, random) => addInAndOut(plan, name(plan, random), random.pick(['tip', 'ring'])),
  (plan, random) => {
    const made = random.pick(LIBRARY.flatMap(({ jacks }) => jacks));
    return addJack(plan, name(plan, random), { ...made, name: word(random, []) });
  },
  (plan, random) => lists.addPress(plan, lists.pressItem(name(plan, random), random.pick(PRESS_KINDS))),
  (plan, random) =>
    lists.changePress(plan, random.integer(0, 3), {
      device: name(plan, random),
      send: 'bank',
      bank: figure(random, 16383),
    }),
];
const OF_JACKS: readonly Change[] = [
  (plan, random) => removeJack(plan, jack(plan, random)),
  (plan, random) => changeJack(plan, jack(plan, random), { name: word(random, []) }),
  (plan, random) => changeJack(plan, jack(plan, random), { direction: random.pick(DIRECTIONS) }),
  (plan, random) =>
    changeJack(plan, jack(plan, random), {
      connector: random.pick(CONNECTORS),
      style: random.pick(STYLES),
      styles: STYLES.filter(() => random.chance(0.3)),
    }),
  (plan, random) =>
    changeJack(plan, jack(plan, random), {
      role: random.pick(JACK_ROLES),
      thru: random.pick(THRUS),
      setTo: random.pick(SETTINGS),
      edge: random.pick(EDGES),
      latencySeconds: figure(random, 1),
      alongCentimetres: figure(random, 1000),
      supplyOnSpares: random.chance(0.5),
    }),
  (plan, random) => changeJack(plan, jack(plan, random), { values: { supplyVolts: figure(random, 24) } }),
  (plan, random, memory) => connect(plan, jack(plan, random), jack(plan, random), memory),
  (plan, random, memory) => connect(plan, jack(plan, random), jack(plan, random), memory),
];
const OF_LINKS: readonly Change[] = [
  (plan, random) => disconnect(plan, ...input(plan, random)),
  (plan, random, memory) => refitLink(plan, ...input(plan, random), memory),
  (plan, random) => {
    const { name: _, ...lead } = someLead(random);
    return changeLead(plan, random.pick(plan.leads).name, lead);
  },
  (plan, random) => changeLead(plan, random.pick(plan.leads).name, { name: word(random, plan.leads) }),
  (plan, random) =>
    changeLead(plan, random.pick(plan.leads).name, {
      lengthMetres: figure(random, 100),
      price: figure(random, 1e9),
      origin: random.pick(LEAD_ORIGINS),
    }),
];

/** The best plan of a small board, as a reader takes it; the same board where there is none. */
const takePlan: Change = (plan, _random, memory) => {
  const end = runThrough(planBoard(plan, memory));
  return end.ok ? end.best.plan : plan;
};

function startOf(random: Random, seed: number): Plan {
  switch (random.integer(0, 5)) {
    case 0:
      return makePlan({ stock: STOCK });
    case 1:
      return demoBoard();
    case 2:
      return wiredBoard(random.integer(1, 6));
    case 3:
      return randomPlan(seed);
    default:
      return randomBoard(seed, random.integer(2, 6));
  }
}

/** Why a plan is not the same after it has been written and read; undefined where it is. */
function lostIn(plan: Plan): string | undefined {
  const text = writePlanText(plan);
  const reading = readPlanText(text);
  if (!reading.ok) return sayProblems(reading.problems);
  const [before, after] = [JSON.parse(text), JSON.parse(writePlanText(reading.plan))] as unknown[];
  return isDeepStrictEqual(before, after) ? undefined : 'it reads as another plan';
}

/** What a walk met: states written and read, and changes that were refused aloud. */
export interface Walk {
  readonly states: number;
  readonly refused: number;
}

/** Take one walk of so many steps. @throws when a state cannot be written and read, or when a change throws. */
export async function walk(seed: number, steps: number, memory: LinkMemory): Promise<Walk> {
  const random = seededRandom(seed);
  const past = [startOf(random, seed)];
  let [at, states, refused] = [0, 0, 0];
  for (let step = 0; step < steps; step++) {
    const plan = past[at] as Plan;
    if (random.chance(0.1)) {
      at = Math.min(past.length - 1, Math.max(0, at + random.pick([-1, 1])));
      continue;
    }
    const jacks = plan.devices.some((one) => one.jacks.length > 0);
    const change = random.chance(0.01)
      ? takePlan
      : random.pick([
          ...ALWAYS,
          ...(plan.devices.length > 0 ? OF_DEVICES : []),
          ...(jacks ? OF_JACKS : []),
          ...(plan.links.length > 0 ? OF_LINKS : []),
        ]);
    const made = change(plan, random, memory);
    const edit = 'ok' in made ? made : edited(made);
    if (!edit.ok) {
      refused++;
      continue;
    }
    past.splice(at + 1, Infinity, edit.plan);
    at++;
    states++;
    const lost = lostIn(edit.plan);
    if (lost !== undefined) throw new Error(`walk ${seed}, step ${step}: ${lost}`);
  }
  const last = past[at] as Plan;
  const linked = await readSharedLink(await writeSharedLink(last));
  if (!linked.ok) throw new Error(`walk ${seed}: the link gives ${sayProblems(linked.problems)}`);
  return { states, refused };
}
