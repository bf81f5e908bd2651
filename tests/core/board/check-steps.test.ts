import { expect, test } from 'vitest';
import {
  boardStanding,
  checkBoard,
  checkSteps,
  demoBoard,
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

test('of a board that is not solved yet nothing good is said, of no link and not of the whole', () => {
  const demo = demoBoard();
  const check = unsolvedBoard(demo);
  expect(check.outcomes.map(({ outcome }) => outcome)).toEqual(demo.links.map(() => 'unsolved'));
  expect([check.passes, check.findings.map(({ kind }) => kind)]).toEqual([false, ['not-solved']]);
  expect(boardStanding(demo, check)).toEqual({ grade: 'doubtful', label: 'Links not solved' });
});
