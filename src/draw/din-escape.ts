/**
 * Ways out of a DIN face for conductors: past the pins, through the shell, to one side.
 * Every route is laid by hand in millimetres (x right, y up, key down) on tracks at least 1 mm apart, by the place of a pin
 * and not by its number: places a to e run over the top from left to right, f and g are beside the key.
 */
import { dinAngle, pinsOf } from '../core/wiring/index.ts';
import type { Contact, DinView } from '../core/wiring/index.ts';
import { DIN_MILLIMETRES, dinPin } from './din.ts';
import type { Escape, Route } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { towards } from './geometry.ts';

type Place = 'a' | 'b' | 'c' | 'd' | 'e' | 'f' | 'g' | 'shell';
type Way = readonly (readonly [number, number])[];
type Ways = Readonly<Partial<Record<Place, Way>>>;

type Costs = Partial<Record<Place, number>>;

interface Plan {
  readonly ways: Ways;
  /** What each way costs to look at, in crossings: a long way round is about one crossing. */
  readonly costs: Costs;
}

/** Edge of the block, millimetres from the middle, where conductors leave it. */
export const DIN_EDGE = 8.6;

/** Extent of all tracks, millimetres from the middle. */
export const DIN_REACH = { over: 9.6, under: 7.5, aside: 7.9 } as const;

const X = DIN_EDGE;
const RIM = DIN_MILLIMETRES.shellRadius;

/** A way from the shell starts on its rim. */
const shellAt = (x: number, side: 1 | -1): [number, number] => [x, side * Math.sqrt(RIM ** 2 - x ** 2)];
const shellBeside = (y: number): [number, number] => [Math.sqrt(RIM ** 2 - y ** 2), y];

/** All ways for each pin to leave to the right. Over the top: outermost first; through the middle: nearest first. */
const RIGHT_OVER: Ways = {
  a: [
    [-7.9, 0],
    [-7.9, 9.6],
    [X, 9.6],
  ],
  b: [
    [-2.47, 8.5],
    [X, 8.5],
  ],
  c: [
    [0, 7.4],
    [X, 7.4],
  ],
};
const RIGHT_THROUGH: Ways = {
  a: [
    [0.1, -3.6],
    [X, -3.6],
  ],
  b: [
    [-1.1, 1.1],
    [-1.1, -0.1],
    [1.3, -2.5],
    [X, -2.5],
  ],
  c: [
    [0, 0.3],
    [1.7, -1.4],
    [X, -1.4],
  ],
};
/** The one gap beside the last pin that a 7-pin face leaves to a conductor from the far side. */
const RIGHT_GAP: Ways = {
  a: [
    [0.4, 0],
    [1.635, -1.235],
    [X, -1.235],
  ],
  b: [
    [1.235, -1.235],
    [X, -1.235],
  ],
  c: [
    [0, 0.45],
    [1.685, -1.235],
    [X, -1.235],
  ],
};
const RIGHT_ALWAYS: Ways = {
  d: [[X, 2.47]],
  e: [[X, 0]],
  f: [
    [-2.47, -7.4],
    [X, -7.4],
  ],
  g: [[X, -2.47]],
};
const RIGHT_SHELL: readonly Way[] = [
  [shellBeside(-4.75), [X, -4.75]],
  [shellBeside(4.75), [X, 4.75]],
];

/** Over the top: a goes half round the face. Through the middle: a little busy. */
const OVER_COSTS: Costs = { a: 0.9, b: 0.1 };
const THROUGH_COSTS: Costs = { a: 0.1, b: 0.15, c: 0.3 };
const SECOND_SIDE = 0.3;
const ROUND_OUTSIDE = 0.5;

function rightPlans(sevenPins: boolean): Plan[] {
  const through = sevenPins ? RIGHT_GAP : RIGHT_THROUGH;
  const insides: readonly (readonly Place[])[] = sevenPins
    ? [[], ['a'], ['b'], ['c']]
    : [[], ['a'], ['b'], ['c'], ['a', 'b'], ['b', 'c'], ['a', 'c'], ['a', 'b', 'c']];
  return insides.flatMap((inside) =>
    RIGHT_SHELL.map((shell, index): Plan => ({
      ways: { ...RIGHT_OVER, ...RIGHT_ALWAYS, ...only(through, inside), shell },
      costs: { ...OVER_COSTS, ...only(THROUGH_COSTS, inside), shell: index * SECOND_SIDE },
    })),
  );
}

function only<T>(all: Partial<Record<Place, T>>, places: readonly Place[]): Partial<Record<Place, T>> {
  return Object.fromEntries(places.map((place) => [place, all[place]]));
}

/** Upward, the side of the pins: five straight ways; f and g go between b, c and d or round the outside. */
const UP_ALWAYS: Ways = {
  a: [
    [-4.6, 1.1],
    [-4.6, X],
  ],
  b: [[-2.47, X]],
  c: [[0, X]],
  d: [[2.47, X]],
  e: [
    [4.6, 1.1],
    [4.6, X],
  ],
};
const UP_F: readonly Way[] = [
  [
    [-1.235, -1.235],
    [-1.235, X],
  ],
  [
    [-7.5, -2.47],
    [-7.5, X],
  ],
];

function upPlans(sevenPins: boolean): Plan[] {
  const outsides = sevenPins ? [0, 1] : [0];
  return [1, -1].flatMap((hand, second) =>
    outsides.flatMap((left) =>
      outsides.map((right): Plan => ({
        ways: {
          ...UP_ALWAYS,
          f: UP_F[left] ?? [],
          g: flipped(UP_F[right] ?? []),
          shell: [shellAt(hand * 5.75, 1), [hand * 5.75, X]],
        },
        costs: { f: left * ROUND_OUTSIDE, g: right * ROUND_OUTSIDE, shell: second * SECOND_SIDE },
      })),
    ),
  );
}

/** Downward, the side of the key: c passes the key on either hand. */
function downPlans(sevenPins: boolean): Plan[] {
  const b: Way = sevenPins
    ? [
        [-2.1, 1.2],
        [-2.1, -0.87],
        [-6.8, -2.82],
        [-6.8, -X],
      ]
    : [
        [-2.2, 1.2],
        [-2.2, -X],
      ];
  const a: Way = sevenPins
    ? [
        [-7.9, 0],
        [-7.9, -X],
      ]
    : [
        [-4.2, -0.7],
        [-4.2, -X],
      ];
  const shellX = sevenPins ? 4.65 : 5.4;
  const corner: Ways = sevenPins ? { f: [[-2.47, -X]], g: [[2.47, -X]] } : {};
  return [1, -1].flatMap((shellHand, second) =>
    [1, -1].map((hand): Plan => ({
      ways: {
        ...corner,
        a,
        b,
        c: [
          [0, -3],
          [hand * 1.15, -4.15],
          [hand * 1.15, -X],
        ],
        d: flipped(b),
        e: flipped(a),
        shell: [shellAt(shellHand * shellX, -1), [shellHand * shellX, -X]],
      },
      costs: { c: hand === 1 ? 0 : 0.05, shell: second * SECOND_SIDE },
    })),
  );
}

function flipped(way: Way): Way {
  return way.map(([x, y]) => [-x, y] as const);
}

const PLACE_AT: Readonly<Record<number, Place>> = {
  180: 'a',
  135: 'b',
  90: 'c',
  45: 'd',
  0: 'e',
  225: 'f',
  315: 'g',
};

interface Plans {
  readonly five: readonly Plan[];
  readonly seven: readonly Plan[];
}

/** Laid once: they do not depend on where a face stands. */
const SIDEWAYS: Plans = { five: rightPlans(false), seven: rightPlans(true) };
const UPWARD: Plans = { five: upPlans(false), seven: upPlans(true) };
const DOWNWARD: Plans = { five: downPlans(false), seven: downPlans(true) };

/** All escapes of a face with its key down towards one side, in pixels. */
export function dinEscapes(input: DinView, exit: Exit, centre: Point, scale: number): readonly Escape[] {
  const mirror = exit === 'left' ? -1 : 1;
  const plans = exit === 'up' ? UPWARD : exit === 'down' ? DOWNWARD : SIDEWAYS;
  const pixels = ([x, y]: readonly [number, number]): Point => ({
    x: centre.x + mirror * x * scale,
    y: centre.y - y * scale,
  });
  const pins = pinsOf(input.connector).map((pin) => {
    const middle = dinPin(input, pin);
    const from = { x: centre.x + middle.x * scale, y: centre.y - middle.y * scale };
    return { pin, from, place: placeOf(dinAngle(input, pin), mirror === -1) };
  });
  // Plans share most of their ways.
  const known = new Map<Way, Route>();
  const routeOf = (way: Way, from?: Point): Route => {
    let route = known.get(way);
    if (route === undefined) {
      const rest = way.map(pixels);
      const start = from && towards(from, rest[0] ?? from, DIN_MILLIMETRES.pinRadius * scale);
      route = start === undefined ? rest : [start, ...rest];
      known.set(way, route);
    }
    return route;
  };
  return (input.connector === 'din7' ? plans.seven : plans.five).map(({ ways, costs }) => {
    const routes: Partial<Record<Contact, Route>> = { shell: routeOf(ways.shell ?? []) };
    const priced: Partial<Record<Contact, number>> = { shell: costs.shell ?? 0 };
    for (const { pin, from, place } of pins) {
      routes[pin] = routeOf(ways[place] ?? [], from);
      priced[pin] = costs[place] ?? 0;
    }
    return { routes, costs: priced };
  });
}

function placeOf(angle: number, mirrored: boolean): Place {
  const place = PLACE_AT[mirrored ? (540 - angle) % 360 : angle];
  if (place === undefined)
    throw new RangeError(`DIN pin: angle must be a multiple of 45 but not 270, got ${angle}`);
  return place;
}
