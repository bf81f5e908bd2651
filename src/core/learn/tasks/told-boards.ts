/** Boards as tasks tell them: lead by lead, of invented boxes. What holds of them is asked of the board's own floor. */
import type { Device, Plan, Thru } from '../../plan/index.ts';
import { PEDALS, hubOf, pedalOf, planOfWays, senderOf, type Way } from '../boards.ts';
import type { Part } from '../../wiring/index.ts';
import type { Chance } from './task.ts';

/** Where every told board begins. */
export const CONTROLLER = 'foot controller';
const HUBS = ['hub', 'second hub'] as const;

/** How the boxes of a told board follow one another. */
export type Shape = 'chain' | 'hub' | 'both' | 'hub behind' | 'two hubs';

const start = (name: string): Way => [CONTROLLER, 'OUT', name, 'IN'];

/** Leads from one box to the next, by THRU. */
function chained(names: readonly string[]): readonly Way[] {
  return names.slice(1).map((name, at): Way => [names[at] ?? '', 'THRU', name, 'IN']);
}

/** Leads from a hub, one to the first of each row, and on along the row. */
function fanned(hub: string, rows: readonly (readonly string[])[], first = 1): readonly Way[] {
  return rows.flatMap(([head = '', ...rest], at): readonly Way[] => [
    [hub, `OUT ${at + first}`, head, 'IN'],
    ...chained([head, ...rest]),
  ]);
}

/** The leads of a board of this shape, from the foot controller on. Needs three boxes or more. */
export function leadsOf(shape: Shape, names: readonly string[]): readonly Way[] {
  const [head = '', ...rest] = names;
  const half = Math.ceil(names.length / 2);
  const each = (list: readonly string[]): readonly (readonly string[])[] => list.map((name) => [name]);
  switch (shape) {
    case 'chain':
      return [start(head), ...chained(names)];
    case 'hub':
      return [start(HUBS[0]), ...fanned(HUBS[0], each(names))];
    case 'both':
      return [start(HUBS[0]), ...fanned(HUBS[0], [names.slice(0, half), names.slice(half)])];
    case 'hub behind':
      return [start(head), [head, 'THRU', HUBS[0], 'IN'], ...fanned(HUBS[0], each(rest))];
    case 'two hubs':
      return [
        start(HUBS[0]),
        [HUBS[0], 'OUT 1', HUBS[1], 'IN'],
        ...fanned(HUBS[0], each(names.slice(half)), 2),
        ...fanned(HUBS[1], each(names.slice(0, half))),
      ];
  }
}

/** So many pedals by chance. */
export function drawnPedals(count: number, chance: Chance): readonly string[] {
  return chance.shuffled(PEDALS).slice(0, count);
}

/** The plan of told leads. */
export function planOfLeads(
  ways: readonly Way[],
  {
    part,
    thrus = {},
  }: { readonly part?: Part; readonly thrus?: Readonly<Record<string, Thru | 'none'>> } = {},
): Plan {
  const names = [...new Set(ways.flatMap(([from, , to]) => [from, to]))];
  const outputs = (hub: string): number =>
    Math.max(...ways.filter(([from]) => from === hub).map(([, jack]) => Number(jack.replace('OUT ', ''))), 1);
  const devices = names.map((name, at): Device => {
    if (name === CONTROLLER) return senderOf(name);
    if (HUBS.some((hub) => hub === name)) return hubOf(outputs(name), name);
    const thru = thrus[name];
    return pedalOf(name, at, { ...(part && { part }), ...(thru && { thru }) });
  });
  return planOfWays(devices, ways);
}

/** Leads as rows. */
export const leadRows = (ways: readonly Way[]): readonly (readonly [string, string])[] =>
  ways.map(([from, jack, to, into], at) => [`lead ${at + 1}`, `${from} ${jack} to ${to} ${into}`]);
