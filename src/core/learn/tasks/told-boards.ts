/** Boards as tasks tell them: lead by lead, of invented boxes. What holds of them is asked of the board's own floor. */
import type { Device, Plan, Thru } from '../../plan/index.ts';
import { CONTROLLER, HUBS, hubOf, pedalOf, planOfWays, senderOf, type Way } from '../boards.ts';
import type { Part } from '../../wiring/index.ts';

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
