/** A stripped core in the solder cup of a DIN pin, from the side and to scale, with the next pin beside it. */
import { CUP_METRES, PIN_GAP_METRES } from '../core/making/index.ts';
import { DIN_MILLIMETRES } from './din.ts';
import type { Outline } from './face.ts';
import { boxPath } from './geometry.ts';

/** Pixels a millimetre. */
const SCALE = 28;
const WIDTH = 300;
/** Pixels: the plastic that the pins stand in, and where it begins; how much of the insulation is seen. */
const PLASTIC = { top: 250, height: 40 };
/** Thickness of a bare core and of its insulation, millimetres (for drawing only). */
const CORE_MM = 0.55;
const INSULATION_MM = 1.1;

/** What to draw: metres of core that are bare. */
interface BareEndInput {
  readonly bareMetres: number;
}

/** The drawing, in pixels from the left top corner. `reach` is how far the bare metal above the cup can bend, if there is any. */
interface BareEndDrawing {
  readonly width: number;
  readonly height: number;
  readonly outlines: readonly Outline[];
  readonly bare: string;
  readonly insulation: string;
  readonly reach: string | undefined;
  readonly labels: readonly { readonly text: string; readonly x: number; readonly y: number }[];
}

/** Draws the bare end. It stands on the bottom of the cup, or as deep as its insulation lets it. */
export function drawBareEnd({ bareMetres }: BareEndInput): BareEndDrawing {
  const px = (metres: number): number => metres * 1e3 * SCALE;
  const pin = 2 * DIN_MILLIMETRES.pinRadius * SCALE;
  const apart = px(PIN_GAP_METRES) + pin;
  const left = (WIDTH - apart) / 2;
  const rim = PLASTIC.top - px(CUP_METRES);
  const cup = (x: number): readonly Outline[] => [
    { d: boxPath({ x: x - pin / 2, y: rim, width: pin, height: px(CUP_METRES) }), kind: 'outline' },
  ];
  // Insulation does not go into the cup, so a short end hangs at its rim.
  const top = Math.min(rim, PLASTIC.top - px(bareMetres));
  const foot = top + px(bareMetres);
  const stick = (y: number, height: number, thick: number): string =>
    boxPath({ x: left - (thick * SCALE) / 2, y, width: thick * SCALE, height });
  const outside = Math.max(0, rim - top);
  return {
    width: WIDTH,
    height: PLASTIC.top + PLASTIC.height,
    outlines: [
      ...cup(left),
      ...cup(left + apart),
      { d: boxPath({ x: 8, y: PLASTIC.top, width: WIDTH - 16, height: PLASTIC.height }), kind: 'hatch' },
      { d: boxPath({ x: 8, y: PLASTIC.top, width: WIDTH - 16, height: PLASTIC.height }), kind: 'outline' },
    ],
    bare: stick(top, foot - top, CORE_MM),
    insulation: stick(0, top, INSULATION_MM),
    reach:
      outside < 1
        ? undefined
        : `M${left + pin / 2} ${rim - outside}A${outside} ${outside} 0 0 1 ${left + pin / 2 + outside} ${rim}`,
    labels: [{ text: 'next pin', x: left + apart + pin / 2 + 8, y: rim + 16 }],
  };
}
