/** From a layout back to a plan: links, leads, hubs, and jacks set as the layout needs them. */
import type { OfferedChoice } from '../board/index.ts';
import { jackSetTo } from '../board/index.ts';
import { onlyCarries } from '../plan/index.ts';
import type { Device, Plan, PlanJack, PlanLead, PlanLink } from '../plan/index.ts';
import { wholeJack } from '../plan/index.ts';
import type { BoardProblem } from './problem-of.ts';
import { edgesOf } from '../board/index.ts';
import type { Edge, Layout } from '../board/index.ts';
import { makingCost } from '../board/index.ts';
import { MAKING_DEFAULTS } from '../plan/index.ts';

/** The plan that a layout stands for. Devices keep their places; hubs and converters that it does not use are left out. */
export function planOfLayout(
  plan: Plan,
  board: BoardProblem,
  layout: Layout,
  chosen: readonly number[],
): Plan {
  const names = new Set(plan.devices.map(({ name }) => name));
  const fresh = (wanted: string): string => {
    let name = wanted;
    for (let number = 2; names.has(name); number++) name = `${wanted} ${number}`;
    names.add(name);
    return name;
  };
  const hubAt = layout.map(({ hub }) => {
    const device = board.hubs[hub];
    if (!device) return '';
    return (board.hubPlaces[hub] ?? -1) >= 0 ? device.name : fresh(device.name);
  });
  const bought = layout.flatMap(({ hub }, output): Device[] => {
    const device = board.hubs[hub];
    return device && (board.hubPlaces[hub] ?? -1) < 0
      ? [{ ...device, name: hubAt[output] ?? '', toBuy: true }]
      : [];
  });
  const ends = (edge: Edge, output: number): { from: string; to: string } => {
    switch (edge.kind) {
      case 'start':
        return { from: board.controller.name, to: board.devices[edge.to]?.name ?? '' };
      case 'feed':
        return { from: board.controller.name, to: hubAt[output] ?? '' };
      case 'outlet':
        return { from: hubAt[output] ?? '', to: board.devices[edge.to]?.name ?? '' };
      case 'next':
        return { from: board.devices[edge.from]?.name ?? '', to: board.devices[edge.to]?.name ?? '' };
    }
  };
  const leads: PlanLead[] = [];
  const links: PlanLink[] = [];
  const settings = new Map<string, (jack: PlanJack) => PlanJack>();
  const set = (device: string, jack: string, change: (one: PlanJack) => PlanJack): void =>
    void settings.set(JSON.stringify([device, jack]), change);
  let output = -1;
  edgesOf(board.problem, layout).forEach(({ edge, choices }, at) => {
    if (edge.kind !== 'next') output = edge.output;
    const choice = choices[chosen[at] ?? -1] as OfferedChoice | undefined;
    if (!choice) throw new Error(`plan: link ${at} of the layout has no choice`);
    const { from, to } = ends(edge, output);
    const run = choice.pieces.map(({ stock, lead }): PlanLead => {
      const kept = plan.stock?.[stock];
      const name = `lead ${leads.length + 1}`;
      const made: PlanLead = kept
        ? { ...lead, name, origin: kept.owned > 0 ? 'owned' : 'shop', price: kept.owned > 0 ? 0 : kept.price }
        : { ...lead, name, origin: 'made', price: makingCost(plan.making ?? MAKING_DEFAULTS, lead) };
      leads.push(made);
      return made;
    });
    set(from, choice.output.jack, (jack) => setOutput(jack, choice, edge.kind === 'next'));
    set(to, choice.input.jack, (jack) => styled(jack, choice.input.style));
    links.push({
      name: `link ${links.length + 1}`,
      output: { device: from, jack: choice.output.jack },
      inputs: [{ device: to, jack: choice.input.jack, leads: run.map(({ name }) => name) }],
    });
  });
  const used = new Set(
    links.flatMap(({ output: from, inputs }) => [from.device, ...inputs.map(({ device }) => device)]),
  );
  const devices = [...plan.devices, ...bought]
    .filter((device) => !onlyCarries({ kind: device.kind ?? 'other' }) || used.has(device.name))
    .map((device) => ({
      ...device,
      jacks: device.jacks.map(
        (jack) => settings.get(JSON.stringify([device.name, jack.name]))?.(jack) ?? jack,
      ),
    }));
  return { ...plan, devices, leads, links };
}

function setOutput(jack: PlanJack, choice: OfferedChoice, passesOn: boolean): PlanJack {
  const set = styled(jack, choice.output.style);
  return jack.role === 'out-or-thru' ? { ...set, setTo: passesOn ? 'thru' : 'out' } : set;
}

function styled(jack: PlanJack, style: PlanJack['style']): PlanJack {
  const { circuit, values } = jackSetTo(wholeJack(jack), style);
  return style === jack.style ? jack : { ...jack, style, circuit, values };
}
