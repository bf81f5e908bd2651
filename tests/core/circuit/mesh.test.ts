/** The star-mesh elimination against Gaussian elimination with pivots, on meshes by seed. */
import { describe, expect, test } from 'vitest';
import { drive, driveRest, listBranches, subtractFlow } from '../../../src/core/circuit/flow.ts';
import {
  backSubstitute,
  eliminateMesh,
  join,
  makeMesh,
  makeSolidMesh,
  reduceFlow,
  reduceSide,
  restOf,
  solveFlow,
} from '../../../src/core/circuit/mesh.ts';
import { makeRoom } from '../../../src/core/circuit/room.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';

interface Branch {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

/** A connected mesh: every row has a way to ground, row `size`. */
function anyBranches(random: Random, size: number): readonly Branch[] {
  const tree = Array.from({ length: size }, (_, a) => ({
    a,
    b: random.integer(a + 1, size),
    siemens: random.decades(1e-6, 1e2),
  }));
  const more = Array.from({ length: 2 * size }, () => ({
    a: random.integer(0, size),
    b: random.integer(0, size),
    siemens: random.decades(1e-6, 1e2),
  }));
  return [...tree, ...more];
}

function meshOf(size: number, branches: readonly Branch[], eliminated = size) {
  const mesh = makeMesh(makeRoom(), size, eliminated);
  for (const { a, b, siemens } of branches) join(mesh.siemens, size, a, b, siemens);
  return mesh;
}

/** Volts by plain Gaussian elimination with row pivots: the twin. */
function volts(size: number, branches: readonly Branch[], side: readonly number[]): readonly number[] {
  const rows = Array.from({ length: size }, (_, at) => [
    ...Array.from({ length: size }, () => 0),
    side[at] ?? 0,
  ]);
  const add = (row: number, column: number, value: number): void => {
    const line = rows[row];
    if (line && column < size) line[column] = (line[column] ?? 0) + value;
  };
  for (const { a, b, siemens } of branches) {
    if (a === b) continue;
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const)
      if (one < size) {
        add(one, one, siemens);
        add(one, other, -siemens);
      }
  }
  for (let at = 0; at < size; at++) {
    const best = rows
      .slice(at)
      .reduce((most, row) => (Math.abs(row[at] ?? 0) > Math.abs(most[at] ?? 0) ? row : most));
    rows.splice(rows.indexOf(best), 1);
    rows.splice(at, 0, best);
    for (const row of rows.slice(at + 1)) {
      const share = (row[at] ?? 0) / (best[at] ?? NaN);
      best.forEach((value, column) => (row[column] = (row[column] ?? 0) - share * value));
    }
  }
  const found = Array.from({ length: size }, () => 0);
  for (let at = size - 1; at >= 0; at--) {
    const row = rows[at] ?? [];
    const rest = found.reduce(
      (sum, value, column) => (column > at ? sum + value * (row[column] ?? 0) : sum),
      0,
    );
    found[at] = ((row[size] ?? 0) - rest) / (row[at] ?? NaN);
  }
  return found;
}

const CASES = Array.from({ length: 30 }, (_, seed) => {
  const random = seededRandom(600 + seed);
  const size = random.integer(1, 9);
  return {
    size,
    branches: anyBranches(random, size),
    side: Array.from({ length: size }, () => random.integer(-9, 9) * 1e-3),
    part: random.integer(0, size),
  };
});

/** Take all that flows, by conductances or driven, out of the currents into the rows. */
function subtractAll(
  siemens: Float64Array,
  size: number,
  found: Float64Array,
  flow: Float64Array,
  side: Float64Array,
): void {
  const room = new Int32Array(size * (size + 1));
  const branches = listBranches(siemens, size, flow, new Float64Array(flow.length), room);
  subtractFlow(branches, siemens, size, found, flow, side);
}

/** Both answers, within the rounding of the twin. */
function close(given: ArrayLike<number>, wanted: readonly number[]): void {
  const most = Math.max(...wanted.map(Math.abs), 1e-12);
  wanted.forEach((one, at) => expect(Math.abs((given[at] ?? NaN) - one)).toBeLessThan(1e-6 * most));
}

describe('A mesh of conductances', () => {
  test('has the volts of Gaussian elimination', () => {
    for (const { size, branches, side } of CASES) {
      const mesh = meshOf(size, branches);
      const work = Float64Array.from([...side, 0]);
      eliminateMesh(mesh);
      reduceSide(mesh, work);
      backSubstitute(mesh, work);
      close(work, volts(size, branches, side));
    }
  });

  test('has the same volts when it is taken apart in two goes: first some rows, then what is left of them', () => {
    for (const { size, branches, side, part } of CASES) {
      const mesh = meshOf(size, branches, part);
      eliminateMesh(mesh);
      const work = Float64Array.from([...side, 0]);
      reduceSide(mesh, work);
      const left = size - part;
      const rest = makeSolidMesh(makeRoom(), left);
      rest.siemens.set(mesh.schur);
      const flow = new Float64Array(left * (left + 1));
      driveRest(mesh, work, flow);
      const found = new Float64Array(left + 1);
      solveFlow(rest, flow, found);
      work.set(found.subarray(0, left), part);
      backSubstitute(mesh, work);
      close(work, volts(size, branches, side));
    }
  });

  test('leaves the currents that the volts account for: nothing is left over at any row', () => {
    for (const { size, branches, side } of CASES) {
      const found = Float64Array.from([...volts(size, branches, side), 0]);
      const left = Float64Array.from([...side, 0]);
      subtractAll(meshOf(size, branches).siemens, size, found, new Float64Array(size * (size + 1)), left);
      const most = Math.max(...side.map(Math.abs), 1e-9);
      for (const one of left.slice(0, size)) expect(Math.abs(one)).toBeLessThan(1e-6 * most);
      // What goes in comes out at ground.
      expect(Math.abs((left[size] ?? NaN) - side.reduce((sum, one) => sum + one, 0))).toBeLessThan(
        1e-6 * most,
      );
    }
  });

  test('keeps its digits where conductances lie fifteen decades apart', () => {
    // 1 nA through 1 GS and 1 nS in series, 1e-9 / 1e-9 = 1 V: the small one decides, whatever stands beside it.
    const branches = [
      { a: 0, b: 1, siemens: 1e6 },
      { a: 1, b: 2, siemens: 1e-9 },
    ];
    const mesh = meshOf(2, branches);
    const work = Float64Array.from([1e-9, 0, 0]);
    eliminateMesh(mesh);
    reduceSide(mesh, work);
    backSubstitute(mesh, work);
    expect(work[0]).toBeCloseTo(1, 9);
    expect(work[1]).toBeCloseTo(1, 9);
  });

  test('adds up what is joined twice, either way round, and takes a row joined to itself for nothing', () => {
    const mesh = makeMesh(makeRoom(), 2, 2);
    join(mesh.siemens, 2, 0, 1, 2);
    join(mesh.siemens, 2, 1, 0, 3);
    join(mesh.siemens, 2, 1, 1, 7);
    join(mesh.siemens, 2, 2, 0, 4);
    expect(mesh.siemens[0 * 3 + 1]).toBe(5);
    expect(mesh.siemens[0 * 3 + 2]).toBe(4);
    expect(mesh.siemens[1 * 3 + 1]).toBe(0);
  });
});

describe('A flow in a mesh', () => {
  /** What each branch drives besides, and the currents into the rows that this comes to. */
  const flowOf = (size: number, branches: readonly Branch[], random: Random) => {
    const flow = new Float64Array(size * (size + 1));
    for (const { a, b } of branches) drive(flow, size, a, b, random.integer(-9, 9) * 1e-3);
    const side = new Float64Array(size + 1);
    subtractAll(new Float64Array(flow.length), size, new Float64Array(size + 1), flow, side);
    return { flow, side: [...side.subarray(0, size)] };
  };

  test('gives the volts that Gaussian elimination gives of the currents it comes to', () => {
    CASES.forEach(({ size, branches, part }, seed) => {
      const { flow, side } = flowOf(size, branches, seededRandom(seed));
      const mesh = meshOf(size, branches, part);
      eliminateMesh(mesh);
      const work = new Float64Array(size + 1);
      reduceFlow(mesh, flow, work);
      const left = size - part;
      const rest = makeSolidMesh(makeRoom(), left);
      rest.siemens.set(mesh.schur);
      const restFlow = new Float64Array(left * (left + 1));
      restOf(flow, size, part, restFlow);
      const found = new Float64Array(left + 1);
      solveFlow(rest, restFlow, found);
      work.set(found.subarray(0, left), part);
      backSubstitute(mesh, work);
      close(work, volts(size, branches, side));
    });
  });

  test('that goes round within a part leaves nothing over for the picosiemens that holds the part to ground', () => {
    // 43.9 V about a ring of three resistors, which drives 22 kA: no current comes back by ground, so that row 0 stands at 0 V.
    const ring = [
      { a: 0, b: 1, siemens: 1 / 0.7e-3 },
      { a: 1, b: 2, siemens: 1 / 0.3e-3 },
      { a: 2, b: 0, siemens: 1 / 1e-3 },
    ];
    for (const part of [0, 1, 2]) {
      const mesh = meshOf(3, [...ring, { a: 0, b: 3, siemens: 1e-12 }], part);
      const flow = new Float64Array(12);
      drive(flow, 3, 2, 0, 43.9 / 1e-3);
      eliminateMesh(mesh);
      const work = new Float64Array(4);
      reduceFlow(mesh, flow, work);
      const left = 3 - part;
      const rest = makeSolidMesh(makeRoom(), left);
      rest.siemens.set(mesh.schur);
      const restFlow = new Float64Array(left * (left + 1));
      restOf(flow, 3, part, restFlow);
      solveFlow(rest, restFlow, work.subarray(part));
      backSubstitute(mesh, work);
      expect(work[0]).toBeCloseTo(0, 9);
      expect(work[1]).toBeCloseTo(-43.9 * 0.35, 9);
      expect(work[2]).toBeCloseTo(-43.9 * 0.5, 9);
    }
  });
});

test('Branches are listed where something conducts or either flow drives, each once, by its rows', () => {
  const [siemens, flow, other] = [new Float64Array(12), new Float64Array(12), new Float64Array(12)];
  join(siemens, 3, 2, 0, 5);
  drive(flow, 3, 3, 1, 1e-3);
  drive(other, 3, 1, 2, 1e-3);
  drive(other, 3, 0, 2, 1e-3);
  expect([...listBranches(siemens, 3, flow, other, new Int32Array(12))]).toEqual([0, 2, 1, 2, 1, 3]);
});
