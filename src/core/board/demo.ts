/** A board to look round in: every device, lead and price on it is invented. */
import { LIBRARY, changeDevice, makePlan, numberChannels } from '../plan/index.ts';
import type { Device, Edit, Plan } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { DEMO_MAKING, DEMO_STOCK } from './demo-prices.ts';
import { connect } from './edit-links.ts';

/** What stands beside the demo board wherever it is shown. */
export const DEMO_NOTE = 'The demo board is invented: no device, lead or price on it stands for a real one.';

/** Devices: name, the start of its name in the library, and its place in centimetres. */
const DEVICES = [
  ['foot controller', 'foot controller with two TRS', 4, 44],
  ['hub', 'hub with five', 33, 4],
  ['tape echo', 'echo', 4, 20],
  ['drive', 'drive', 21, 20],
  ['chorus', 'chorus', 33, 20],
  ['tremolo', 'tremolo', 46, 20],
  ['looper', 'looper', 62, 20],
  ['pad synth', 'rack synthesizer', 42, 42],
] as const;

const LINKS = [
  ['foot controller', 'OUT 1', 'hub', 'IN'],
  ['hub', 'OUT 1', 'tape echo', 'IN'],
  ['hub', 'OUT 3', 'drive', 'IN'],
  ['hub', 'OUT 4', 'chorus', 'IN'],
  ['hub', 'OUT 5', 'tremolo', 'CONTROL in'],
  ['chorus', 'THRU', 'looper', 'IN'],
  ['foot controller', 'OUT 2', 'pad synth', 'IN'],
] as const;

/** The demo board, wired, with a channel for each device, leads and hubs on offer, and one press. */
export function demoBoard(memory: LinkMemory = new Map()): Plan {
  const devices = DEVICES.map(([name, start, xCentimetres, yCentimetres]): Device => {
    const found = LIBRARY.find((one) => one.name.startsWith(start));
    if (!found) throw new Error(`demo board: no device '${start}' in the library`);
    return { ...found, name, xCentimetres, yCentimetres };
  });
  const bare = makePlan({
    title: 'Demo board (invented)',
    devices,
    stock: DEMO_STOCK,
    hubs: LIBRARY.filter(({ kind }) => kind === 'hub'),
    making: DEMO_MAKING,
    press: [
      { device: 'tape echo', send: 'program', program: 12 },
      { device: 'chorus', send: 'program', program: 3 },
      { device: 'looper', send: 'control', controller: 80, value: 127 },
      { device: 'pad synth', send: 'bank', bank: 1 },
      { device: 'pad synth', send: 'program', program: 7 },
    ],
  });
  return LINKS.reduce(
    (plan, [device, jack, toDevice, toJack]) =>
      planIn(connect(plan, { device, jack }, { device: toDevice, jack: toJack }, memory)),
    numberChannels(planIn(changeDevice(bare, 'hub', { price: 0 }))),
  );
}

function planIn(made: Edit | ReturnType<typeof connect>): Plan {
  if (!made.ok) throw new Error(`demo board: ${made.problem.place}`);
  return made.plan;
}
