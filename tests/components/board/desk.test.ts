/** The desk of the board page: what is picked, joined, chosen and undone, held to the rules of a plan. */
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
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
import { boardSolver, solvedBoard } from '../../../components/board/board-solver.ts';
import type { BoardOrder } from '../../../components/board/board-solver.ts';
import type { Numbered } from '../../../components/parts/orders.ts';
import { checkBoard, connect, demoBoard } from '../../../src/core/board/index.ts';
import { edited, makePlan, sayEdit } from '../../../src/core/plan/index.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';

/** Links solved in one test are known in the next. */
const memory: LinkMemory = new Map();

/** A worker that answers in the next turn, on this thread. */
class NearWorker extends EventTarget {
  readonly #solve = boardSolver();

  postMessage({ number, order }: Numbered<BoardOrder>): void {
    setTimeout(() => {
      const data = { number, answer: this.#solve(order, () => undefined) };
      this.dispatchEvent(Object.assign(new Event('message'), { data: structuredClone(data) }));
    });
  }

  terminate(): void {
    this.postMessage = () => undefined;
  }
}

beforeAll(() => void vi.stubGlobal('requestAnimationFrame', (paint: () => void) => setTimeout(paint)));
afterAll(() => void vi.unstubAllGlobals());

const startNear = (): Worker => new NearWorker() as unknown as Worker;

/** Resolves when the worker has answered what was asked so far. */
const answered = (): Promise<void> => new Promise((resolve) => void setTimeout(resolve));

function demoDesk(): Desk {
  const desk = new Desk(memory, startNear);
  const plan = demoBoard(memory);
  checkBoard(plan, memory);
  desk.begin(plan);
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
    expect(desk.checker.check).toEqual(checkBoard(desk.plan, memory));
  });

  test('checks a board by what the build has solved of it, and calls it unsolved without that', () => {
    const { plan, solved } = JSON.parse(JSON.stringify(solvedBoard(demoBoard()))) as ReturnType<
      typeof solvedBoard
    >;
    // No number of it is lost on its way through a page, such as one without end.
    expect(solved).toEqual(solvedBoard(plan).solved);
    const desk = new Desk(new Map(), startNear);
    desk.open(plan);
    expect(new Set(desk.checker.check.outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['unsolved']));
    desk.checker.learn(solved);
    expect(desk.checker.check.findings).toEqual(checkBoard(plan).findings);
    expect(desk.checker.check.passes).toBe(true);
  });

  test('takes what a worker solved for a board that it does not know', async () => {
    const desk = new Desk(new Map(), startNear);
    desk.open(demoBoard(memory));
    desk.checker.start();
    expect([desk.checker.solving, desk.checker.check.passes]).toEqual([true, false]);
    await answered();
    expect(desk.checker.solving).toBe(false);
    expect(desk.checker.check).toEqual(checkBoard(desk.plan, memory));
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

  test('undoes and redoes a move once it is said, and lets go of what was picked', async () => {
    const desk = demoDesk();
    const at = () => desk.plan.devices.find(({ name }) => name === 'drive')?.xCentimetres;
    const before = at();
    desk.move('drive', 70, 50);
    expect(at()).toBe(70);
    expect(desk.word?.text).toBe('drive: 70 cm from the left, 50 cm from the back.');
    desk.press(LOOSE);
    desk.travel('undo');
    const undone = { text: 'Undone. Nothing is left to undo.', bad: false };
    expect([at(), desk.word]).toEqual([70, undone]);
    await vi.waitUntil(() => at() !== 70);
    expect([at(), desk.picked, desk.word]).toEqual([before, undefined, undone]);
    desk.travel('undo');
    expect(desk.word).toEqual(undone);
    desk.travel('redo');
    desk.finish();
    expect(at()).toBe(70);
    expect(desk.word).toEqual({ text: 'Done again. Nothing is left to do again.', bad: false });
  });

  test('does what it says before anything else is done, in order', () => {
    const desk = demoDesk();
    const first = desk.plan;
    desk.sayFirst('All channels are set.', () => desk.change({ ...desk.plan, title: 'one' }));
    expect(desk.plan).toBe(first);
    desk.sayFirst('The title is two.', () => desk.change({ ...desk.plan, title: 'two' }));
    expect(desk.plan.title).toBe('one');
    desk.finish();
    expect([desk.plan.title, desk.word?.text]).toEqual(['two', 'The title is two.']);
    desk.travel('undo');
    desk.travel('undo');
    desk.finish();
    expect([desk.plan, desk.history.canUndo]).toEqual([first, false]);
  });

  test('says why it could not do what it had said', () => {
    const desk = demoDesk();
    const before = desk.plan;
    desk.sayFirst('Done.', () => desk.change({ ...before, devices: [...before.devices, ...before.devices] }));
    desk.finish();
    expect([desk.plan, desk.word?.bad]).toEqual([before, true]);
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
      text: "IN of 'drive' is picked. Now an output of another device; press it again to let go.",
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

  test('joins two, whichever came first, as the core joins them, once the worker has answered', async () => {
    const output = { device: 'hub', jack: 'OUT 3' };
    for (const [first, second] of [
      [LOOSE, output],
      [output, LOOSE],
    ] as const) {
      const desk = withoutLink();
      const made = connect(desk.plan, output, LOOSE, memory);
      if (!made.ok) throw new Error(`needs a link that can be made, got ${sayEdit(made.problem)}`);
      const before = desk.plan;
      desk.press(first);
      desk.press(second);
      expect([desk.plan, desk.joining]).toEqual([before, { output, input: LOOSE }]);
      await answered();
      expect(desk.checker.check).toEqual(checkBoard(made.plan));
      expect(desk.plan.links).toEqual(made.plan.links);
      expect([desk.picked, desk.link?.name]).toEqual([undefined, made.link]);
      expect(desk.word?.text).toContain(
        `${made.link} joins hub: OUT 3 to drive: IN with ${made.leads[0]?.name ?? ''}`,
      );
      expect(desk.word?.bad).toBe(!made.works);
    }
  });

  test('joins before a board from a file takes its place, and undo brings the joined one back', async () => {
    const desk = withoutLink();
    const { links } = desk.plan;
    desk.press(LOOSE);
    desk.press({ device: 'hub', jack: 'OUT 3' });
    const opened = makePlan({ title: 'another' });
    desk.open(opened);
    await answered();
    expect([desk.plan, desk.joining]).toEqual([opened, undefined]);
    desk.travel('undo');
    desk.finish();
    expect(desk.plan.links).toHaveLength(links.length + 1);
  });

  test('joins at once, and once, where something else is to be done before the worker has answered', async () => {
    const desk = withoutLink();
    const steps = desk.plan;
    desk.press(LOOSE);
    desk.press({ device: 'hub', jack: 'OUT 3' });
    desk.finish();
    const joined = desk.plan;
    expect(joined.links).toHaveLength(steps.links.length + 1);
    desk.move('drive', 70, 50);
    await answered();
    desk.travel('undo');
    desk.finish();
    expect(desk.plan).toBe(joined);
    desk.travel('undo');
    desk.finish();
    expect([desk.plan, desk.joining]).toEqual([steps, undefined]);
  });

  test('says why two jacks cannot be joined, and changes nothing', async () => {
    const desk = demoDesk();
    const before = desk.plan;
    desk.join({ device: 'hub', jack: 'OUT 1' }, { device: 'hub', jack: 'IN' });
    await answered();
    expect([desk.word?.bad, desk.plan]).toEqual([true, before]);
  });

  test('takes a device for its jack where it has just one that will do', async () => {
    const desk = withoutLink();
    desk.press({ device: 'hub', jack: 'OUT 3' });
    desk.choose({ kind: 'device', name: 'drive' });
    await answered();
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
