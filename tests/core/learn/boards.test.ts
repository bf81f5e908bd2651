import { describe, expect, test } from 'vitest';
import { boardFrom, splitFrom } from '../../../src/core/learn/index.ts';
import type { AuthoredBoard } from '../../../src/core/learn/index.ts';
import { checkBoard } from '../../../src/core/board/index.ts';
import { PLAN_LIMITS, findJack, readPlanText, writePlanText } from '../../../src/core/plan/index.ts';
import { boardFacts } from '../../../src/core/planner/index.ts';
import { PARTS } from '../../../src/core/wiring/index.ts';

const LAYOUTS = ['chain', 'hub', 'both', 'split', 'two senders', 'merger'] as const;
const PEDALS = [1, 2, 3, 4, 5, 6] as const;
/** Every layout with every number of pedals. */
const ALL = LAYOUTS.flatMap((layout) => PEDALS.map((pedals) => ({ layout, pedals })));

/** Links of a layout by hand: one into each pedal, and what the boxes between need besides. */
function linksByHand({ layout, pedals }: AuthoredBoard): number {
  switch (layout) {
    case 'chain':
    case 'split':
      return pedals;
    case 'hub':
    case 'both':
    case 'two senders':
      return pedals + 1;
    case 'merger':
      return pedals + 2;
  }
}

/** Links from the controller to the furthest pedal by hand. */
function depthByHand({ layout, pedals }: AuthoredBoard): number {
  switch (layout) {
    case 'chain':
    case 'two senders':
      return pedals;
    case 'split':
      return 1;
    case 'hub':
      return 2;
    case 'both':
      return 1 + Math.ceil(pedals / 2);
    case 'merger':
      return pedals + 1;
  }
}

describe('A board of a lesson', () => {
  test('has links between jacks that are there, one lead each, whatever its layout and size', () => {
    for (const board of ALL) {
      const plan = boardFrom(board);
      const name = `${board.layout} of ${board.pedals}`;
      expect(plan.links.length, name).toBe(linksByHand(board));
      for (const { output, inputs } of plan.links) {
        expect(findJack(plan, output)?.direction, `${name}: ${JSON.stringify(output)}`).toBe('out');
        expect(inputs).toHaveLength(1);
        for (const input of inputs) {
          expect(findJack(plan, input)?.direction, `${name}: ${JSON.stringify(input)}`).toBe('in');
          expect(plan.leads.filter((lead) => input.leads.includes(lead.name))).toHaveLength(1);
        }
      }
      expect(plan.leads.length, name).toBe(plan.links.length);
    }
  });

  test('reaches every pedal, as deep as it is drawn', () => {
    for (const board of ALL) {
      const plan = boardFrom(board);
      expect(boardFacts(plan).deepestLinks, `${board.layout} of ${board.pedals}`).toBe(depthByHand(board));
      expect(checkBoard(plan).findings.map(({ kind }) => kind)).not.toContain('unreached');
    }
  });

  test('passes with a chain, a hub, both or a merger, and fails where one wire does two jobs', () => {
    for (const pedals of PEDALS)
      for (const layout of ['chain', 'hub', 'both', 'merger'] as const)
        expect(checkBoard(boardFrom({ layout, pedals })).passes, `${layout} of ${pedals}`).toBe(true);
    const kinds = (board: AuthoredBoard) => checkBoard(boardFrom(board)).findings.map(({ kind }) => kind);
    for (const pedals of PEDALS) expect(kinds({ layout: 'two senders', pedals })).toContain('fed-twice');
    for (const pedals of PEDALS.slice(1)) expect(kinds({ layout: 'split', pedals })).toContain('split');
  });

  test('gives each pedal the channel of its place, its own name, and the part that is asked for', () => {
    for (const part of PARTS) {
      const pedals = boardFrom({ layout: 'chain', pedals: 6, part }).devices.filter(
        ({ kind }) => kind === 'pedal',
      );
      expect(pedals.map(({ channel }) => channel)).toEqual([1, 2, 3, 4, 5, 6]);
      expect(new Set(pedals.map(({ name }) => name)).size).toBe(6);
      for (const { jacks } of pedals) expect(jacks.find(({ name }) => name === 'IN')?.part).toBe(part);
    }
  });

  test('has logic parts and hardware THRUs where nothing is said, and software where it is', () => {
    const jack = (board: AuthoredBoard, name: string) =>
      boardFrom(board)
        .devices.at(-1)
        ?.jacks.find((one) => one.name === name);
    const plain: AuthoredBoard = { layout: 'chain', pedals: 2 };
    expect(jack(plain, 'IN')?.part).toBe('H11L1');
    expect(jack(plain, 'THRU')).toMatchObject({ role: 'thru', thru: 'hardware' });
    expect(jack({ ...plain, thru: 'software' }, 'THRU')).toMatchObject({ thru: 'software' });
  });

  test('buys its hub, and has a second sender only where the lesson is about two', () => {
    const kinds = (layout: AuthoredBoard['layout']) =>
      boardFrom({ layout, pedals: 2 }).devices.map(({ kind, toBuy }) => (toBuy ? `${kind} to buy` : kind));
    expect(kinds('chain')).toEqual(['controller', 'pedal', 'pedal']);
    expect(kinds('hub')).toEqual(['controller', 'hub to buy', 'pedal', 'pedal']);
    expect(kinds('merger')).toEqual(['controller', 'controller', 'merger', 'pedal', 'pedal']);
    expect(kinds('two senders')).toEqual(['controller', 'controller', 'pedal', 'pedal']);
  });

  test('is a plan that can be kept: written and read again it is the same, but for a split wider than a plan holds', () => {
    for (const board of ALL) {
      const plan = boardFrom({ ...board, press: [{ device: 'echo', send: 'program', program: 5 }] });
      const reading = readPlanText(writePlanText(plan));
      // A plan has at most four inputs on one output.
      const fits = board.layout !== 'split' || board.pedals <= PLAN_LIMITS.inputs;
      expect(reading, `${board.layout} of ${board.pedals}`).toMatchObject({ ok: fits });
      if (reading.ok) expect(reading.plan).toEqual(plan);
    }
  });
});

describe('A split by wire', () => {
  test('is one output with a lead of 1 m to each input, in the order of the parts', () => {
    const { output, branches } = splitFrom({ parts: ['6N138', 'PC900V', 'H11L1'] });
    expect(output.circuit).toBe('driver-5v');
    expect(branches.map(({ input }) => input.part)).toEqual(['6N138', 'PC900V', 'H11L1']);
    for (const { leads } of branches) {
      expect(leads).toHaveLength(1);
      expect(leads[0]).toMatchObject({ lengthMetres: 1 });
    }
  });

  test('may have another output, or no input at all', () => {
    expect(splitFrom({ parts: ['6N138'], circuit: 'driver-3v3' }).output.circuit).toBe('driver-3v3');
    expect(splitFrom({ parts: [] }).branches).toEqual([]);
  });
});
