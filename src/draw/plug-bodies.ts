/**
 * Both plugs of a lead from the side: what goes into the jack, the body, and the way the cable leaves it.
 * Diameters of what goes in are true to one another: DIN shell 13.2 mm outside, phone plugs by name, 6.35 mm segments as an open
 * drawing profile has them (secondary, c). Other lengths and every body are drawn to look right (from memory, M): not to scale.
 */
import type { Connector, Form } from '../core/wiring/index.ts';
import type { PlugBody } from '../core/making/index.ts';
import { diameterOf, familyOf, words } from '../core/wiring/index.ts';
import type { Outline } from './face.ts';
import { linePath, polygonPath } from './geometry.ts';
import type { Place } from './phone-shape.ts';
import { NOSE, rect, shankOf, spansOf } from './phone-shape.ts';

/** One end of the lead. */
interface PlugEnd {
  readonly connector: Connector;
  readonly form: Form;
  readonly body: PlugBody;
}

/** Both plugs, in pixels from the left top corner: the first looks left, the second right. */
interface PlugBodiesDrawing {
  readonly width: number;
  readonly height: number;
  readonly outlines: readonly Outline[];
  readonly textAlternative: string;
}

/** Pixels a millimetre. */
const SCALE = 4;

/** Room at the rim for strokes, and between the two cables, millimetres. */
const RIM = 1;
const APART = 10;

/** What goes into a jack, and what is behind it, millimetres; half means half a diameter. */
interface Sizes {
  readonly goesIn: number;
  readonly goesInHalf: number;
  readonly body: number;
  readonly bodyHalf: number;
  readonly cableHalf: number;
}

/** Length of a DIN plug's shell before its body, and the diameter of that shell. */
const DIN_SHELL = { length: 9, half: 6.6 };

function sizesOf(connector: Connector): Sizes {
  if (familyOf(connector) === 'din')
    return { goesIn: DIN_SHELL.length, goesInHalf: DIN_SHELL.half, body: 22, bodyHalf: 7.6, cableHalf: 2.5 };
  const half = (diameterOf(connector) ?? 0) / 2;
  return {
    goesIn: shankOf(connector),
    goesInHalf: half,
    body: 13 + 3 * half,
    bodyHalf: 2.2 + 1.2 * half,
    cableHalf: half > 2 ? 2.5 : 1.6,
  };
}

/** Length of strain relief and of the cable that shows behind it, and depth of bodies whose cable leaves to the side. */
const BOOT = 7;
const CABLE = 6;
const TURNED = { 'right-angle': 2.2, flat: 1.25 } as const;

/** Draw both plugs of a lead from the side. */
export function drawPlugBodies(from: PlugEnd, to: PlugEnd): PlugBodiesDrawing {
  const [left, right] = [reachOf(from), reachOf(to)];
  const above = Math.max(left.above, right.above) + RIM;
  const width = left.along + right.along + APART + 2 * RIM;
  const at =
    (side: 1 | -1): Place =>
    (along, across) => ({
      x: SCALE * (side === 1 ? RIM + along : width - RIM - along),
      y: SCALE * (above + across),
    });
  return {
    width: SCALE * width,
    height: SCALE * (above + Math.max(left.below, right.below) + RIM),
    outlines: [...endOutlines(from, at(1)), ...endOutlines(to, at(-1))],
    textAlternative: `From the side. Output end: ${endWords(from)}. Input end: ${endWords(to)}. Lengths and bodies not to scale.`,
  };
}

/** How a plug is shaped, in words: 'a 3.5 mm TRS plug with a flat body, the cable leaving to the side'. */
function endWords({ connector, form, body }: PlugEnd): string {
  const way = body === 'straight' ? 'in line with it' : 'to the side';
  return `a ${words(connector)} ${form} with a ${body} body, the cable leaving ${way}`;
}

/** Room that one end takes, millimetres: along its axis, and to both sides of it. */
function reachOf(end: PlugEnd): { readonly along: number; readonly above: number; readonly below: number } {
  const { goesIn, goesInHalf, body, bodyHalf, cableHalf } = sizesOf(end.connector);
  const start = end.form === 'jack' ? 0 : goesIn;
  const half = Math.max(goesInHalf, bodyHalf);
  if (end.body === 'straight') return { along: start + body + BOOT + CABLE, above: half, below: half };
  const depth = TURNED[end.body] * 2 * cableHalf;
  return { along: start + depth, above: half, below: sideOf(end) + CABLE };
}

/** How far the body of a plug reaches to the side where its cable leaves, strain relief included. */
function sideOf({ connector, body }: PlugEnd): number {
  const { bodyHalf } = sizesOf(connector);
  return body === 'flat' ? bodyHalf + BOOT : bodyHalf + BOOT + 2;
}

function endOutlines(end: PlugEnd, place: Place): readonly Outline[] {
  const { connector, form, body } = end;
  const { goesIn, bodyHalf, cableHalf } = sizesOf(connector);
  const start = form === 'jack' ? 0 : goesIn;
  const before = form === 'jack' ? mouth(end, place) : plugOutlines(connector, place);
  return [
    ...(body === 'straight'
      ? straightBody(start, sizesOf(connector), place)
      : turnedBody(start, end, bodyHalf, cableHalf, place)),
    ...before,
  ];
}

/** The part that goes into a jack. */
function plugOutlines(connector: Connector, place: Place): readonly Outline[] {
  if (familyOf(connector) === 'din') {
    const { length, half } = DIN_SHELL;
    return [
      { d: rect(place, 0, length, half), kind: 'outline' },
      // The dent of the key, at the bottom.
      {
        d: linePath([place(0, half - 1.2), place(length - 2, half - 1.2), place(length - 2, half)]),
        kind: 'hairline',
      },
    ];
  }
  const radius = (diameterOf(connector) ?? 0) / 2;
  const spans = spansOf(connector);
  return spans.flatMap(({ contact, from, to }, at): Outline[] => {
    const length = to - from;
    const shape =
      contact === 'tip'
        ? polygonPath([
            ...NOSE.map(([l, r]) => place(l * length, r * radius)),
            ...NOSE.toReversed().map(([l, r]) => place(l * length, -r * radius)),
          ])
        : rect(place, from, to, radius);
    const gap = spans[at - 1];
    return [
      ...(gap ? [{ d: rect(place, gap.to, from, 0.9 * radius), kind: 'fill' } as const] : []),
      { d: shape, kind: 'outline' },
    ];
  });
}

/** The hole of a jack at the end of a lead, seen through its body. */
function mouth({ connector }: PlugEnd, place: Place): readonly Outline[] {
  const { goesIn, goesInHalf } = sizesOf(connector);
  const depth = Math.min(goesIn, 12);
  return [
    {
      d: linePath([
        place(0, -goesInHalf),
        place(depth, -goesInHalf),
        place(depth, goesInHalf),
        place(0, goesInHalf),
      ]),
      kind: 'ghost',
    },
  ];
}

function straightBody(start: number, { body, bodyHalf, cableHalf }: Sizes, place: Place): readonly Outline[] {
  const end = start + body;
  const shape = [
    place(start, -bodyHalf),
    place(end, -bodyHalf),
    place(end, bodyHalf),
    place(start, bodyHalf),
  ];
  const [wide, narrow] = [0.6 * bodyHalf, cableHalf + 0.5];
  return [
    { d: polygonPath(shape), kind: 'hatch' },
    { d: polygonPath(shape), kind: 'outline' },
    {
      d: polygonPath([
        place(end, -wide),
        place(end + BOOT, -narrow),
        place(end + BOOT, narrow),
        place(end, wide),
      ]),
      kind: 'outline',
    },
    ...cable((along, across) => place(end + BOOT + along, across), cableHalf),
  ];
}

/** A body whose cable leaves to the side: thick with a strain relief, or flat. */
function turnedBody(
  start: number,
  end: PlugEnd,
  bodyHalf: number,
  cableHalf: number,
  place: Place,
): readonly Outline[] {
  const flat = end.body === 'flat';
  const depth = TURNED[flat ? 'flat' : 'right-angle'] * 2 * cableHalf;
  const middle = start + depth / 2;
  const side = sideOf(end);
  const below = flat ? side : bodyHalf;
  const shape = [
    place(start, -bodyHalf),
    place(start + depth, -bodyHalf),
    place(start + depth, below),
    place(start, below),
  ];
  const turned: Place = (along, across) => place(middle + across, side + along);
  const [wide, narrow] = [0.6 * (depth / 2) + 1, cableHalf + 0.5];
  return [
    { d: polygonPath(shape), kind: 'hatch' },
    { d: polygonPath(shape), kind: 'outline' },
    ...(flat
      ? []
      : [
          {
            d: polygonPath([
              place(middle - wide, bodyHalf),
              place(middle - narrow, side),
              place(middle + narrow, side),
              place(middle + wide, bodyHalf),
            ]),
            kind: 'outline',
          } as const,
        ]),
    ...cable(turned, cableHalf),
  ];
}

/** A piece of cable with a break line at its end. */
function cable(place: Place, half: number): readonly Outline[] {
  const broken = [-half, -half / 3, half / 3, half].map((across, at) =>
    place(CABLE - (at % 2 === 0 ? 0 : 0.9), across),
  );
  return [
    { d: linePath([place(0, -half), place(CABLE, -half)]), kind: 'outline' },
    { d: linePath([place(0, half), place(CABLE - 0.9, half)]), kind: 'outline' },
    { d: linePath(broken), kind: 'hairline' },
  ];
}
