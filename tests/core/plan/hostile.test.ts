import { describe, expect, test } from 'vitest';
import { demoBoard } from '../../../src/core/board/index.ts';
import { addStock, setMaking } from '../../../src/core/plan/edit-lists.ts';
import { changeDevice } from '../../../src/core/plan/edit.ts';
import { edited, sayEdit } from '../../../src/core/plan/edited.ts';
import { planJack } from '../../../src/core/plan/library.ts';
import { findJack, linkOf, makePlan, planOfLink } from '../../../src/core/plan/parts.ts';
import type { Device, JackPlace, Plan, PlanLink } from '../../../src/core/plan/plan.ts';
import { readPlan, sayProblems } from '../../../src/core/plan/read-plan.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { planBoard } from '../../../src/core/planner/index.ts';
import type { PlanAnswer } from '../../../src/core/planner/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';
import { randomBoard } from '../board/boards.ts';
import { plainPlan } from './plans.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

function planned(plan: Plan): PlanAnswer {
  return runThrough(planBoard(plan));
}

/** What a reader of files says of a plan. */
function said(plan: Plan): string {
  const reading = readPlan(JSON.parse(JSON.stringify(plan)));
  return reading.ok ? 'read' : sayProblems(reading.problems);
}

async function linkOfPacked(packed: unknown): Promise<string> {
  const stream = new Blob([JSON.stringify(packed)])
    .stream()
    .pipeThrough(new CompressionStream('deflate-raw'));
  return `a${Buffer.from(await new Response(stream).arrayBuffer()).toString('base64url')}`;
}

async function saidOfLink(text: string): Promise<string> {
  const reading = await readSharedLink(text);
  return reading.ok ? 'read' : sayProblems(reading.problems);
}

describe('What the workbook makes can be read again', () => {
  test('when a device that the press means becomes one that the planner may leave out', () => {
    const changed = changeDevice(demoBoard(), 'tape echo', { kind: 'converter' });
    if (!changed.ok) throw new Error(sayEdit(changed.problem));
    const answer = planned(changed.plan);
    if (!answer.ok) throw new Error(answer.why);
    expect(said(answer.best.plan)).toBe('read');
  });

  test('when a lead costs more than a file can say', () => {
    const bare = makePlan({ devices: randomBoard(1, 1).devices });
    const answer = planned(setMaking(bare, { plug: 1e9 }));
    expect(answer.ok ? said(answer.best.plan) : answer.why).toBe('read');
  });

  test('when one link of a board goes to the bench, its jacks leave the hole behind that they share', () => {
    const plan = demoBoard();
    for (const link of plan.links) {
      const [input] = link.inputs;
      const [from, to] = [findJack(plan, link.output), input && findJack(plan, input)];
      if (!from || !to) throw new Error(`${link.name}: no jacks`);
      expect(said(planOfLink(from, to, linkOf(plan, link).branches[0]?.leads ?? []))).toBe('read');
    }
  });
});

describe('A plan that a page could not hold is refused with its field', () => {
  const plan = plainPlan();
  const [link] = plan.links as [PlanLink];
  const [input] = link.inputs;

  test('an input twice in one link', () => {
    expect(said({ ...plan, links: [{ ...link, inputs: [...link.inputs, ...link.inputs] }] })).toBe(
      "links[0].inputs[1]: expected each input once, got 'echo: in'",
    );
  });

  test('a lead twice in one series', () => {
    const twice = { ...link, inputs: [{ ...input, leads: ['lead 1', 'lead 1'] }] } as PlanLink;
    expect(said({ ...plan, links: [twice] })).toBe(
      "links[0].inputs[0].leads[1]: expected each lead once, got 'lead 1'",
    );
  });

  test('but not two banks for one device, nor one lead in two links, which the check of the board finds', () => {
    const two = { ...plan, links: [link, { ...link, name: 'link 2' }] };
    const bank = { device: 'echo', send: 'bank', bank: 1 } as const;
    expect(said({ ...two, press: [bank, { ...bank, bank: 2 }] })).toBe('read');
  });
});

describe('A plan that costs too much to solve is refused before it is solved', () => {
  /** One output and `inputs` inputs, each behind `series` leads in series, as a link packs them. */
  function packed(inputs: number, series: number): unknown {
    const jack = (direction: number): unknown => ['j', direction, 1, 0, direction === 0 ? 0 : 5, 0, []];
    const all = Array.from({ length: inputs * series }, (_, at) => at);
    return [
      '',
      [['s', [jack(0)]], ...Array.from({ length: inputs }, (_, at) => [`d${at}`, [jack(1)]])],
      all.map((at) => [`${at}`, 1, 0, 1, 0, [3, 3, 4, 4, 1, 1], 1, 26, 0.03, []]),
      [['l', 0, 0, all.slice(0, inputs).map((at) => [at + 1, 0, all.slice(at * series, (at + 1) * series)])]],
    ];
  }

  test('a link of a few characters with 16 inputs behind 8 leads each', async () => {
    const text = await linkOfPacked(packed(16, 8));
    expect(text.length).toBeLessThan(1000);
    expect(await saidOfLink(text)).toBe('links[0].inputs: expected a list of 1 to 4, got a list of 16');
    expect(await saidOfLink(await linkOfPacked(packed(4, 8)))).toContain(
      'links[0].inputs[0].leads: expected a list of 1 to 4, got a list of 8',
    );
    // Four inputs behind four leads of three conductors each: 48.
    expect(await saidOfLink(await linkOfPacked(packed(4, 4)))).toBe('read');
  });

  /** Links that each join two jacks of their own by a lead of nine conductors, 32 jacks to a device. */
  function manyLinks(count: number): Plan {
    const conductors = [
      ...wires('1-1', '2-2', '3-3', '4-4', '5-5', 'shell-shell'),
      ...wires('1-2', '2-1', '1-3'),
    ];
    const all = Array.from({ length: count }, (_, at) => at);
    const device = (side: 'out' | 'in', number: number): Device => ({
      name: `${side} ${number}`,
      jacks: Array.from({ length: 32 }, (_, at) => planJack(`jack ${at}`, side, 'din5', 'din')),
    });
    const place = (side: 'out' | 'in', at: number): JackPlace => ({
      device: `${side} ${Math.floor(at / 32)}`,
      jack: `jack ${at % 32}`,
    });
    return makePlan({
      devices: [0, 1, 2, 3, 4].flatMap((number) => [device('out', number), device('in', number)]),
      leads: all.map((at) => makeLead('din5', 'din5', conductors, { name: `lead ${at}` })),
      links: all.map((at) => ({
        name: `link ${at}`,
        output: place('out', at),
        inputs: [{ ...place('in', at), leads: [`lead ${at}`] }],
      })),
    });
  }

  test('more links than any board has, and more conductors in all of them', () => {
    // 71 leads of 9 conductors are 639, and 72 are 648.
    expect(said(manyLinks(71))).toBe('read');
    expect(said(manyLinks(72))).toBe(
      'links: expected at most 640 conductors in all their leads together, got 648',
    );
    expect(said(manyLinks(129))).toBe('links: expected a list of 0 to 128, got a list of 129');
  });

  test('more inputs or conductors than belong in one circuit, however many links they are shared out to', () => {
    const shared = (inputs: number): Plan => {
      const plan = manyLinks(inputs);
      return {
        ...plan,
        links: plan.links.map((link) => ({ ...link, output: { device: 'out 0', jack: 'jack 0' } })),
      };
    };
    const leads = shared(5).leads.map((lead) => ({ ...lead, conductors: wires('4-4', '5-5', '2-2') }));
    expect(said(shared(4))).toBe('read');
    expect(said({ ...shared(5), leads })).toBe(
      'links[4]: expected at most 4 inputs in one circuit, with all links that share a jack with it, got 5',
    );
    const wide = manyLinks(1).leads.map((lead) => ({
      ...lead,
      conductors: [...lead.conductors, ...wires('2-3', '3-1', '3-2', '4-1')],
    }));
    // 4 leads of 13 conductors.
    const four = shared(4).leads.map(({ name }) => ({ ...(wide[0] as (typeof wide)[number]), name }));
    expect(said({ ...shared(4), leads: four })).toBe(
      'links[3]: expected at most 48 conductors in one circuit, with all links that share a jack with it, got 52',
    );
  });
});

describe('A link that holds nothing', () => {
  test.each([null, 5, 'x', {}])('but %j is no plan', async (value) => {
    expect(await saidOfLink(await linkOfPacked(value))).toMatch(/^the link: expected a plan, got /);
  });

  test('but an empty list has no devices', async () => {
    expect(await saidOfLink(await linkOfPacked([]))).toContain(
      'devices: expected a list of 0 to 64, got nothing',
    );
  });

  test('of an empty board is what it was, and a change that no file could hold is said in words', async () => {
    expect(await saidOfLink(await writeSharedLink(makePlan({})))).toBe('read');
    const edit = edited(addStock(makePlan({}), makeLead('din5', 'din5', []), NaN));
    expect(edit.ok || sayEdit(edit.problem)).toBe(
      'stock 1, price: expected a number from 0 to 1000000000, got NaN. The plan is as it was.',
    );
  });
});
