import { describe, expect, test } from 'vitest';
import {
  NEAREST_LANES,
  boardExtent,
  drawBoard,
  fitScale,
  routeBoard,
  scaleAhead,
} from '../../src/draw/board.ts';
import type { BoardDrawing } from '../../src/draw/board.ts';
import { crossesBox } from '../../src/draw/board-marks.ts';
import type { Box, Point } from '../../src/draw/geometry.ts';
import { checkBoard, connect, demoBoard, hopNumbers } from '../../src/core/board/index.ts';
import { LIBRARY, makePlan, planJack, wholeDevice } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { randomBoard, wiredBoard } from '../core/board/boards.ts';
import { boxesOverlap } from './paths.ts';

function drawn(plan: Plan, scale: number): BoardDrawing {
  return drawBoard(routeBoard(plan), checkBoard(plan).outcomes, hopNumbers(plan), scale);
}

/** A board of pedals in rows, each fed from the one before it or from the switcher, as far as one output may feed so many. */
function chained(seed: number, count: number): Plan {
  let plan = { ...randomBoard(seed, count), stock: [] };
  let from = { device: 'switcher', jack: 'OUT 1' };
  for (const device of plan.devices.slice(1)) {
    const input = { device: device.name, jack: 'IN' };
    const made = connect(plan, from, input);
    if (made.ok) plan = { ...made.plan, stock: [] };
    if (device.jacks.some(({ name }) => name === 'THRU')) from = { device: device.name, jack: 'THRU' };
    else from = { device: 'switcher', jack: 'OUT 1' };
  }
  return plan;
}

/** A switcher and pedals side by side, joined through a hub below them: leads go up and round both ends of the row. */
const HUB_BELOW: Plan = (() => {
  const names = ['foot switch', 'delay', 'reverb', 'chorus', 'looper', 'drive'];
  const row = names.map((name, at) => ({
    name,
    xCentimetres: 12 * at,
    yCentimetres: 0,
    widthCentimetres: 9,
    depthCentimetres: 12,
    kind: at === 0 ? ('controller' as const) : ('pedal' as const),
    jacks: [
      { ...planJack(at === 0 ? 'OUT' : 'IN', at === 0 ? 'out' : 'in', 'din5', 'din'), alongCentimetres: 4.5 },
    ],
  }));
  const found = LIBRARY.find(({ name }) => name.startsWith('hub with eight'));
  if (!found) throw new Error('needs the hub with eight outputs');
  const hub = { ...found, name: 'hub', xCentimetres: 0, yCentimetres: 20 };
  let plan = makePlan({ devices: [...row, hub] });
  const join = (device: string, jack: string, to: string): void => {
    const made = connect(plan, { device, jack }, { device: to, jack: 'IN' });
    if (!made.ok) throw new Error(made.problem.place);
    plan = made.plan;
  };
  join('foot switch', 'OUT', 'hub');
  names.slice(1).forEach((name, at) => join('hub', `OUT ${at + 1}`, name));
  return plan;
})();

const BOARDS: readonly (readonly [string, Plan])[] = [
  ['the demo board', demoBoard()],
  ...[1, 2, 3, 4, 5].map((seed) => [`a seeded board of 8 (${seed})`, chained(seed, 8)] as const),
  ['a chain of 24', wiredBoard(24)],
];

function segments(points: readonly Point[]): readonly (readonly [Point, Point])[] {
  return points.slice(1).map((point, at) => [points[at] as Point, point] as const);
}

function crossings(points: readonly Point[], box: Box): number {
  return segments(points).filter(([a, b]) => crossesBox(box, a, b)).length;
}

function isSame(a: Point | undefined, b: Point | undefined): boolean {
  return a?.x === b?.x && a?.y === b?.y;
}

/** Length that two pieces share on exactly one line, centimetres. */
function onOneLine([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
  const across = a.y === b.y && c.y === d.y && a.y === c.y;
  const along = a.x === b.x && c.x === d.x && a.x === c.x;
  if (!across && !along) return 0;
  const [p, q, r, s] = across ? [a.x, b.x, c.x, d.x] : [a.y, b.y, c.y, d.y];
  return Math.max(0, Math.min(Math.max(p, q), Math.max(r, s)) - Math.max(Math.min(p, q), Math.min(r, s)));
}

describe('The drawn board', () => {
  test.each(BOARDS)('has no lead across a name, a jack label or a device: %s', (_, plan) => {
    for (const scale of [4, 8, 14]) {
      const { devices, runs } = drawn(plan, scale);
      for (const { points } of runs) {
        for (const { labels, jacks, box } of devices) {
          const texts = [...labels, ...jacks.flatMap(({ label }) => (label ? [label] : []))];
          for (const text of texts) expect(crossings(points, text.box)).toBe(0);
          const skin = { x: box.x + 0.1, y: box.y + 0.1, width: box.width - 0.2, height: box.height - 0.2 };
          expect(crossings(points, skin)).toBe(0);
        }
      }
    }
  });

  test.each(BOARDS)('lays its leads at right angles, and no two of them on one line: %s', (_, plan) => {
    const { leads } = routeBoard(plan);
    const pieces = leads.map(({ points }) => segments(points).filter(([a, b]) => a.x !== b.x || a.y !== b.y));
    for (const [a, b] of pieces.flat()) expect(a.x === b.x || a.y === b.y).toBe(true);
    pieces.forEach((own, at) => {
      for (const [number, other] of pieces.entries()) {
        // Leads of one output leave it together.
        if (number <= at || isSame(leads[at]?.points[0], leads[number]?.points[0])) continue;
        const together = own.flatMap(([a, b]) => other.map(([c, d]) => onOneLine([a, b], [c, d])));
        expect(together.reduce((sum, one) => sum + one, 0)).toBeLessThan(0.5);
      }
    });
  });

  test('keeps leads apart on a phone too: on the demo board at 3.5 pixels a centimetre none runs within 3 pixels of another', () => {
    const SCALE = 3.5;
    const { leads } = routeBoard(demoBoard(), SCALE);
    const pieces = leads.map(({ points }) => segments(points));
    const beside = (one: readonly [Point, Point], other: readonly [Point, Point], u: 'x' | 'y'): boolean => {
      const v = u === 'x' ? 'y' : 'x';
      const [[a, b], [c, d]] = [one, other];
      if (a[v] !== b[v] || c[v] !== d[v]) return false;
      const together =
        Math.min(Math.max(a[u], b[u]), Math.max(c[u], d[u])) -
        Math.max(Math.min(a[u], b[u]), Math.min(c[u], d[u]));
      return together > 1 && Math.abs(a[v] - c[v]) * SCALE < 3;
    };
    pieces.forEach((own, at) => {
      for (const other of pieces.slice(at + 1))
        for (const a of own)
          for (const b of other) expect(beside(a, b, 'x') || beside(a, b, 'y')).toBe(false);
    });
  });

  test.each(BOARDS)('keeps every label inside its device and clear of the others: %s', (_, plan) => {
    for (const scale of [4, 8, 14]) {
      for (const { labels, jacks, box } of drawn(plan, scale).devices) {
        const texts = [...labels, ...jacks.flatMap(({ label }) => (label ? [label] : []))].map(
          (one) => one.box,
        );
        texts.forEach((one, at) => {
          for (const other of texts.slice(at + 1)) expect(boxesOverlap(one, other)).toBe(false);
          if (labels.length + jacks.length > 1 && texts.length > 1) {
            expect(one.x).toBeGreaterThanOrEqual(box.x);
            expect(one.x + one.width).toBeLessThanOrEqual(box.x + box.width + 0.01);
          }
        });
      }
    }
  });

  test.each(BOARDS)(
    'gives each lead a mark of its own, on its lead and crossed by no other: %s',
    (_, plan) => {
      const { runs } = drawn(plan, 14);
      runs.forEach(({ mark, points, anchor }, at) => {
        const middle = { x: mark.x + mark.width / 2, y: mark.y + mark.height / 2 };
        const away = Math.hypot(anchor.x - middle.x, anchor.y - middle.y);
        // On its own lead, or beside it within the longest of the offsets tried.
        if (away < 1) expect(crossings(points, mark)).toBeGreaterThan(0);
        else expect(away).toBeLessThan(75);
        runs.forEach((other, number) => {
          if (number === at) return;
          expect(boxesOverlap(mark, other.mark)).toBe(false);
          expect([at, number, crossings(other.points, mark)]).toEqual([at, number, 0]);
        });
      });
    },
  );

  test.each([...BOARDS, ['pedals in a row above their hub, on a phone', HUB_BELOW] as const])(
    'holds the whole of each mark, however little room there is at its sides: %s',
    (_, plan) => {
      for (const wide of [320, 700]) {
        const lanes = Math.min(NEAREST_LANES, scaleAhead(plan, wide, 640));
        const routes = routeBoard(plan, lanes);
        const { runs, width, height } = drawBoard(routes, [], [], fitScale(routes, wide, 640));
        for (const { mark } of runs) {
          expect([mark.x >= 0, mark.x + mark.width <= width]).toEqual([true, true]);
          expect([mark.y >= 0, mark.y + mark.height <= height]).toEqual([true, true]);
        }
      }
    },
  );

  test('is true to scale: a device of 12 cm by 14 cm at 10 pixels a centimetre is 120 by 140 pixels', () => {
    const { devices } = drawn(demoBoard(), 10);
    const echo = devices.find(({ name }) => name === 'tape echo');
    expect([echo?.box.width, echo?.box.height]).toEqual([120, 140]);
    const drive = devices.find(({ name }) => name === 'drive');
    // 21 cm and 4 cm from the left.
    expect((drive?.box.x ?? 0) - (echo?.box.x ?? 0)).toBeCloseTo(170, 9);
  });

  test('starts and ends each lead at its two jacks, and hop numbers count from the sender', () => {
    const plan = demoBoard();
    const { devices, runs } = drawn(plan, 10);
    const jack = (device: string, name: string): Point | undefined =>
      devices.find((one) => one.name === device)?.jacks.find((one) => one.name === name)?.point;
    for (const { link, input, points } of runs) {
      const made = plan.links[link];
      expect(points[0]).toEqual(jack(made?.output.device ?? '', made?.output.jack ?? ''));
      expect(points.at(-1)).toEqual(jack(made?.inputs[input]?.device ?? '', made?.inputs[input]?.jack ?? ''));
    }
    expect(runs.map(({ hop }) => hop)).toEqual([1, 2, 2, 2, 2, 3, 1]);
  });

  test('lets jacks be hit one by one only where they stand 24 pixels apart', () => {
    const hub = (scale: number) => drawn(demoBoard(), scale).devices.find(({ name }) => name === 'hub');
    // The nearest jacks of the hub stand 2.5 cm apart.
    expect(hub(9.5)?.touchable).toBe(false);
    expect(hub(9.61)?.touchable).toBe(true);
  });

  test('shows a device without a place in front of the others, and fits the width it is given', () => {
    const placed = demoBoard();
    const plan = {
      ...placed,
      devices: placed.devices.map((one) => (one.name === 'drive' ? { ...one, widthCentimetres: 0 } : one)),
    };
    const routes = routeBoard(plan);
    const drive = drawn(plan, 8).devices.find(({ name }) => name === 'drive');
    const others = drawn(plan, 8).devices.filter(({ name }) => name !== 'drive');
    expect(drive?.placed).toBe(false);
    for (const { box } of others) expect(drive?.box.y).toBeGreaterThan(box.y + box.height);
    expect(drawn(plan, fitScale(routes, 350)).width).toBeLessThanOrEqual(350.01);
    expect(drawn(plan, fitScale(routes, 900, 300)).height).toBeLessThanOrEqual(300.01);
    expect(boardExtent(routeBoard(makePlan({})))).toEqual({ x: 0, y: 0, width: 60, height: 30 });
  });

  test('lays lanes once for the room that a board has: no nearer than 4 pixels, and all of it in that room', () => {
    const plan = demoBoard();
    for (const [width, height] of [
      [350, 600],
      [560, 704],
      [2000, 2000],
    ] as const) {
      const ahead = scaleAhead(plan, width, height);
      const routes = routeBoard(plan, Math.min(NEAREST_LANES, ahead));
      const scale = fitScale(routes, width, height);
      // The step of lanes for the scale ahead is 4 px, or 0.55 cm and so no less; the drawing may not fall far short of it.
      expect(Math.max(4 / ahead, 0.55) * scale).toBeGreaterThanOrEqual(3.8);
      expect(drawBoard(routes, [], [], scale).width).toBeLessThanOrEqual(width + 0.01);
    }
    const bodies = { ...plan, links: [] };
    expect(scaleAhead(bodies, 350, 600)).toBeCloseTo(fitScale(routeBoard(bodies), 350, 600), 9);
  });

  test('draws a board while the page is still laid out and has no room for it', () => {
    const plan = demoBoard();
    const routes = routeBoard(plan);
    for (const [width, height] of [
      [1, 300],
      [350, 0],
    ] as const) {
      const drawing = drawn(plan, fitScale(routes, width, height));
      expect(drawing.scale).toBeGreaterThan(0);
      expect(drawing.runs).toHaveLength(plan.links.length);
    }
  });

  test('draws the demo board as a board that passes every check', () => {
    const check = checkBoard(demoBoard());
    expect(check.passes).toBe(true);
    expect(new Set(check.outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['flows']));
    expect(
      demoBoard()
        .devices.map(wholeDevice)
        .filter(({ channel }) => channel > 0),
    ).toHaveLength(6);
  });
});
