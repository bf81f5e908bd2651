/** Boards as tasks tell them: their leads counted by hand, and the plan that is made of them. */
import { describe, expect, it } from 'vitest';
import { boardFacts } from '../../../../src/core/planner/index.ts';
import { checkBoard } from '../../../../src/core/board/index.ts';
import { findJack } from '../../../../src/core/plan/index.ts';
import { waysOf } from '../../../../src/core/learn/boards.ts';
import { leadRows, planOfLeads } from '../../../../src/core/learn/tasks/told-boards.ts';

const NAMES = ['one', 'two', 'three', 'four', 'five', 'six'];
const SHAPES = ['chain', 'hub', 'both', 'hub behind', 'two hubs'] as const;
const SIZES = [3, 4, 5, 6] as const;

/** Leads, hubs and links to the last pedal of a shape, counted on paper. */
const BY_HAND: Readonly<
  Record<(typeof SHAPES)[number], (pedals: number) => readonly [number, number, number]>
> = {
  chain: (pedals) => [pedals, 0, pedals],
  hub: (pedals) => [pedals + 1, 1, 2],
  both: (pedals) => [pedals + 1, 1, 1 + Math.ceil(pedals / 2)],
  'hub behind': (pedals) => [pedals + 1, 1, 3],
  'two hubs': (pedals) => [pedals + 2, 2, 3],
};

describe('A told board', () => {
  it.each(SHAPES)('of the shape %s has the leads, hubs and links that are counted on paper', (shape) => {
    for (const pedals of SIZES) {
      const { leads, hubs, deepestLinks } = boardFacts(planOfLeads(waysOf(shape, NAMES.slice(0, pedals))));
      expect([leads, hubs, deepestLinks], `${shape} of ${pedals}`).toEqual(BY_HAND[shape](pedals));
    }
  });

  it('joins jacks that are there, each output and each input once, and passes every check', () => {
    for (const shape of SHAPES)
      for (const pedals of SIZES) {
        const plan = planOfLeads(waysOf(shape, NAMES.slice(0, pedals)));
        const ends = plan.links.flatMap(({ output, inputs }) => [output, ...inputs]);
        for (const end of ends) expect(findJack(plan, end), JSON.stringify(end)).toBeDefined();
        const names = ends.map(({ device, jack }) => `${device} ${jack}`);
        expect(new Set(names).size, `${shape} of ${pedals}`).toBe(names.length);
        expect(checkBoard(plan).passes, `${shape} of ${pedals}`).toBe(true);
      }
  });

  it('has hubs with as many outputs as are in use, and every pedal on a channel of its own', () => {
    for (const shape of SHAPES) {
      const plan = planOfLeads(waysOf(shape, NAMES));
      for (const { name, kind, jacks } of plan.devices)
        if (kind === 'hub') {
          const used = plan.links.filter(({ output }) => output.device === name);
          expect(jacks.filter(({ direction }) => direction === 'out')).toHaveLength(used.length);
        }
      const channels = plan.devices.flatMap(({ channel }) => (channel === undefined ? [] : [channel]));
      expect(new Set(channels).size).toBe(NAMES.length);
    }
  });

  it('is told lead by lead, in the words that a reader follows', () => {
    expect(leadRows(waysOf('hub behind', ['echo', 'drive', 'chorus']))).toEqual([
      ['lead 1', 'foot controller OUT to echo IN'],
      ['lead 2', 'echo THRU to hub IN'],
      ['lead 3', 'hub OUT 1 to drive IN'],
      ['lead 4', 'hub OUT 2 to chorus IN'],
    ]);
    expect(leadRows(waysOf('two hubs', ['echo', 'drive', 'chorus'])).map(([, told]) => told)).toEqual([
      'foot controller OUT to hub IN',
      'hub OUT 1 to second hub IN',
      'hub OUT 2 to chorus IN',
      'second hub OUT 1 to echo IN',
      'second hub OUT 2 to drive IN',
    ]);
  });

  it('has the parts and the kinds of THRU that are told of it', () => {
    const plan = planOfLeads(waysOf('chain', ['echo', 'drive']), {
      part: 'PC900V',
      thrus: { echo: 'software', drive: 'none' },
    });
    const jacks = (name: string) => plan.devices.find((one) => one.name === name)?.jacks ?? [];
    expect(jacks('echo')).toMatchObject([
      { name: 'IN', part: 'PC900V' },
      { name: 'THRU', thru: 'software' },
    ]);
    expect(jacks('drive').map(({ name }) => name)).toEqual(['IN']);
  });
});
