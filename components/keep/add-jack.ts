/** Adding a jack from another page to the board plan that is kept in this browser. */
import {
  PLAN_LIMITS,
  addDevice,
  addJack,
  freeAlong,
  makePlan,
  planJack,
  readPlanText,
  sayEdit,
  sayProblems,
  writePlanText,
} from '../../src/core/plan/index.ts';
import type { Jack } from '../../src/core/wiring/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { addVersion, store, stored } from './shelf.ts';

/** Size of a device that is made for a jack, centimetres (our choice). */
const NEW_DEVICE = { widthCentimetres: 10, depthCentimetres: 12 } as const;

/** What became of it, in words; `ok` says whether the jack is on the kept board. */
export interface AddedJack {
  readonly ok: boolean;
  readonly words: string;
}

/** Add a jack to the device of this name on the kept board, or to a new one of that name. A board page that is open is told. */
export function addJackToBoard(jack: Jack, deviceName: string): AddedJack {
  const name = deviceName.trim().slice(0, PLAN_LIMITS.nameCharacters);
  if (name === '') return { ok: false, words: 'name: expected the name of a device, got nothing.' };
  const { now, why } = stored('board');
  if (why !== undefined) return { ok: false, words: `This browser does not keep a board (${why}).` };
  let plan: Plan = makePlan({});
  if (now) {
    const reading = readPlanText(now.text);
    if (!reading.ok) {
      const problems = sayProblems(reading.problems);
      return {
        ok: false,
        words: `The board kept in this browser cannot be read (${problems}). It is as it was.`,
      };
    }
    plan = reading.plan;
  }
  const there = plan.devices.some((one) => one.name === name);
  if (!there) {
    const made = addDevice(plan, { name, kind: 'pedal', ...NEW_DEVICE, jacks: [] });
    if (!made.ok) return { ok: false, words: sayEdit(made.problem) };
    plan = made.plan;
  }
  const device = plan.devices.find((one) => one.name === name);
  if (!device) throw new Error(`board: no device '${name}' after adding it`);
  const { direction, connector, style, circuit, part, values } = jack;
  const named = planJack(direction === 'out' ? 'OUT' : 'IN', direction, connector, style, {
    circuit,
    part,
    values,
    alongCentimetres: freeAlong(device, 'back'),
  });
  const edit = addJack(plan, name, named);
  if (!edit.ok) return { ok: false, words: sayEdit(edit.problem) };
  if (now && !addVersion('board', { at: now.at, text: now.text }))
    return {
      ok: false,
      words: 'This browser has no room to keep the board as an earlier version. It is as it was.',
    };
  const writing = store(
    'board',
    now?.revision ?? 0,
    'other-page',
    new Date().toISOString(),
    writePlanText(edit.plan),
  );
  switch (writing.kind) {
    case 'kept':
      return {
        ok: true,
        words: `The jack is on the board plan, on ${there ? '' : 'a new device '}'${name}'.`,
      };
    case 'clash':
      return { ok: false, words: 'The board plan was changed in another tab just now. Try again.' };
    case 'failed':
      return { ok: false, words: `This browser does not keep the board (${writing.why}).` };
  }
}
