import { describe, expect, test } from 'vitest';
import { checkBoard } from '../../../src/core/board/check.ts';
import { csvText } from '../../../src/core/board/csv.ts';
import { hearers, hopNumbers, senders } from '../../../src/core/board/hearing.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';
import { pressTimeline, timePress } from '../../../src/core/board/one-press.ts';
import { cableSchedule, leadLabels } from '../../../src/core/board/schedule.ts';
import { deviceRows, linkRows, planOfLead } from '../../../src/core/board/sheet.ts';
import { shoppingList } from '../../../src/core/board/shopping.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { readPlanText, writePlanText } from '../../../src/core/plan/read-plan.ts';
import { boardFacts } from '../../../src/core/planner/facts.ts';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import { wildPlan } from '../board/wild-boards.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** Plans tried here; `WILD_PLANS=3000` tries as many as were tried when this was written. */
const COUNT = Number(process.env.WILD_PLANS ?? 120);

/** Everything that is drawn, printed or saved of a board. */
function papers(plan: Plan, memory: LinkMemory): void {
  const { outcomes } = checkBoard(plan, memory);
  const timing = timePress(plan);
  for (const rows of [cableSchedule(plan), leadLabels(plan), deviceRows(plan), linkRows(plan, outcomes)])
    csvText(rows);
  for (const { lead } of cableSchedule(plan))
    if (plan.leads.some(({ name }) => name === lead)) planOfLead(plan, lead);
  for (const name of senders(plan)) hearers(plan, name);
  pressTimeline(plan, timing);
  hopNumbers(plan);
  boardFacts(plan);
  expect(Number.isFinite(shoppingList(plan).total)).toBe(true);
  expect(Number.isFinite(timing.sendSeconds)).toBe(true);
}

describe('A board that no careful person would draw', { timeout: 3_600_000 }, () => {
  test('goes through check, press, lists, papers and planner without a throw, and the plan taken can be read again', () => {
    const memory: LinkMemory = new Map();
    let planned = 0;
    const problems: string[] = [];
    for (let seed = 0; seed < COUNT; seed++) {
      try {
        const plan = wildPlan(seed);
        papers(plan, memory);
        const end = runThrough(planBoard(plan, memory));
        if (!end.ok) continue;
        planned++;
        for (const one of [end.best, end.other]) {
          if (!one) continue;
          const reading = readPlanText(writePlanText(one.plan));
          expect(reading).toEqual({ ok: true, plan: one.plan });
          papers(one.plan, memory);
        }
      } catch (problem) {
        problems.push(`seed ${seed}: ${problem instanceof Error ? problem.message : String(problem)}`);
      }
    }
    expect(problems).toEqual([]);
    expect(planned).toBeGreaterThan(COUNT / 20);
  });
});
