/** Factored matrices of a circuit: at DC, and for every length of step in time. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { factorLinear, makeFactor, sparseOf } from './matrix.ts';
import type { Factor } from './matrix.ts';
import { planFor } from './plans.ts';
import type { Plan, Still } from './plans.ts';
import { stampLinear } from './stamp.ts';

/** Factors kept for one set of switch positions: the steps a link uses in time are some thirty, so this is a guard. */
const FACTORS_KEPT = 128;

/** The factored linear part at DC, where capacitors are open, for the present switch positions. */
export function factorFor(compiled: CompiledCircuit): Factor {
  const plan = planFor(compiled);
  const revision = compiled.revision[0] as number;
  const factor = (plan.atRest ??= emptyFactor(compiled, plan, compiled.unknowns));
  if (factor.revision === revision) return factor;
  stampLinear(compiled, plan, factor);
  factorLinear(factor, plan.linearCount);
  factor.revision = revision;
  const { rowPlace, columnPlace } = factor;
  placeEnds(
    compiled,
    factor,
    (node) => rowPlace[node] as number,
    (node) => columnPlace[node] as number,
  );
  return factor;
}

/** The still part for the present switch positions. */
export function stillFor(compiled: CompiledCircuit): Still {
  const plan = planFor(compiled);
  const revision = compiled.revision[0] as number;
  if (plan.still?.factor.revision === revision) return plan.still;
  const factor = emptyFactor(compiled, plan, compiled.unknowns);
  stampLinear(compiled, plan, factor);
  factorLinear(factor, plan.stillCount);
  factor.revision = revision;
  factor.sparse = sparseOf(factor);
  const { ofKind, first, second } = compiled;
  const moving = compiled.unknowns - factor.pivots;
  const place = (node: number): number => (node === GROUND ? moving : (factor.columnPlace[node] as number));
  const watched = new Set<number>();
  for (const kind of ['capacitor', 'diode', 'switch'] as const)
    for (const at of ofKind[kind]) watched.add(place(first[at] as number)).add(place(second[at] as number));
  // A switch that is not part closed is a resistor or nothing.
  const kept = [...watched].filter((at) => at >= 0 && at < moving);
  plan.still = {
    factor,
    moving,
    firstEnds: ofKind.capacitor.map((at) => place(first[at] as number)),
    secondEnds: ofKind.capacitor.map((at) => place(second[at] as number)),
    watched: Int32Array.from(kept),
  };
  return plan.still;
}

/**
 * The factored moving part for steps of one length; its unknowns are the moving ones of `stillFor`, in their order.
 * @param perSecond companion of the capacitors, siemens for each farad; more than 0.
 */
export function stepFactorFor(compiled: CompiledCircuit, perSecond: number): Factor {
  const plan = planFor(compiled);
  const { factor: still, moving, firstEnds, secondEnds } = stillFor(compiled);
  const known = plan.inTime.get(perSecond);
  if (known?.revision === still.revision) return known;
  if (plan.inTime.size >= FACTORS_KEPT) plan.inTime.clear();
  const factor = emptyFactor(compiled, plan, moving);
  plan.inTime.set(perSecond, factor);
  const { entries } = factor;
  const { size, pivots } = still;
  for (let row = 0; row < moving; row++) {
    factor.rowOrder[row] = factor.columnOrder[row] = row;
    const from = (row + pivots) * size + pivots;
    for (let column = 0; column < moving; column++)
      entries[row * moving + column] = still.entries[from + column] as number;
  }
  compiled.ofKind.capacitor.forEach((at, index) => {
    const siemens = (compiled.values[at] as number) * perSecond;
    const a = firstEnds[index] as number;
    const b = secondEnds[index] as number;
    if (a < moving) entries[a * moving + a]! += siemens;
    if (b < moving) entries[b * moving + b]! += siemens;
    if (a < moving && b < moving) {
      entries[a * moving + b]! -= siemens;
      entries[b * moving + a]! -= siemens;
    }
  });
  factorLinear(factor, plan.linearCount - pivots);
  factor.revision = still.revision;
  factor.sparse = sparseOf(factor);
  placeEnds(
    compiled,
    factor,
    (node) => factor.rowPlace[still.rowPlace[node] as number] as number,
    (node) => factor.columnPlace[still.columnPlace[node] as number] as number,
  );
  return factor;
}

function emptyFactor({ junctions }: CompiledCircuit, { floating, ramps }: Plan, size: number): Factor {
  return makeFactor(size, floating, ramps, 2 * junctions.anode.length);
}

/** Note where the ends of junctions and of part-closed switches stand among the rest. */
function placeEnds(
  { junctions, first, second }: CompiledCircuit,
  { endRows, endColumns, ramps, rampRows }: Factor,
  rowOf: (node: number) => number,
  columnOf: (node: number) => number,
): void {
  const count = junctions.anode.length;
  const row = (node: number): number => (node === GROUND ? -1 : rowOf(node));
  const column = (node: number): number => (node === GROUND ? -1 : columnOf(node));
  for (let at = 0; at < count; at++) {
    const anode = junctions.anode[at] as number;
    const cathode = junctions.cathode[at] as number;
    endRows[at] = row(anode);
    endColumns[at] = column(anode);
    endRows[count + at] = row(cathode);
    endColumns[count + at] = column(cathode);
  }
  ramps.forEach((part, at) => {
    rampRows[at] = row(first[part] as number);
    rampRows[ramps.length + at] = row(second[part] as number);
  });
}
