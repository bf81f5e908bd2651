import { describe, expect, test } from 'vitest';
import { boardStanding, checkBoard, demoBoard } from '../../../src/core/board/index.ts';
import { makePlan } from '../../../src/core/plan/index.ts';
import type { Plan } from '../../../src/core/plan/index.ts';

const said = (plan: Plan): string => boardStanding(plan, checkBoard(plan)).label;

describe('How a board stands', () => {
  test('is good of the demo board, and never of one device, of no link, or of channels that are all unset', () => {
    const demo = demoBoard();
    expect(said(demo)).toBe('This board works');
    expect(said(makePlan({ devices: demo.devices.slice(0, 1) }))).toBe(
      'One device: add what it is to talk to',
    );
    const noChannel = { ...demo, devices: demo.devices.map((one) => ({ ...one, channel: 0 })) };
    expect(said(noChannel)).toBe('Every link works; no device has a channel yet');
    expect(boardStanding({ ...demo, links: [] }, checkBoard({ ...demo, links: [] })).grade).not.toBe('good');
  });

  test('says first what may damage a part', () => {
    const demo = demoBoard();
    const check = checkBoard(demo);
    const [first, ...others] = check.outcomes;
    if (!first) throw new Error('test: needs a link, got none');
    const outcomes = [{ ...first, danger: 'the LED' }, ...others];
    expect(boardStanding(demo, { ...check, outcomes }).label).toBe(
      'Do not connect: a part would be over its rating',
    );
  });
});
