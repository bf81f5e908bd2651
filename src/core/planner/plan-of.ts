/** From a layout back to a plan: links, leads, hubs, and jacks set as the layout needs them. */
import { jackSetTo, planLeads } from '../board/index.ts';
import type { OfferedChoice } from '../board/index.ts';
import { freshName, onlyCarries } from '../plan/index.ts';
import type { Device, Plan, PlanJack, PlanLead, PlanLink } from '../plan/index.ts';
import type { BoardProblem } from './board-problem.ts';
import { linksOf } from './problem.ts';
import type { Found, Layout } from './problem.ts';

/**
 * The plan that a layout stands for. Devices keep their places; hubs, mergers and converters that it does not use are left
 * out, but for those that the press means.
 */
export function planOfLayout(plan: Plan, board: BoardProblem, { layout, chosen }: Found): Plan {
  const { problem, controller } = board;
  const hubs = hubDevices(plan, board, layout);
  const leads: PlanLead[] = [];
  const settings = new Map<string, (jack: PlanJack) => PlanJack>();
  const set = (device: string, jack: string, change: (one: PlanJack) => PlanJack): void =>
    void settings.set(JSON.stringify([device, jack]), change);
  const links = linksOf(problem, layout).map(({ from, to, output }, at): PlanLink => {
    // Every choice of the problem was put in by `boardProblem`.
    const choice = chosen[at] as OfferedChoice;
    const hub = hubs[output]?.name ?? '';
    const source = board.devices[from] ?? (problem.outputs.includes(from) ? controller : { name: hub });
    const target = board.devices[to]?.name ?? hub;
    const run = planLeads(plan, choice.pieces, leads);
    leads.push(...run);
    set(source.name, choice.output.jack, (jack) => {
      const styled = jackSetTo(jack, choice.output.style);
      const setTo = from < problem.count ? 'thru' : 'out';
      return jack.role === 'out-or-thru' ? { ...styled, setTo } : styled;
    });
    set(target, choice.input.jack, (jack) => jackSetTo(jack, choice.input.style));
    return {
      name: `link ${at + 1}`,
      output: { device: source.name, jack: choice.output.jack },
      inputs: [{ device: target, jack: choice.input.jack, leads: run.map(({ name }) => name) }],
    };
  });
  const used = new Set([
    ...links.flatMap(({ output, inputs }) => [output.device, ...inputs.map(({ device }) => device)]),
    ...(plan.press ?? []).map(({ device }) => device),
  ]);
  const bought = hubs.filter(
    (hub) => hub !== undefined && !plan.devices.some(({ name }) => name === hub.name),
  );
  const devices = [...plan.devices, ...(bought as Device[])]
    .filter(({ name, kind = 'other' }) => !onlyCarries({ kind }) || used.has(name))
    .map((device) => ({
      ...device,
      jacks: device.jacks.map(
        (jack) => settings.get(JSON.stringify([device.name, jack.name]))?.(jack) ?? jack,
      ),
    }));
  return { ...plan, devices, leads, links };
}

/** The hub on each output, one that is bought with a name of its own. */
function hubDevices(plan: Plan, board: BoardProblem, layout: Layout): readonly (Device | undefined)[] {
  const names = plan.devices.map(({ name }) => name);
  return layout.map(({ hub }) => {
    const found = board.hubs[hub];
    if (!found || found.onBoard) return found?.device;
    const name = freshName(found.device.name, names);
    names.push(name);
    return { ...found.device, name, toBuy: true };
  });
}
