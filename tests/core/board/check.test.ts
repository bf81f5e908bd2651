import { describe, expect, test } from 'vitest';
import { checkBoard } from '../../../src/core/board/check.ts';
import type { FindingKind } from '../../../src/core/board/findings.ts';
import { STANDARD_EDGE_BUDGET } from '../../../src/core/signal/bit-budget.ts';
import { LIBRARY, inAndOut, planJack } from '../../../src/core/plan/library.ts';
import { linkOf, makePlan } from '../../../src/core/plan/parts.ts';
import type { Device, Plan, PlanJack, PlanLink } from '../../../src/core/plan/plan.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { checkLink } from '../../../src/core/verdict/check.ts';
import type { Part } from '../../../src/core/wiring/parts.ts';
import { jackProblem, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Lead } from '../../../src/core/wiring/link.ts';

const STRAIGHT = wires('4-4', '5-5', '2-2');

function pedal(name: string, more: Partial<Device> = {}, into: Partial<PlanJack> = {}): Device {
  return {
    name,
    kind: 'pedal',
    channel: Number(/\d+/.exec(name)?.[0] ?? 1),
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { part: 'H11L1', ...into }),
      planJack('THRU', 'out', 'din5', 'din', { role: 'thru' }),
    ],
    ...more,
  };
}

const SWITCHER: Device = {
  name: 'switcher',
  kind: 'controller',
  jacks: [planJack('OUT', 'out', 'din5', 'din')],
};

/** Links written 'switcher.OUT > pedal 1.IN', each with a straight DIN lead of its own. */
function board(
  devices: readonly Device[],
  links: readonly string[],
  more: Partial<Plan> = {},
  lead: Partial<Lead> = {},
): Plan {
  const place = (text: string): { device: string; jack: string } => {
    const [device = '', jack = ''] = text.split('.');
    return { device, jack };
  };
  return makePlan({
    devices,
    leads: links.map((_, at) => makeLead('din5', 'din5', STRAIGHT, { ...lead, name: `lead ${at + 1}` })),
    links: links.map((text, at): PlanLink => {
      const [output = '', ...inputs] = text.split(' > ');
      return {
        name: `link ${at + 1}`,
        output: place(output),
        inputs: inputs.map((input) => ({ ...place(input), leads: [`lead ${at + 1}`] })),
      };
    }),
    ...more,
  });
}

function kinds(plan: Plan): readonly FindingKind[] {
  const reading = readPlan(JSON.parse(JSON.stringify(plan)));
  expect(reading).toEqual({ ok: true, plan });
  const { findings } = checkBoard(plan);
  for (const { what, why, mend, where } of findings) {
    expect([what, why, mend].every((text) => text.length > 10)).toBe(true);
    for (const name of where.devices) expect(plan.devices.map((one) => one.name)).toContain(name);
    for (const name of where.links) expect(plan.links.map((one) => one.name)).toContain(name);
  }
  return findings.map(({ kind }) => kind);
}

const CHAIN = ['switcher.OUT > pedal 1.IN', 'pedal 1.THRU > pedal 2.IN'];

describe('The check of a board', () => {
  test('finds nothing wrong with a chain of two that is wired as it should be', () => {
    const { findings, outcomes, passes } = checkBoard(
      board([SWITCHER, pedal('pedal 1'), pedal('pedal 2')], CHAIN),
    );
    expect([findings, outcomes.map(({ outcome }) => outcome), passes]).toEqual([
      [],
      ['flows', 'flows'],
      true,
    ]);
  });

  test('solves a passive split and calls it outside the standard, whether one link or two make it', () => {
    const devices = [SWITCHER, pedal('pedal 1'), pedal('pedal 2')];
    for (const links of [
      ['switcher.OUT > pedal 1.IN > pedal 2.IN'],
      ['switcher.OUT > pedal 1.IN', 'switcher.OUT > pedal 2.IN'],
    ]) {
      const found = checkBoard(board(devices, links)).findings.find(({ kind }) => kind === 'split');
      // 5 V into two H11L1: about 3.5 mA each, 1.6 mA wanted (worked by hand from the fits): it flows.
      expect(found?.severity).toBe('warning');
      expect(found?.why).toContain('works');
    }
  });

  test('finds a split that starves its inputs: two parts of 4 mA on one 5 V output', () => {
    const devices = ['pedal 1', 'pedal 2'].map((name) => pedal(name, {}, { part: 'PC900V' }));
    expect(kinds(board([SWITCHER, ...devices], ['switcher.OUT > pedal 1.IN > pedal 2.IN']))).toContain(
      'split',
    );
    expect(checkBoard(board([SWITCHER, ...devices], ['switcher.OUT > pedal 1.IN > pedal 2.IN'])).passes).toBe(
      false,
    );
  });

  test('finds a ring, an input fed twice and a device that is not reached', () => {
    const devices = [SWITCHER, pedal('pedal 1'), pedal('pedal 2')];
    expect(kinds(board(devices, ['pedal 1.THRU > pedal 2.IN', 'pedal 2.THRU > pedal 1.IN']))).toEqual([
      'ring',
      'unreached',
      'unreached',
    ]);
    expect(kinds(board(devices, [...CHAIN, 'pedal 2.THRU > pedal 1.IN']))).toEqual(
      expect.arrayContaining(['ring', 'fed-twice']),
    );
    expect(kinds(board(devices, CHAIN.slice(0, 1)))).toEqual(['unreached']);
  });

  test('sends the reader of a broken chain to the device where it breaks, and no further', () => {
    const plain: Device = {
      ...pedal('pedal 1'),
      jacks: [planJack('IN', 'in', 'din5', 'din'), planJack('OUT', 'out', 'din5', 'din')],
    };
    const devices = [SWITCHER, plain, pedal('pedal 2'), pedal('pedal 3'), pedal('pedal 4')];
    const rest = ['pedal 2.THRU > pedal 3.IN', 'pedal 3.THRU > pedal 4.IN'];
    const mends = (links: readonly string[]) =>
      checkBoard(board(devices, links))
        .findings.filter(({ kind }) => kind === 'unreached')
        .map(({ where, mend }) => [where.devices[0], mend]);
    expect(mends(['switcher.OUT > pedal 1.IN', 'pedal 1.OUT > pedal 2.IN', ...rest])).toEqual([
      ['pedal 2', 'Use a THRU jack, or a hub.'],
      ['pedal 3', "First 'pedal 2', further up the chain; the link to this one can stay."],
      ['pedal 4', "First 'pedal 2', further up the chain; the link to this one can stay."],
    ]);
    expect(mends(['switcher.OUT > pedal 1.IN', ...rest]).map(([, mend]) => mend)).toEqual([
      'Give it a link from an output or a THRU that is free.',
      "First 'pedal 2', further up the chain; the link to this one can stay.",
      "First 'pedal 2', further up the chain; the link to this one can stay.",
    ]);
    const loop = [...rest, 'pedal 4.THRU > pedal 2.IN'];
    expect(new Set(mends(['switcher.OUT > pedal 1.IN', ...loop]).map(([, mend]) => mend))).toEqual(
      new Set(['Open the loop: take off one of its links, and join that input to a controller.']),
    );
  });

  test('finds two controllers without a merger, and is content with one', () => {
    const second: Device = { ...SWITCHER, name: 'second' };
    const devices = [SWITCHER, second, pedal('pedal 1')];
    expect(kinds(board(devices, ['switcher.OUT > pedal 1.IN', 'second.OUT > pedal 1.IN']))).toContain(
      'fed-twice',
    );
    expect(kinds(board(devices, ['switcher.OUT > pedal 1.IN']))).toEqual(['two-controllers']);
    const merger = {
      ...LIBRARY.find(({ kind }) => kind === 'merger'),
      name: 'merger',
      widthCentimetres: 0,
    } as Device;
    const merged = ['switcher.OUT > merger.IN 1', 'second.OUT > merger.IN 2', 'merger.OUT > pedal 1.IN'];
    expect(kinds(board([...devices, merger], merged))).toEqual([]);
  });

  test('tells an OUT from a THRU: what a plain OUT feeds hears nothing, and a menu mends it', () => {
    const byMenu = (setTo: 'out' | 'thru'): Device => ({
      ...pedal('pedal 1'),
      jacks: [
        planJack('IN', 'in', 'din5', 'din'),
        planJack('THRU', 'out', 'din5', 'din', { role: 'out-or-thru', setTo }),
      ],
    });
    expect(kinds(board([SWITCHER, byMenu('thru'), pedal('pedal 2')], CHAIN))).toEqual([]);
    const { findings } = checkBoard(board([SWITCHER, byMenu('out'), pedal('pedal 2')], CHAIN));
    expect(findings.map(({ kind, mend }) => [kind, mend])).toEqual([
      ['unreached', 'Set that jack to THRU in its menu.'],
    ]);
  });

  test('finds a plug that does not fit, and jacks that no passive lead can join', () => {
    const phone = pedal('pedal 1', { jacks: [planJack('IN', 'in', 'trs-3.5', 'type-a')] });
    expect(kinds(board([SWITCHER, phone], CHAIN.slice(0, 1)))).toContain('does-not-fit');
    const level: Device = { ...SWITCHER, jacks: [planJack('OUT', 'out', 'trs-6.35', 'tip-signal')] };
    const plan = board([level, pedal('pedal 1')], CHAIN.slice(0, 1));
    const lead = makeLead('trs-6.35', 'din5', wires('tip-5', 'sleeve-2'), { name: 'lead 1' });
    expect(kinds({ ...plan, leads: [lead] })).toContain('no-passive-lead');
  });

  test('finds a lead that is wired wrong, with the reason of the solved circuit', () => {
    const plan = board(
      [SWITCHER, pedal('pedal 1')],
      CHAIN.slice(0, 1),
      {},
      { conductors: wires('4-5', '5-4', '2-2') },
    );
    expect(kinds(plan)).toContain('link-fails');
  });

  test('finds a chain that the bit budget does not allow, as the simulation of bytes does', () => {
    const deep = (part: Part, count: number): Plan => {
      const devices = Array.from({ length: count }, (_, at) => pedal(`pedal ${at + 1}`, {}, { part }));
      const names = ['switcher.OUT', ...devices.map(({ name }) => `${name}.THRU`)];
      return board(
        [SWITCHER, ...devices],
        devices.map(({ name }, at) => `${names[at] ?? ''} > ${name}.IN`),
      );
    };
    // One look reads the stop bit 151 samples of 2 us / 1.01 after the start; a slow sender's stop bit begins after 9 bits of
    // 32 us / 0.99: 8.10 us between them (7.9 us by the arithmetic of 9.5 bits). At 1 us a hop eight hold, the ninth is too many.
    expect(STANDARD_EDGE_BUDGET.lateSeconds * 1e6).toBeCloseTo((151 * 2) / 1.01 - (9 * 32) / 0.99, 9);
    expect(kinds(deep('PC900V', 8))).not.toContain('too-deep');
    expect(kinds(deep('PC900V', 9))).toContain('too-deep');
    // Parts that are not known count as the slowest, and only warn: 3.4 us each, two hold.
    expect(kinds(deep('unknown', 2))).not.toContain('unproven-depth');
    expect(kinds(deep('unknown', 3))).toContain('unproven-depth');
    expect(checkBoard(deep('unknown', 3)).passes).toBe(true);
  });

  test('a software THRU makes its edges afresh, so the count begins again', () => {
    const devices = Array.from({ length: 10 }, (_, at) => {
      const one = pedal(`pedal ${at + 1}`, {}, { part: 'PC900V' });
      const thru = planJack('THRU', 'out', 'din5', 'din', {
        role: 'thru',
        thru: at === 4 ? 'software' : 'hardware',
      });
      return { ...one, jacks: [one.jacks[0] as PlanJack, thru] };
    });
    const names = ['switcher.OUT', ...devices.map(({ name }) => `${name}.THRU`)];
    const plan = board(
      [SWITCHER, ...devices],
      devices.map(({ name }, at) => `${names[at] ?? ''} > ${name}.IN`),
    );
    expect(kinds(plan)).not.toContain('too-deep');
  });

  test('finds a lead shorter than the way round the devices', () => {
    const placed = (device: Device, x: number, y: number): Device => ({
      ...device,
      xCentimetres: x,
      yCentimetres: y,
      widthCentimetres: 10,
      depthCentimetres: 10,
    });
    // OUT at the back left corner of (0, 40), IN at the front of (0, 0); between them a wall 30 cm wide from x = 0 at y = 20.
    const front = { edge: 'front', alongCentimetres: 0 } as const;
    const wall: Device = {
      ...pedal('pedal 2'),
      talks: 'wireless',
      yCentimetres: 20,
      widthCentimetres: 30,
      depthCentimetres: 10,
    };
    const devices = [placed(SWITCHER, 5, 40), placed(pedal('pedal 1', {}, front), 5, 0)];
    const open = { lengthMetres: 0.41 };
    // Straight: from (5, 40) to (5, 10) is 30 cm, and 10 cm for the plugs.
    expect(kinds(board(devices, CHAIN.slice(0, 1), {}, open))).toEqual([]);
    expect(kinds(board(devices, CHAIN.slice(0, 1), {}, { lengthMetres: 0.39 }))).toEqual(['too-short']);
    // Round the left end of the wall: twice the root of 5 x 5 + 10 x 10, and its 10 cm: 32.36 cm, and 10 cm for the plugs.
    const walled = [...devices, wall];
    expect(kinds(board(walled, CHAIN.slice(0, 1), {}, open))).toEqual(['too-short', 'not-a-wire']);
    expect(kinds(board(walled, CHAIN.slice(0, 1), {}, { lengthMetres: 0.43 }))).toEqual(['not-a-wire']);
  });

  test('finds a supply on spare pins that goes where it should not, and one that does not arrive', () => {
    const all = { conductors: wires('1-1', '2-2', '3-3', '4-4', '5-5') };
    const live: Device = {
      ...SWITCHER,
      jacks: [planJack('OUT', 'out', 'din5', 'din', { supplyOnSpares: true })],
    };
    const link = CHAIN.slice(0, 1);
    const severity = (plan: Plan): readonly string[] =>
      checkBoard(plan)
        .findings.filter(({ kind }) => kind === 'supply-on-spares')
        .map((one) => one.severity);
    expect(severity(board([live, pedal('pedal 1')], link, {}, all))).toContain('error');
    expect(severity(board([SWITCHER, pedal('pedal 1')], link, {}, all))).toEqual(['note']);
    const hungry = pedal('pedal 1', { power: 'spare-pins' });
    expect(kinds(board([live, hungry], link))).toEqual(['no-supply']);
    expect(severity(board([live, hungry], link, {}, all))).toEqual(['note']);
  });

  test('finds a foreign supply on a contact, even one that changes no byte, and a pin 2 that is tied at an input', () => {
    const into = (more: Partial<PlanJack>): Plan =>
      board([SWITCHER, pedal('pedal 1', {}, more)], CHAIN.slice(0, 1));
    const weights = (plan: Plan): readonly (readonly string[])[] =>
      checkBoard(plan).findings.map(({ kind, severity }) => [kind, severity]);
    const faint = into({ values: { foreignAcrossVolts: 0.1, foreignOhms: 1e6 } });
    expect(weights(faint)).toEqual([['foreign-supply', 'error']]);
    expect(weights(into({ extras: ['shield-tied'] }))).toEqual([['grounds', 'note']]);
  });

  test('notes what is not the standard’s behind a link that works: pin 2 on a shell, a resistor, a supply', () => {
    const told = (out: Partial<PlanJack>, into: Partial<PlanJack>, lead: Partial<Lead> = {}) => {
      const sender: Device = { ...SWITCHER, jacks: [planJack('OUT', 'out', 'din5', 'din', out)] };
      const { findings, passes } = checkBoard(
        board([sender, pedal('pedal 1', {}, into)], CHAIN.slice(0, 1), {}, lead),
      );
      expect(passes).toBe(true);
      return findings.map(({ kind, severity, why }) => [kind, severity, why]);
    };
    expect(told({}, {})).toEqual([]);
    expect(told({}, {}, { conductors: wires('4-4', '5-5', '2-2', '2-shell') })).toEqual([
      [
        'off-standard',
        'note',
        'the standard wants the shield on pin 2 at both ends, never on the shell of a plug',
      ],
    ]);
    expect(told({}, { values: { seriesOhms: 330 } })).toEqual([
      ['off-standard', 'note', 'the receiver resistor of the input is 330 ohm; the standard has 220 ohm'],
    ]);
    expect(told({ values: { supplyVolts: 6 } }, {})).toEqual([
      ['off-standard', 'note', 'the supply of the output is 6.00 V; the standard has 5.00 V or 3.30 V'],
    ]);
  });

  test('mends a link as the bench does: what to change is said by the one judge', () => {
    const ends = [SWITCHER, pedal('pedal 1', {}, { part: 'PC900V' })] as const;
    const left: Device = {
      ...SWITCHER,
      jacks: [
        planJack('OUT', 'out', 'din5', 'din', {
          circuit: 'driver-3v3',
          values: { sourceOhms: 220, sinkOhms: 220 },
        }),
      ],
    };
    const mends = (plan: Plan): readonly string[] => checkBoard(plan).findings.map(({ mend }) => mend);
    // The cheapest true cure of a 3.3 V sender left at 220 ohm is its two resistors (CA-033, fig. 1), not a converter.
    expect(mends(board([left, ends[1]], CHAIN.slice(0, 1)))).toContain(
      'Change the source resistor of the output to 33 ohm and the sink resistor of the output to 10 ohm, as the standard has them.',
    );
    for (const conductors of [wires('4-5', '5-4', '2-2'), wires('4-4', '2-2')]) {
      const plan = board(ends, CHAIN.slice(0, 1), {}, { conductors });
      const [link] = plan.links;
      expect(mends(plan)).toContain(checkLink(linkOf(plan, link as PlanLink)).change);
    }
  });

  test('finds an input that loses bits behind its own LED, one link from the controller, and cures it there', () => {
    const weak = pedal('pedal 1', {}, { part: 'CNY17-1', values: { loadOhms: 25_000 } });
    const [found, ...others] = checkBoard(board([SWITCHER, weak], CHAIN.slice(0, 1))).findings;
    expect(others).toEqual([]);
    expect([found?.kind, found?.severity, found?.what]).toEqual([
      'too-deep',
      'error',
      "'pedal 1' loses bits in its own input",
    ]);
    expect(found?.mend).toContain('behind the LED of its input');
  });

  test('finds one channel for two only where the press means one of them, and a device that hears all', () => {
    const same = [SWITCHER, pedal('pedal 1'), { ...pedal('pedal 2'), channel: 1 }];
    expect(checkBoard(board(same, CHAIN)).findings.map((one) => [one.kind, one.severity])).toEqual([
      ['same-channel', 'note'],
    ]);
    const press = [{ device: 'pedal 1', send: 'program', program: 1 }] as const;
    expect(checkBoard(board(same, CHAIN, { press })).findings.map((one) => one.severity)).toEqual([
      'warning',
    ]);
    const open = [SWITCHER, pedal('pedal 1'), { ...pedal('pedal 2'), channel: 0 }];
    expect(kinds(board(open, CHAIN, { press }))).toEqual(['hears-all']);
    expect(kinds(board(open, CHAIN))).toEqual([]);
  });

  test('does not call a board good while no device on it has a channel', () => {
    const open = ['pedal 1', 'pedal 2'].map((name) => ({ ...pedal(name), channel: 0 }));
    const { findings, passes } = checkBoard(board([SWITCHER, ...open], CHAIN));
    expect(findings.map(({ kind, severity }) => [kind, severity])).toEqual([['hears-all', 'warning']]);
    expect(passes).toBe(true);
    // A single device has nobody to be told from.
    expect(kinds(board([SWITCHER, ...open.slice(0, 1)], CHAIN.slice(0, 1)))).toEqual([]);
  });

  test('finds a hub that is out of outlets, a lead used twice and a breakout that is wanted', () => {
    const hub: Device = {
      name: 'hub',
      kind: 'hub',
      jacks: [
        planJack('IN', 'in', 'din5', 'din', { part: 'H11L1' }),
        planJack('OUT 1', 'out', 'din5', 'din'),
      ],
    };
    const plan = board(
      [SWITCHER, hub, pedal('pedal 1'), pedal('pedal 2')],
      ['switcher.OUT > hub.IN', 'hub.OUT 1 > pedal 1.IN'],
    );
    expect(kinds(plan)).toEqual(['unreached', 'hub-full']);
    const twice = board([SWITCHER, pedal('pedal 1'), pedal('pedal 2')], CHAIN);
    const shared = twice.links.map((link) => ({
      ...link,
      inputs: link.inputs.map((one) => ({ ...one, leads: ['lead 1'] })),
    }));
    expect(kinds({ ...twice, links: shared })).toEqual(['lead-twice']);
    const level: Device = { ...SWITCHER, jacks: [planJack('OUT', 'out', 'trs-6.35', 'tip-signal')] };
    const both: Device = { ...pedal('pedal 1'), jacks: inAndOut('CONTROL', 'tip') };
    const last: Device = { ...pedal('pedal 2'), jacks: [planJack('IN', 'in', 'trs-6.35', 'ring-signal')] };
    const trs = ['tip-tip', 'ring-ring', 'sleeve-sleeve'];
    const inOut = board(
      [level, both, last],
      ['switcher.OUT > pedal 1.CONTROL in', 'pedal 1.CONTROL out > pedal 2.IN'],
    );
    const leads = inOut.leads.map(({ name }) => makeLead('trs-6.35', 'trs-6.35', wires(...trs), { name }));
    expect(kinds({ ...inOut, leads })).toContain('breakout');
  });

  test('says plainly what is no wired link', () => {
    const plan = board(
      [SWITCHER, pedal('pedal 1'), { name: 'radio', kind: 'pedal', talks: 'wireless', jacks: [] }],
      CHAIN.slice(0, 1),
    );
    expect(kinds(plan)).toEqual(['not-a-wire']);
  });
});

describe('The library of devices', () => {
  test('holds devices that can be, each name once, every one accepted by the reader', () => {
    for (const { jacks } of LIBRARY) for (const jack of jacks) expect(jackProblem(jack)).toBeUndefined();
    const plan = makePlan({ devices: LIBRARY });
    expect(readPlan(JSON.parse(JSON.stringify(plan)))).toEqual({ ok: true, plan });
  });
});
