import { describe, expect, test } from 'vitest';
import { solveOutputs } from '../../../src/core/board/solve-outputs.ts';
import { pathReads } from '../../../src/core/board/hops.ts';
import { planJack } from '../../../src/core/plan/library.ts';
import { boardGraph, pathsFrom } from '../../../src/core/plan/passing.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Device, PlanJack, PlanLink } from '../../../src/core/plan/plan.ts';
import {
  ONE_LOOK,
  STANDARD_EDGE_BUDGET,
  WORST_CLOCKS,
  edgeBudget,
} from '../../../src/core/signal/bit-budget.ts';
import type { Clocks } from '../../../src/core/signal/bit-budget.ts';
import type { Hop } from '../../../src/core/signal/hop.ts';
import { mostHops, tryLink } from '../../../src/core/signal/limits.ts';
import { ownHop } from '../../../src/core/signal/send.ts';
import { prepareTimeLink } from '../../../src/core/signal/time-link.ts';
import { checkLink } from '../../../src/core/verdict/check.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';
import { CIRCUITS, hasLed } from '../../../src/core/wiring/circuits.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';
import { PARTS } from '../../../src/core/wiring/parts.ts';

/** Every input that can be: each part behind each circuit that lights one, and the input that reads a level. */
const INPUTS: readonly Jack[] = CIRCUITS.filter((circuit) => circuit.startsWith('receiver-')).flatMap(
  (circuit) => {
    const style =
      circuit === 'receiver-both-ways'
        ? 'both-ways'
        : circuit === 'receiver-isolated'
          ? 'type-a'
          : 'tip-signal';
    return (hasLed(circuit) ? PARTS : (['6N138'] as const)).map((part) =>
      makeJack('in', 'trs-3.5', style, { circuit, part }),
    );
  },
);

/**
 * Clocks of both ends, always a little apart: where they agree to the last digit a whole number of hops of 1 us uses up
 * exactly all of 16 us, and rounding decides.
 */
const CLOCKS: readonly Clocks[] = [
  WORST_CLOCKS,
  { sender: { clockError: -0.005 }, receiver: { ...ONE_LOOK, clockError: 0.005 } },
  { sender: { clockError: -0.001 }, receiver: { ...ONE_LOOK, clockError: 0 } },
  { sender: { clockError: 0.001 }, receiver: { ...ONE_LOOK, clockError: -0.002 } },
  { sender: { clockError: 0.01 }, receiver: { ...ONE_LOOK, clockError: -0.01 } },
  { sender: { clockError: -0.001 }, receiver: { clockError: 0.002 } },
];

/** How the THRUs of a chain copy: the name, and the kind of device number `at`. */
type Thrus = (at: number) => 'hardware' | 'software';
const THRUS: Readonly<Record<'hardware' | 'software' | 'software at every third', Thrus>> = {
  hardware: () => 'hardware',
  software: () => 'software',
  'software at every third': (at: number) => (at % 3 === 2 ? 'software' : 'hardware'),
};

/** Longest chain built: within the devices that a plan takes. */
const LONGEST = 60;

/** The lead of every link of a chain: nothing follows it in time here, so one may stand for all. */
const LEAD = makeLead('trs-3.5', 'trs-3.5', wires('tip-tip', 'ring-ring', 'sleeve-sleeve'));

/** A function that answers each question once. */
function kept<Asked extends readonly unknown[], Answer>(
  answer: (...asked: Asked) => Answer,
): (...asked: Asked) => Answer {
  const answers: { readonly asked: Asked; readonly answer: Answer }[] = [];
  return (...asked) => {
    const known = answers.find((one) => one.asked.every((value, at) => value === asked[at]));
    if (known) return known.answer;
    const made = { asked, answer: answer(...asked) };
    answers.push(made);
    return made.answer;
  };
}

/** A chain on a board of devices that all have this input, up to the longest. */
function chainOf(input: Jack, thru: Thrus): ReturnType<typeof makePlan> {
  const into: PlanJack = { ...planJack('IN', 'in', input.connector, input.style), ...input };
  const name = (at: number): string => `box ${at + 1}`;
  const boxes = Array.from({ length: LONGEST }, (_, at): Device => ({
    name: name(at),
    kind: 'pedal',
    jacks: [into, planJack('THRU', 'out', 'trs-3.5', 'type-a', { role: 'thru', thru: thru(at) })],
  }));
  const first: Device = {
    name: 'sender',
    kind: 'controller',
    jacks: [planJack('OUT', 'out', 'trs-3.5', 'type-a')],
  };
  return makePlan({
    devices: [first, ...boxes],
    leads: [LEAD],
    links: boxes.map((box, at): PlanLink => ({
      name: `link ${at + 1}`,
      output: at === 0 ? { device: 'sender', jack: 'OUT' } : { device: name(at - 1), jack: 'THRU' },
      inputs: [{ device: box.name, jack: 'IN', leads: [LEAD.name] }],
    })),
  });
}

/** Whether one link alone works; another has nothing to carry on. */
function works(input: Jack): boolean {
  const { outcome } = checkLink({
    output: makeJack('out', 'trs-3.5', 'type-a'),
    branches: [{ input, leads: [LEAD] }],
  });
  return outcome === 'flows' || outcome === 'weak';
}

const WORKING = INPUTS.filter(works);

/** What a board knows of the chain whatever the clocks, and links that were solved once for all chains. */
const MEMORY: LinkMemory = new Map();
const boardOf = kept((input: Jack, thru: Thrus) => {
  const plan = chainOf(input, thru);
  const graph = boardGraph(plan);
  return { graph, path: pathsFrom(graph, 0).at(-1) ?? [], solved: solveOutputs(plan, MEMORY) };
});

/** Links that a board lets through: those before the first that loses a byte. */
function heldByBoard(input: Jack, thru: Thrus, clocks: Clocks): number {
  const { graph, path, solved } = boardOf(input, thru);
  const reads = pathReads(graph, path, solved, [clocks]);
  expect(reads).toHaveLength(LONGEST);
  const past = reads.indexOf(false);
  return past < 0 ? LONGEST : past;
}

const hopOf = kept((input: Jack) => {
  const output = makeJack('out', 'trs-3.5', 'type-a');
  return ownHop(prepareTimeLink({ output, branches: [{ input, leads: [LEAD] }] }));
});

/** The same chain sent as bytes, `links` long: the last box only listens. */
function hopsOf(input: Jack, thru: Thrus, clocks: Clocks, links: number): readonly Hop[] {
  const own = hopOf(input);
  return Array.from({ length: links }, (_, at): Hop => {
    if (at === links - 1) return own;
    if (thru(at) === 'hardware') return { ...own, kind: 'hardware thru' };
    return { ...own, ...clocks, kind: 'software thru', latencySeconds: 100e-6 };
  });
}

describe('a board and the simulation of bytes hold the same number of links', () => {
  for (const [name, thru] of Object.entries(THRUS))
    for (const [number, clocks] of CLOCKS.entries())
      test(`THRU: ${name}, clocks ${number + 1} of ${CLOCKS.length}, whatever the input`, () => {
        for (const input of WORKING) {
          const where = `${input.circuit} ${input.part}`;
          const held = heldByBoard(input, thru, clocks);
          const trial = (links: number) => tryLink({ ...clocks, hops: hopsOf(input, thru, clocks, links) });
          expect(trial(held), where).toBeNull();
          if (held < LONGEST) expect(trial(held + 1), where).not.toBeNull();
        }
      });

  test('a chain that is asked for again, or a shorter one after a longer, reads as the first time', () => {
    const [slow, quick] = (['PC900V', 'H11L1'] as const).map((part) =>
      boardOf(makeJack('in', 'trs-3.5', 'type-a', { part }), THRUS.hardware),
    );
    if (!slow || !quick) throw new Error('two chains were built');
    const whole = pathReads(slow.graph, slow.path, slow.solved);
    expect(whole).toContain(false);
    expect(pathReads(slow.graph, slow.path, slow.solved)).toEqual(whole);
    expect(pathReads(slow.graph, slow.path.slice(0, 2), slow.solved)).toEqual(whole.slice(0, 2));
    // What stands between is not taken for the other: the quicker part holds more links.
    expect(pathReads(quick.graph, quick.path, quick.solved)).not.toEqual(whole);
  });

  test('and both hold as many as can be counted by hand with clocks at the limits of the standard', () => {
    // 8.1 us of budget: hops of 0.86 us, 0.2 us, 1 us and 3.4 us; and by shift and budget as well as by bytes.
    const held = PARTS.slice(0, 4).map((part) => {
      const input = makeJack('in', 'trs-3.5', 'type-a', { part });
      const [hop] = hopsOf(input, THRUS.hardware, WORST_CLOCKS, 1);
      return [heldByBoard(input, THRUS.hardware, WORST_CLOCKS), hop && mostHops(hop, WORST_CLOCKS).value];
    });
    expect(held).toEqual([
      [9, 9],
      [40, 40],
      [8, 8],
      [2, 2],
    ]);
    expect(edgeBudget(WORST_CLOCKS).lateSeconds).toBe(STANDARD_EDGE_BUDGET.lateSeconds);
  });
});
