import { describe, expect, test } from 'vitest';
import {
  deviceRows,
  hearers,
  hopNumbers,
  linkRows,
  checkBoard,
  planOfLead,
  sayPassedOn,
  senders,
} from '../../../src/core/board/index.ts';
import { boardFrom } from '../../../src/core/learn/index.ts';
import type { AuthoredBoard } from '../../../src/core/learn/index.ts';
import { readPlanText, writePlanText } from '../../../src/core/plan/index.ts';

const CHAIN = boardFrom({ layout: 'chain', pedals: 4 });
const HUB = boardFrom({ layout: 'hub', pedals: 4 });
const MERGER = boardFrom({ layout: 'merger', pedals: 2 });
const SOFT = boardFrom({ layout: 'chain', pedals: 3, thru: 'software' });
const ALL: readonly AuthoredBoard[] = (['chain', 'hub', 'both', 'merger', 'two senders'] as const).flatMap(
  (layout) => [1, 3, 6].map((pedals) => ({ layout, pedals })),
);
/** H11L1: 1.2 µs at the slower edge. A byte is 320 µs; a software THRU or merger takes 1 ms of its own where nothing is given. */
const OPTO = 1.2e-6;
const RESENT = 320e-6 + 1e-3;

describe('Who hears what a device sends', () => {
  test('in a chain is everyone behind it, each an optocoupler later', () => {
    const { hearings, deaf } = hearers(CHAIN, 'foot controller');
    expect(hearings.map(({ device, hops }) => [device, hops])).toEqual([
      ['echo', 1],
      ['drive', 2],
      ['chorus', 3],
      ['looper', 4],
    ]);
    hearings.forEach(({ seconds }, at) => expect(seconds).toBeCloseTo((at + 1) * OPTO, 10));
    expect(hearings[2]?.links).toEqual(['link 1', 'link 2', 'link 3']);
    expect(deaf).toEqual([]);
  });

  test('behind a hub is everyone at the same moment', () => {
    const times = hearers(HUB, 'foot controller').hearings.filter(({ hops }) => hops === 2);
    expect(times).toHaveLength(4);
    expect(new Set(times.map(({ seconds }) => seconds)).size).toBe(1);
  });

  test('behind software is later by a byte and what the device takes, from the second on', () => {
    const seconds = hearers(SOFT, 'foot controller').hearings.map((one) => one.seconds);
    [OPTO, 2 * OPTO + RESENT, 3 * OPTO + 2 * RESENT].forEach((wanted, at) =>
      expect(seconds[at]).toBeCloseTo(wanted, 9),
    );
  });

  test('stands soonest first, and its times never fall along the links of a way', () => {
    for (const board of ALL) {
      const plan = boardFrom(board);
      for (const sender of senders(plan)) {
        const { hearings } = hearers(plan, sender);
        const seconds = hearings.map((one) => one.seconds);
        expect(seconds).toEqual([...seconds].sort((one, other) => one - other));
        for (const { hops, links } of hearings) expect(links).toHaveLength(hops);
      }
    }
  });

  test('is nobody upstream: the last of a chain is heard by none, and the rest are deaf to it', () => {
    const { hearings, deaf } = hearers(CHAIN, 'looper');
    expect(hearings).toEqual([]);
    expect(deaf).toEqual(['foot controller', 'echo', 'drive', 'chorus']);
    expect(() => hearers(CHAIN, 'harp')).toThrow("board: no device 'harp'");
  });

  test('is everyone behind a merger, from either sender', () => {
    expect(senders(MERGER)).toEqual(['foot controller', 'keyboard']);
    for (const sender of senders(MERGER))
      expect(hearers(MERGER, sender).hearings.map(({ device }) => device)).toEqual([
        'merger',
        'echo',
        'drive',
      ]);
  });

  test('is told by how the last device gave it on', () => {
    const said = (plan: typeof CHAIN, device: string) => {
      const found = hearers(plan, 'foot controller').hearings.find((one) => one.device === device);
      if (!found) throw new Error(`expected '${device}' to hear`);
      return sayPassedOn(found);
    };
    expect(said(CHAIN, 'echo')).toBe('straight from the sender');
    expect(said(CHAIN, 'drive')).toBe("passed on at once by 'echo'");
    expect(said(SOFT, 'drive')).toBe("read and sent again by 'echo'");
    expect(said(HUB, 'drive')).toBe("passed on at once by 'hub'");
  });
});

describe('The place of each link from the senders', () => {
  test('counts from 1 along a chain, and is the same for all behind a hub', () => {
    expect(hopNumbers(CHAIN)).toEqual([[1], [2], [3], [4]]);
    expect(hopNumbers(HUB)).toEqual([[1], [2], [2], [2], [2]]);
    expect(hopNumbers(MERGER)).toEqual([[1], [1], [2], [3]]);
  });

  test('is the least where two senders come along, and none where no message comes', () => {
    expect(hopNumbers(boardFrom({ layout: 'two senders', pedals: 2 }))).toEqual([[1], [1], [2]]);
    expect(hopNumbers({ ...CHAIN, links: CHAIN.links.slice(1) })).toEqual([
      [undefined],
      [undefined],
      [undefined],
    ]);
    expect(hopNumbers({ ...CHAIN, links: [] })).toEqual([]);
  });
});

describe('The board on one page', () => {
  test('has a row for each device, with the jack that feeds it', () => {
    for (const board of ALL) {
      const plan = boardFrom(board);
      const rows = deviceRows(plan);
      expect(rows.map(({ device }) => device)).toEqual(plan.devices.map(({ name }) => name));
      for (const { device, fedBy, input } of rows) {
        const feed = plan.links.find(({ inputs }) => inputs.some((one) => one.device === device));
        expect(fedBy).toBe(feed ? `${feed.output.device}: ${feed.output.jack}` : '');
        expect(input === '').toBe(feed === undefined);
      }
    }
  });

  test('tells what the press sends to each, in order', () => {
    const plan = boardFrom({
      layout: 'chain',
      pedals: 2,
      press: [
        { device: 'echo', send: 'bank', bank: 2 },
        { device: 'echo', send: 'program', program: 5 },
        { device: 'drive', send: 'control', controller: 80, value: 127 },
      ],
    });
    expect(deviceRows(plan).map(({ sends }) => sends)).toEqual([
      '',
      'bank 2, program 5',
      'control 80 to 127',
    ]);
  });

  test('has a row for each input, with the metres of all its leads', () => {
    const plan = {
      ...CHAIN,
      links: CHAIN.links.map((link, at) =>
        at === 0
          ? { ...link, inputs: link.inputs.map((one) => ({ ...one, leads: ['lead 1', 'lead 2'] })) }
          : link,
      ),
    };
    const rows = linkRows(plan, checkBoard(CHAIN).outcomes);
    expect(rows[0]).toMatchObject({ leads: 'lead 1, lead 2', lengthMetres: 2, from: 'foot controller: OUT' });
    expect(rows).toHaveLength(4);
  });

  test('can be cut down to one lead, which is a plan of its own', () => {
    for (const { name } of CHAIN.leads) {
      const alone = planOfLead(CHAIN, name);
      expect(alone.leads.map((one) => one.name)).toEqual([name]);
      expect(alone.devices).toHaveLength(2);
      expect(alone.devices.map(({ jacks }) => jacks.length)).toEqual([1, 1]);
      expect(readPlanText(writePlanText(alone))).toMatchObject({ ok: true });
    }
    expect(() => planOfLead(CHAIN, 'rope')).toThrow("plan: no link uses a lead 'rope'");
  });
});
