/** Stamps: how each part enters the matrix of modified nodal analysis, and how the sources enter its right-hand side. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { FLOATING_TIE_OHMS, SWITCH_ON_OHMS } from './elements.ts';
import type { Factor } from './matrix.ts';
import type { Plan } from './plans.ts';

/** Write the resistors, closed switches and sources into a factor's entries, in the plan's order. */
export function stampLinear(compiled: CompiledCircuit, plan: Plan, factor: Factor): void {
  factor.rowOrder.set(plan.order);
  factor.columnOrder.set(plan.order);
  const { unknowns: size, ofKind, first, second, values, branch } = compiled;
  const { entries } = factor;
  const place = factor.columnPlace;
  for (let at = 0; at < size; at++) place[plan.order[at] as number] = at;
  entries.fill(0);
  for (const at of ofKind.resistor)
    join(first[at] as number, second[at] as number, 1 / (values[at] as number));
  for (const at of ofKind.switch)
    if (values[at] === 1) join(first[at] as number, second[at] as number, 1 / SWITCH_ON_OHMS);
  for (const at of ofKind.voltage) {
    const row = branch[at] as number;
    const plus = first[at] as number;
    const minus = second[at] as number;
    add(plus, row, 1);
    add(minus, row, -1);
    add(row, plus, 1);
    add(row, minus, -1);
  }
  for (const node of plan.tied) add(node, node, 1 / FLOATING_TIE_OHMS);

  function add(row: number, column: number, value: number): void {
    if (row === GROUND || column === GROUND) return;
    const at = (place[row] as number) * size + (place[column] as number);
    entries[at] = (entries[at] as number) + value;
  }

  function join(a: number, b: number, siemens: number): void {
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
  }
}

/** Write the sources into a right-hand side, each scaled; `side` is in the circuit's own order. */
export function loadSources(compiled: CompiledCircuit, scale: number, side: Float64Array): void {
  side.fill(0);
  const { first, second, values, branch, ofKind } = compiled;
  for (const at of ofKind.voltage) side[branch[at] as number] = (values[at] as number) * scale;
  for (const at of ofKind.current) {
    const from = first[at] as number;
    const to = second[at] as number;
    const amperes = (values[at] as number) * scale;
    if (from !== GROUND) side[from] = (side[from] as number) - amperes;
    if (to !== GROUND) side[to] = (side[to] as number) + amperes;
  }
}
