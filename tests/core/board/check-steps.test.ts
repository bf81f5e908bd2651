import { expect, test } from 'vitest';
import {
  boardStanding,
  checkBoard,
  checkRemembered,
  checkSteps,
  connect,
  demoBoard,
  disconnect,
  solveLink,
  unsolvedBoard,
} from '../../../src/core/board/index.ts';
import type { CheckProgress } from '../../../src/core/board/index.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

test('a check taken circuit by circuit says how far it is, and finds what the whole check finds', () => {
  const demo = demoBoard();
  const told: CheckProgress[] = [];
  const check = runThrough(checkSteps(demo, new Map()), (one) => told.push(one));
  const outputs = new Set(demo.links.map(({ output }) => `${output.device} ${output.jack}`)).size;
  expect(told).toEqual(Array.from({ length: outputs }, (_, at) => ({ done: at + 1, of: outputs })));
  expect(check).toEqual(checkBoard(demo));
});

test('a check from memory finds what the whole check finds, and solves no more circuits than it may', () => {
  const demo = demoBoard();
  const memory = new Map();
  const circuits = new Set(demo.links.map(({ output }) => `${output.device} ${output.jack}`)).size;
  expect(checkRemembered(demo, memory, circuits - 1)).toBeUndefined();
  expect(memory.size).toBe(0);
  expect(checkRemembered(demo, memory, circuits)).toEqual(checkBoard(demo));
  expect(checkRemembered(demo, memory, 0)).toEqual(checkBoard(demo));
});

test('what a link that fails asks for in words is remembered with it', () => {
  // An output of the hub on two inputs: a split, with what is to be done about it.
  const memory = new Map();
  const demo = demoBoard(memory);
  const made = connect(
    disconnect(demo, 'link 2'),
    { device: 'hub', jack: 'OUT 3' },
    { device: 'tape echo', jack: 'IN' },
    memory,
  );
  if (!made.ok) throw new Error('needs a split that can be made');
  const found = checkBoard(made.plan, memory);
  expect(found.findings.map(({ kind }) => kind)).toContain('split');
  const remembered = memory.size;
  expect(checkRemembered(made.plan, memory, 0)).toEqual(found);
  expect(memory.size).toBe(remembered);
});

test('a link that is solved alone leaves nothing of its board to solve, whatever shares its jacks', () => {
  const memory = new Map();
  const demo = demoBoard(memory);
  checkBoard(demo, memory);
  // A second output on an input that is fed: the circuit of the first one changes too.
  const made = connect(demo, { device: 'hub', jack: 'OUT 2' }, { device: 'drive', jack: 'IN' }, memory);
  if (!made.ok) throw new Error('needs a link that can be made');
  expect(checkRemembered(made.plan, memory, 0)).toBeUndefined();
  solveLink(made.plan, made.link, memory);
  expect(checkRemembered(made.plan, memory, 0)).toEqual(checkBoard(made.plan));
  expect(() => solveLink(demo, 'no such', memory)).toThrow("board: no link 'no such'");
});

test('of a board that is not solved yet nothing good is said, of no link and not of the whole', () => {
  const demo = demoBoard();
  const check = unsolvedBoard(demo);
  expect(check.outcomes.map(({ outcome }) => outcome)).toEqual(demo.links.map(() => 'unsolved'));
  expect([check.passes, check.findings.map(({ kind }) => kind)]).toEqual([false, ['not-solved']]);
  expect(boardStanding(demo, check)).toEqual({ grade: 'doubtful', label: 'Links not solved' });
});
