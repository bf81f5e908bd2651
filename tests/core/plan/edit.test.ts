import { describe, expect, test } from 'vitest';
import { sayChanges } from '../../../src/core/plan/changes.ts';
import { checkBoard } from '../../../src/core/board/check.ts';
import { addInAndOut, addJack, changeJack, removeJack } from '../../../src/core/plan/edit-jacks.ts';
import { changeLead, connect, disconnect, refitLink } from '../../../src/core/board/edit-links.ts';
import {
  addDevice,
  changeDevice,
  duplicateDevice,
  moveDevice,
  namePlan,
  numberChannels,
  removeDevice,
} from '../../../src/core/plan/edit.ts';
import { sayEdit } from '../../../src/core/plan/edited.ts';
import type { Edit } from '../../../src/core/plan/edited.ts';
import { hearers, hopNumbers, senders } from '../../../src/core/board/hearing.ts';
import { BYTE_SECONDS } from '../../../src/core/board/hops.ts';
import { outputModel } from '../../../src/core/wiring/opto-outputs.ts';
import type { Part } from '../../../src/core/wiring/parts.ts';
import { LIBRARY, planJack } from '../../../src/core/plan/library.ts';
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import { LATENCY_SECONDS } from '../../../src/core/wiring/timing.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { makeLead, wires } from '../../../src/core/wiring/link.ts';
import { seededRandom } from '../../support/random.ts';
import { STOCK, fromLibrary } from '../board/boards.ts';

function planIn(edit: Edit): Plan {
  if (!edit.ok) throw new Error(sayEdit(edit.problem));
  return edit.plan;
}

function joined(plan: Plan, from: readonly [string, string], to: readonly [string, string]): Plan {
  const made = connect(plan, { device: from[0], jack: from[1] }, { device: to[0], jack: to[1] });
  if (!made.ok) throw new Error(sayEdit(made.problem));
  return made.plan;
}

const SWITCHER = fromLibrary('foot controller with DIN OUT').name;
const ECHO = fromLibrary('echo').name;
const DRIVE = fromLibrary('drive').name;
const LOOPER = fromLibrary('looper').name;
const HUB = fromLibrary('hub with five').name;

function boardOf(...names: readonly string[]): Plan {
  return names.reduce((plan, name) => planIn(addDevice(plan, fromLibrary(name))), makePlan({ stock: STOCK }));
}

/** Whatever was changed, the plan can be written and read again. */
function expectWhole(plan: Plan): void {
  expect(readPlan(JSON.parse(JSON.stringify(plan)))).toEqual({ ok: true, plan });
}

describe('Devices of a board', () => {
  test('are added with a name of their own and a place that is free', () => {
    const plan = boardOf('echo', 'echo', 'echo');
    expect(plan.devices.map(({ name }) => name)).toEqual([ECHO, `${ECHO} 2`, `${ECHO} 3`]);
    // 12 cm wide each with 3 cm between, the back of the first row at 7 cm.
    expect(plan.devices.map((one) => [one.xCentimetres, one.yCentimetres])).toEqual([
      [0, 7],
      [15, 7],
      [30, 7],
    ]);
    expectWhole(plan);
  });

  test('fill a whole board of 64 without lying on one another, and the next one is refused in words', () => {
    let plan = makePlan({});
    for (let at = 0; at < PLAN_LIMITS.devices; at++)
      plan = planIn(addDevice(plan, LIBRARY[at % LIBRARY.length] ?? fromLibrary('echo')));
    const boxes = plan.devices.map((one) => ({
      x: one.xCentimetres ?? 0,
      y: one.yCentimetres ?? 0,
      w: one.widthCentimetres ?? 0,
      d: one.depthCentimetres ?? 0,
    }));
    boxes.forEach((a, at) => {
      for (const b of boxes.slice(at + 1))
        expect(a.x >= b.x + b.w || b.x >= a.x + a.w || a.y >= b.y + b.d || b.y >= a.y + a.d).toBe(true);
    });
    expectWhole(plan);
    const more = addDevice(plan, fromLibrary('echo'));
    expect(more.ok || sayEdit(more.problem)).toBe(
      'devices: expected a list of 0 to 64, got a list of 65. The plan is as it was.',
    );
  });

  test('carry a new name into links and the press, and a name in use is refused', () => {
    const linked = joined(boardOf('foot controller with DIN OUT', 'echo'), [SWITCHER, 'OUT'], [ECHO, 'IN']);
    const pressed = { ...linked, press: [{ device: ECHO, send: 'program' as const, program: 5 }] };
    const plan = planIn(changeDevice(pressed, ECHO, { name: 'tape', channel: 3 }));
    expect(plan.links[0]?.inputs[0]?.device).toBe('tape');
    expect(plan.press?.[0]?.device).toBe('tape');
    expect(plan.devices[1]?.channel).toBe(3);
    expectWhole(plan);
    const twice = changeDevice(plan, 'tape', { name: SWITCHER });
    expect(twice.ok || sayEdit(twice.problem)).toBe(
      `name: expected a name of 1 to 80 characters that is not used yet, got '${SWITCHER}'. The plan is as it was.`,
    );
    const loud = changeDevice(plan, 'tape', { channel: 17 });
    expect(loud.ok || sayEdit(loud.problem)).toBe(
      "'tape', channel: expected a whole number from 0 to 16, got 17. The plan is as it was.",
    );
    expect(changeDevice(plan, 'tape', { name: ' ' }).ok).toBe(false);
  });

  test('go with their links, the leads that only these used, and their part of the press', () => {
    const linked = joined(boardOf('foot controller with DIN OUT', 'echo'), [SWITCHER, 'OUT'], [ECHO, 'IN']);
    const idle = {
      ...linked,
      leads: [...linked.leads, makeLead('din5', 'din5', wires('4-4'), { name: 'spare' })],
    };
    const plan = removeDevice({ ...idle, press: [{ device: ECHO, send: 'bank', bank: 1 }] }, ECHO);
    expect([plan.links, plan.leads.map(({ name }) => name), plan.press]).toEqual([[], ['spare'], []]);
    expectWhole(plan);
  });

  test('are copied without links, and moved within the bounds of a plan', () => {
    const plan = planIn(duplicateDevice(boardOf('echo'), ECHO));
    expect(plan.devices[1]?.jacks).toEqual(plan.devices[0]?.jacks);
    const moved = moveDevice(plan, ECHO, -4, 5000);
    expect([moved.devices[0]?.xCentimetres, moved.devices[0]?.yCentimetres]).toEqual([0, 1000]);
    expect(() => moveDevice(plan, 'nobody', 0, 0)).toThrow("board: no device 'nobody'");
  });

  test('get a channel each where they listen; one that had its own keeps it', () => {
    const plan = planIn(
      changeDevice(
        boardOf('foot controller with DIN OUT', 'echo', 'drive', 'hub with five', 'looper'),
        DRIVE,
        {
          channel: 1,
        },
      ),
    );
    expect(numberChannels(plan).devices.map(({ channel = 0 }) => channel)).toEqual([0, 2, 1, 0, 3]);
  });
});

describe('The name of a plan', () => {
  test('is a title, set, taken away, and refused where it is too long for a file', () => {
    expect(planIn(namePlan(boardOf('echo'), { title: 'Friday' })).title).toBe('Friday');
    expect(planIn(namePlan(boardOf('echo'), { title: '' })).title).toBe('');
    expect(planIn(namePlan(boardOf('echo'), { student: 7 }))).toMatchObject({ title: '', student: 7 });
    const many = namePlan(boardOf('echo'), { student: 1000 });
    expect(many.ok || sayEdit(many.problem)).toContain(
      'student: expected a whole number from 0 to 999, got 1000',
    );
    const long = namePlan(boardOf('echo'), { title: 'x'.repeat(81) });
    expect(long.ok || sayEdit(long.problem)).toBe(
      `title: expected text of 0 to 80 characters, got '${'x'.repeat(56)}.... The plan is as it was.`,
    );
  });
});

describe('Jacks of a device', () => {
  test('are added, renamed with their links, turned round without them, and removed', () => {
    const board = joined(boardOf('foot controller with DIN OUT', 'echo'), [SWITCHER, 'OUT'], [ECHO, 'IN']);
    const added = planIn(addJack(board, ECHO, planJack('IN', 'in', 'trs-3.5', 'type-b')));
    expect(added.devices[1]?.jacks.map(({ name }) => name)).toEqual(['IN', 'THRU', 'IN 2']);
    const renamed = planIn(changeJack(added, { device: ECHO, jack: 'IN' }, { name: 'CONTROL IN' }));
    expect(renamed.links[0]?.inputs[0]?.jack).toBe('CONTROL IN');
    expectWhole(renamed);
    const turned = planIn(changeJack(renamed, { device: ECHO, jack: 'CONTROL IN' }, { direction: 'out' }));
    expect([turned.links.length, turned.leads.length]).toEqual([0, 0]);
    expectWhole(turned);
    const removed = removeJack(renamed, { device: ECHO, jack: 'CONTROL IN' });
    expect(removed.devices[1]?.jacks.map(({ name }) => name)).toEqual(['THRU', 'IN 2']);
    expectWhole(removed);
  });

  test('keep style, circuit and part together when the connector changes', () => {
    const plan = planIn(changeJack(boardOf('drive'), { device: DRIVE, jack: 'IN' }, { connector: 'din5' }));
    expect(plan.devices[0]?.jacks[0]).toMatchObject({ connector: 'din5', style: 'din' });
    expectWhole(plan);
  });

  test('that share a hole change together and go together', () => {
    const plan = planIn(addInAndOut(boardOf('drive'), DRIVE, 'ring'));
    const place = { device: DRIVE, jack: 'CONTROL in' };
    const moved = planIn(
      changeJack(plan, place, { name: 'EXP in', connector: 'trs-3.5', edge: 'left', alongCentimetres: 3 }),
    );
    expect(moved.devices[0]?.jacks.slice(1)).toMatchObject([
      { name: 'EXP in', style: 'ring-signal', sharesHole: 'CONTROL out', connector: 'trs-3.5', edge: 'left' },
      { name: 'CONTROL out', style: 'tip-signal', sharesHole: 'EXP in', connector: 'trs-3.5', edge: 'left' },
    ]);
    expectWhole(moved);
    expect(changeJack(plan, place, { direction: 'out' }).ok).toBe(false);
    expect(removeJack(plan, place).devices[0]?.jacks.map(({ name }) => name)).toEqual(['IN']);
  });

  test('beyond 32 are refused in words', () => {
    let edit: Edit = addJack(boardOf('drive'), DRIVE, planJack('IN', 'in', 'din5', 'din'));
    for (let at = 2; at < PLAN_LIMITS.jacks; at++)
      edit = addJack(planIn(edit), DRIVE, planJack('IN', 'in', 'din5', 'din'));
    edit = addJack(planIn(edit), DRIVE, planJack('IN', 'in', 'din5', 'din'));
    expect(edit.ok || sayEdit(edit.problem)).toBe(
      `'${DRIVE}', jacks: expected a list of 0 to 32, got a list of 33. The plan is as it was.`,
    );
  });
});

describe('A new link', () => {
  test('takes the lead from the drawer first, then the next cheapest, never one piece twice', () => {
    const board = boardOf('foot controller with DIN OUT', 'echo', 'rack', 'looper');
    const rack = fromLibrary('rack').name;
    const two = joined(board, [SWITCHER, 'OUT'], [ECHO, 'IN']);
    const three = joined(two, [ECHO, 'THRU'], [rack, 'IN']);
    const four = joined(three, [rack, 'THRU'], [LOOPER, 'IN']);
    // Two DIN leads of 1.5 m are owned; the third link needs another, bought or made, whichever costs less.
    expect(four.leads.map(({ origin }) => origin).slice(0, 2)).toEqual(['owned', 'owned']);
    expect(four.leads[2]?.origin).not.toBe('owned');
    expect(checkBoard(four).outcomes.map(({ outcome }) => outcome)).toEqual(['flows', 'flows', 'flows']);
    expectWhole(four);
  });

  test('sets an output to the style of its input, and leaves alone a jack that another link stands on', () => {
    const typeB = fromLibrary('chorus').name;
    const board = {
      ...boardOf('hub with five', 'chorus', 'drive'),
      stock: [],
      making: { plugs: {}, plug: 100, wirePerMetre: 1, perLead: 0 },
    };
    const stock = [...STOCK.filter(({ lead }) => lead.name === 'TRS lead of 0.6 m')];
    const made = connect({ ...board, stock }, { device: HUB, jack: 'OUT 3' }, { device: typeB, jack: 'IN' });
    if (!made.ok) throw new Error(sayEdit(made.problem));
    expect(made.works).toBe(true);
    expect(made.notes).toEqual([`OUT 3 of '${HUB}' is set to Type B`]);
    const again = connect(made.plan, { device: HUB, jack: 'OUT 3' }, { device: DRIVE, jack: 'IN' });
    if (!again.ok) throw new Error(sayEdit(again.problem));
    expect(again.plan.devices[0]?.jacks[3]?.style).toBe('type-b');
  });

  test('sets an OUT-or-THRU jack of a device that listens to THRU', () => {
    const made = connect(
      boardOf('looper', 'echo'),
      { device: LOOPER, jack: 'OUT/THRU' },
      { device: ECHO, jack: 'IN' },
    );
    expect(made.ok && made.notes).toEqual([`OUT/THRU of '${LOOPER}' is set to THRU`]);
  });

  test('that no lead can make work is laid with one that fits, and the check says so', () => {
    const tremolo = fromLibrary('tremolo').name;
    const made = connect(
      boardOf('tremolo', 'echo'),
      { device: tremolo, jack: 'CONTROL out' },
      { device: ECHO, jack: 'IN' },
    );
    if (!made.ok) throw new Error(sayEdit(made.problem));
    expect(made.works).toBe(false);
    expect(checkBoard(made.plan).findings.map(({ kind }) => kind)).toContain('no-passive-lead');
    expectWhole(made.plan);
  });

  test('asks for an output and an input of two devices that are not joined yet', () => {
    const board = boardOf('foot controller with DIN OUT', 'echo');
    const say = (from: readonly [string, string], to: readonly [string, string], plan = board): string => {
      const made = connect(plan, { device: from[0], jack: from[1] }, { device: to[0], jack: to[1] });
      return made.ok ? 'linked' : sayEdit(made.problem);
    };
    expect(say([ECHO, 'IN'], [ECHO, 'IN'])).toContain('from: expected an output');
    expect(say([SWITCHER, 'OUT'], [ECHO, 'THRU'])).toContain('to: expected an input');
    expect(say([ECHO, 'THRU'], [ECHO, 'IN'])).toContain('to: expected a jack of another device');
    const linked = joined(board, [SWITCHER, 'OUT'], [ECHO, 'IN']);
    expect(say([SWITCHER, 'OUT'], [ECHO, 'IN'], linked)).toContain('got link 1, which joins them');
  });

  test('says when a lead must be made against the wish not to solder', () => {
    const board = {
      ...boardOf('foot controller with DIN OUT', 'chorus'),
      stock: [],
      wishes: { noHub: false, noSoldering: true, mostHops: 0, spareOutlets: 0 },
    };
    const made = connect(
      board,
      { device: SWITCHER, jack: 'OUT' },
      { device: fromLibrary('chorus').name, jack: 'IN' },
    );
    expect(made.ok && [made.works, made.notes]).toEqual([
      true,
      ['no available lead fits, so this one has to be made'],
    ]);
  });

  test('is taken apart again, and gets longer leads when its devices have moved', () => {
    const board = { ...boardOf('foot controller with DIN OUT', 'echo'), stock: [] };
    const linked = joined(board, [SWITCHER, 'OUT'], [ECHO, 'IN']);
    const moved = moveDevice(linked, ECHO, 300, 7);
    expect(checkBoard(moved).findings.map(({ kind }) => kind)).toContain('too-short');
    const refitted = refitLink(moved, 'link 1', 0);
    expect(checkBoard(refitted).findings.map(({ kind }) => kind)).not.toContain('too-short');
    expect(refitted.leads).toHaveLength(1);
    expect(disconnect(refitted, 'link 1')).toMatchObject({ links: [], leads: [] });
    expectWhole(refitted);
  });

  test('follows its lead when that is wired or named another way, and keeps the one it has where the new one cannot be', () => {
    const linked = joined(
      { ...boardOf('foot controller with DIN OUT', 'echo'), stock: [] },
      [SWITCHER, 'OUT'],
      [ECHO, 'IN'],
    );
    const crossed = { name: 'crossed', conductors: wires('4-5', '5-4', '2-2') };
    const laid = planIn(changeLead(linked, 'lead 1', crossed));
    expect(checkBoard(laid).outcomes.map(({ outcome }) => outcome)).toEqual(['backwards']);
    const renamed = planIn(changeLead(laid, 'crossed', { name: 'bad one', lengthMetres: 2 }));
    expect(renamed.links[0]?.inputs[0]?.leads).toEqual(['bad one']);
    const long = changeLead(renamed, 'bad one', { lengthMetres: 1000 });
    expect(long.ok || sayEdit(long.problem)).toBe(
      "'bad one', length: expected a number from 0.01 to 100 m, got 1000. The plan is as it was.",
    );
  });

  test('of any two jacks of any board leaves a plan that can be read again (200 seeded pairs)', () => {
    const random = seededRandom(5);
    for (let round = 0; round < 200; round++) {
      const [a, b] = [random.pick(LIBRARY), random.pick(LIBRARY)];
      const plan = planIn(addDevice(planIn(addDevice(makePlan({ stock: STOCK }), a)), b));
      const [first, second] = plan.devices;
      if (!first || !second || first.jacks.length === 0 || second.jacks.length === 0) continue;
      const output = { device: first.name, jack: random.pick(first.jacks).name };
      const input = { device: second.name, jack: random.pick(second.jacks).name };
      const made = connect(plan, output, input);
      if (!made.ok) continue;
      expectWhole(made.plan);
      const outcome = checkBoard(made.plan).outcomes[0]?.outcome;
      expect(outcome === 'flows').toBe(made.works);
    }
  });
});

describe('A message', () => {
  test('is heard at the nearest device first, and each hop adds what the hand-worked sum says', () => {
    const chain = joined(
      joined(boardOf('foot controller with DIN OUT', 'looper', 'drive'), [SWITCHER, 'OUT'], [LOOPER, 'IN']),
      [LOOPER, 'OUT/THRU'],
      [DRIVE, 'IN'],
    );
    expect(senders(chain)).toEqual([SWITCHER]);
    const { hearings, deaf } = hearers(chain, SWITCHER);
    // The looper's input delays by its slower edge; its software THRU adds a byte of 320 us and 1 ms; then the drive's input.
    const toOff = (part: Part): number => {
      const { kind } = outputModel(part);
      return 'toOffSeconds' in kind ? kind.toOffSeconds : NaN;
    };
    const first = toOff('PC900V');
    const second = first + BYTE_SECONDS + LATENCY_SECONDS + toOff('H11L1');
    expect(hearings.map(({ device, hops, links }) => [device, hops, links])).toEqual([
      [LOOPER, 1, ['link 1']],
      [DRIVE, 2, ['link 1', 'link 2']],
    ]);
    expect(hearings[0]?.seconds).toBeCloseTo(first, 9);
    expect(hearings[1]?.seconds).toBeCloseTo(second, 9);
    expect(deaf).toEqual([]);
    expect(hopNumbers(chain)).toEqual([[1], [2]]);
    expect(hearers(disconnect(chain, 'link 2'), SWITCHER).deaf).toEqual([DRIVE]);
  });
});

describe('The words for what changed', () => {
  test('name what was added, changed and removed', () => {
    const before = boardOf('foot controller with DIN OUT', 'echo');
    const linked = joined(before, [SWITCHER, 'OUT'], [ECHO, 'IN']);
    expect(sayChanges(before, before)).toBe('nothing');
    expect(sayChanges(before, linked)).toBe('link 1 added; lead 1 added');
    expect(sayChanges(linked, removeDevice(linked, ECHO))).toBe(
      `'${ECHO}' removed; link 1 removed; lead 1 removed`,
    );
    expect(sayChanges(makePlan({}), boardOf('echo', 'drive', 'looper'))).toBe(
      '3 devices added; available leads',
    );
  });
});
