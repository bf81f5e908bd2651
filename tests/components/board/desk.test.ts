/** The desk of the board page: what is picked, joined, chosen and undone, held to the rules of a plan. */
import { describe, expect, test } from 'vitest';
import { Desk } from '../../../components/board/desk.svelte.ts';
import { NOTHING_SHOWN, isAt } from '../../../components/board/session.ts';
import {
  DIRECTION_WORDS,
  EDGE_WORDS,
  KIND_WORDS,
  ORIGIN_WORDS,
  POWER_WORDS,
  ROLE_WORDS,
  SETTING_WORDS,
  TALK_WORDS,
  THRU_WORDS,
} from '../../../components/board/words.ts';
import { checkBoard, connect, demoBoard } from '../../../src/core/board/index.ts';
import { edited, makePlan, sayEdit } from '../../../src/core/plan/index.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';

/** Links solved in one test are known in the next. */
const memory: LinkMemory = new Map();

function demoDesk(): Desk {
  const desk = new Desk(memory);
  desk.begin(demoBoard(memory));
  return desk;
}

/** A jack of the demo board that no link uses, and the one of the hub that could feed it. */
const LOOSE = { device: 'drive', jack: 'IN' } as const;

function withoutLink(): Desk {
  const desk = demoDesk();
  const link = desk.plan.links.find(({ inputs }) => inputs.some(({ device }) => device === LOOSE.device));
  desk.change({ ...desk.plan, links: desk.plan.links.filter((one) => one !== link) });
  return desk;
}

describe('A desk', () => {
  test('has nothing to go back to from the plan that was kept, and checks it', () => {
    const desk = demoDesk();
    expect([desk.history.canUndo, desk.shown]).toEqual([false, NOTHING_SHOWN]);
    expect(desk.checker.check.outcomes).toHaveLength(desk.plan.links.length);
    // Whatever was solved in time is what the core says of the whole board.
    if (desk.checker.check.findings.length > 0)
      expect(desk.checker.check.findings).toEqual(checkBoard(desk.plan, memory).findings);
  });

  test('makes no check again that came with the board, and makes its own once the board is changed', () => {
    const desk = new Desk(memory);
    const plan = demoBoard(memory);
    const check = { findings: [], outcomes: checkBoard(plan, memory).outcomes, passes: false };
    desk.open(plan, check);
    expect(desk.checker.check).toBe(check);
    desk.move('drive', 1, 1);
    expect(desk.checker.check).not.toBe(check);
  });

  test('refuses a change that no file could hold, in the words of the core, and keeps its plan', () => {
    const desk = demoDesk();
    const before = desk.plan;
    const twice = { ...before, devices: [...before.devices, ...before.devices] };
    desk.change(twice);
    const edit = edited(twice);
    expect(desk.word).toEqual({ text: edit.ok ? '' : sayEdit(edit.problem), bad: true });
    expect(desk.plan).toBe(before);
  });

  test('undoes and redoes a move, and lets go of what was picked', () => {
    const desk = demoDesk();
    const at = () => desk.plan.devices.find(({ name }) => name === 'drive')?.xCentimetres;
    const before = at();
    desk.move('drive', 70, 50);
    expect(at()).toBe(70);
    expect(desk.word?.text).toBe('drive: 70 cm from the left, 50 cm from the back.');
    desk.press(LOOSE);
    desk.travel('undo');
    expect([at(), desk.picked]).toEqual([before, undefined]);
    expect(desk.word).toEqual({ text: 'Undone. Nothing is left to undo.', bad: false });
    desk.travel('redo');
    expect(at()).toBe(70);
    expect(desk.word).toEqual({ text: 'Done again. Nothing is left to do again.', bad: false });
  });

  test('knows what is chosen by name, and forgets it with the plan', () => {
    const desk = demoDesk();
    desk.choose({ kind: 'device', name: 'drive' });
    expect([desk.device?.name, desk.link]).toEqual(['drive', undefined]);
    desk.choose({ kind: 'link', name: desk.plan.links[0]?.name ?? '' });
    expect([desk.device, desk.link]).toEqual([undefined, desk.plan.links[0]]);
    desk.open(makePlan({}));
    expect([desk.chosen, desk.link]).toEqual([undefined, undefined]);
  });

  test('shows the step of a message before a finding, and one puts the other away', () => {
    const desk = demoDesk();
    const where = { devices: ['drive'], links: [] };
    desk.showFinding({ severity: 'note', what: 'a', why: 'b', mend: 'c', where } as never);
    expect(desk.shown).toEqual(where);
    const step = { devices: ['hub'], links: [], now: 'x' };
    desk.showStep(step);
    expect([desk.shown, desk.found]).toEqual([step, undefined]);
    desk.showFinding(undefined);
    expect(desk.shown).toEqual(NOTHING_SHOWN);
  });
});

describe('Picking jacks', () => {
  test('picks one, says what is asked for now, and lets it go when it is pressed again', () => {
    const desk = withoutLink();
    desk.press(LOOSE);
    expect(isAt(desk.picked, 'drive', 'IN')).toBe(true);
    expect(desk.word).toEqual({
      text: "IN of 'drive' is picked. Now an output of another device; Escape lets go.",
      bad: false,
    });
    desk.press(LOOSE);
    expect([desk.picked, desk.word]).toEqual([undefined, undefined]);
  });

  test('changes its mind for another jack of the same direction', () => {
    const desk = withoutLink();
    desk.press(LOOSE);
    desk.press({ device: 'chorus', jack: 'IN' });
    expect(desk.picked).toEqual({ device: 'chorus', jack: 'IN' });
  });

  test('joins two, whichever came first, as the core joins them', () => {
    const output = { device: 'hub', jack: 'OUT 3' };
    for (const [first, second] of [
      [LOOSE, output],
      [output, LOOSE],
    ] as const) {
      const desk = withoutLink();
      const made = connect(desk.plan, output, LOOSE, memory);
      if (!made.ok) throw new Error(`needs a link that can be made, got ${sayEdit(made.problem)}`);
      desk.press(first);
      desk.press(second);
      expect(desk.plan.links).toEqual(made.plan.links);
      expect([desk.picked, desk.link?.name]).toEqual([undefined, made.link]);
      expect(desk.word?.text).toContain(
        `${made.link} joins hub: OUT 3 to drive: IN with ${made.leads[0]?.name ?? ''}`,
      );
      expect(desk.word?.bad).toBe(!made.works);
    }
  });

  test('says why two jacks cannot be joined, and changes nothing', () => {
    const desk = demoDesk();
    const before = desk.plan;
    desk.join({ device: 'hub', jack: 'OUT 1' }, { device: 'hub', jack: 'IN' });
    expect([desk.word?.bad, desk.plan]).toEqual([true, before]);
  });

  test('takes a device for its jack where it has just one that will do', () => {
    const desk = withoutLink();
    desk.press({ device: 'hub', jack: 'OUT 3' });
    desk.choose({ kind: 'device', name: 'drive' });
    expect(desk.plan.links.some(({ inputs }) => inputs.some((end) => isAt(end, 'drive', 'IN')))).toBe(true);
  });

  test('chooses a device that has several jacks that would do', () => {
    const desk = withoutLink();
    desk.press(LOOSE);
    desk.choose({ kind: 'device', name: 'hub' });
    expect([desk.device?.name, isAt(desk.picked, 'drive', 'IN')]).toEqual(['hub', true]);
  });

  test('passes over a jack that is not there, and one that went with its device', () => {
    const desk = withoutLink();
    desk.press({ device: 'drive', jack: 'no such' });
    expect(desk.picked).toBeUndefined();
    desk.press(LOOSE);
    desk.change({ ...desk.plan, devices: desk.plan.devices.filter(({ name }) => name !== 'drive') });
    expect(desk.picked).toBeUndefined();
  });
});

describe('Words for the closed sets', () => {
  test('tell every member of a set from the others', () => {
    for (const words of [
      DIRECTION_WORDS,
      EDGE_WORDS,
      KIND_WORDS,
      ORIGIN_WORDS,
      POWER_WORDS,
      ROLE_WORDS,
      SETTING_WORDS,
      TALK_WORDS,
      THRU_WORDS,
    ]) {
      const all = Object.values<string>(words);
      expect(new Set(all).size, all.join()).toBe(all.length);
    }
  });
});
