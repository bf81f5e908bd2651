/**
 * The sheet a circuit diagram is drawn on: collects wires, symbols and text, side by side or from top to bottom.
 */
import { CURRENT_TO_SPEAK_OF } from '../core/wiring/index.ts';
import type { Outline } from './face.ts';
import type { Point } from './geometry.ts';
import { boxPath, circlePath, roundedPath } from './geometry.ts';
import type { LineKind } from './stroke.ts';
import { arrowhead, weightOf } from './stroke.ts';
import type { TextLine } from './text.ts';
import { TEXT_SIZES } from './text.ts';

/** The two drivers that a lesson shows: a push-pull stage on 5 V, an open-drain stage on 3.3 V. */
export const SCHEMATIC_DRIVERS = ['driver-5v', 'driver-3v3'] as const;

/** The driver of one diagram. */
export type SchematicDriver = (typeof SCHEMATIC_DRIVERS)[number];

/** A line of the current loop: out, back, and the shield. */
export type LoopLine = 'source' | 'sink' | 'shield';

/** What to draw. */
export interface SchematicInput {
  readonly width: number;
  readonly driver: SchematicDriver;
  /** 'active' sends a 0: the output stage pulls down. */
  readonly state: 'idle' | 'active';
  /** Which lines the lead joins; `crossed` joins the driver's source to the receiver's sink and the reverse. */
  readonly connected: Readonly<Record<LoopLine, boolean>> & { readonly crossed: boolean };
  /**
   * Amperes. source and shield: from driver to receiver; sink: from receiver to driver; led and protection: from anode to cathode.
   * source and sink are those of the driver's contacts. Null is 'not solved': no number, no arrow.
   */
  readonly amperes: Readonly<Record<LoopLine | 'led' | 'protection', number>> | null;
  /** Printed beside the parts, from the core: '5 V', '220 Ω'. */
  readonly values: {
    readonly supply: string;
    readonly sourceResistor: string;
    readonly sinkResistor: string;
    readonly receiverResistor: string;
  };
  /** Printed beside the contacts: 'pin 4', 'ring'. */
  readonly contacts?: {
    readonly driver: Readonly<Record<LoopLine, string>>;
    readonly receiver: Readonly<Record<LoopLine, string>>;
  };
}

/** A wire with its current. */
interface SchematicWire {
  readonly d: string;
  readonly line: LineKind;
  readonly weight: number;
  readonly arrows: readonly string[];
  /** True where it may pass over another wire that it does not join: paper is left on both sides. */
  readonly bridge: boolean;
}

/** Text with the tone it is printed in. */
interface SchematicText extends TextLine {
  readonly tone: LineKind | 'ink' | 'faint';
}

/** A circuit diagram, in pixels, with what it shows in words. */
export interface SchematicDrawing {
  readonly width: number;
  readonly height: number;
  readonly layout: 'row' | 'stack';
  readonly wires: readonly SchematicWire[];
  readonly outlines: readonly Outline[];
  readonly text: readonly SchematicText[];
  readonly textAlternative: string;
}

/** Where the lines run across the diagram, and the extents of driver and receiver along it, pixels. */
export const LINES = {
  row: { source: 78, sink: 178, shield: 252 },
  stack: { source: 62, sink: 172, shield: 250 },
} as const;
const DRIVER = 262;
const RECEIVER = { row: 348, stack: 268 } as const;
const STACK_LEAD = 120;

/** Room between the diagram and the edge of the sheet, pixels. */
export const MARGIN = 14;
const NODE_RADIUS = 3.4;

/** Collects what is drawn; `at` turns (along, across) into the page. */
export class Sheet {
  readonly wires: SchematicWire[] = [];
  readonly outlines: Outline[] = [];
  readonly text: SchematicText[] = [];
  readonly input: SchematicInput;
  readonly row: boolean;
  /** Whole length along the diagram. */
  readonly length: number;
  readonly lines: Readonly<Record<LoopLine, number>>;
  /** Where the driver ends and the receiver begins. */
  readonly driverEdge: number;
  readonly receiverEdge: number;
  /** Set while the lead's conductors are laid: only they pass over one another. */
  bridging = false;
  private readonly shift: number;

  constructor(input: SchematicInput, row: boolean) {
    this.input = input;
    this.row = row;
    this.lines = row ? LINES.row : LINES.stack;
    this.length = row ? input.width : MARGIN + DRIVER + STACK_LEAD + RECEIVER.stack + MARGIN;
    this.driverEdge = MARGIN + DRIVER;
    this.receiverEdge = this.length - MARGIN - (row ? RECEIVER.row : RECEIVER.stack);
    this.shift = row ? 0 : Math.max(0, (input.width - 342) / 2);
  }

  at(along: number, across: number): Point {
    return this.row ? { x: along, y: across } : { x: across + this.shift, y: along };
  }

  /** A wire through points given as [along, across]; `amperes` counts in their order. */
  wire(line: LineKind, amperes: number | null, ...points: readonly (readonly [number, number])[]): void {
    const path = points.map(([along, across]) => this.at(along, across));
    const weight = weightOf(amperes);
    const arrows: string[] = [];
    const [a, b] = longestPart(path);
    if (
      amperes !== null &&
      Math.abs(amperes) >= CURRENT_TO_SPEAK_OF &&
      Math.hypot(b.x - a.x, b.y - a.y) > 24
    ) {
      const heading = Math.atan2(b.y - a.y, b.x - a.x) + (amperes > 0 ? 0 : Math.PI);
      arrows.push(arrowhead({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, heading, weight));
    }
    this.wires.push({ d: roundedPath(path, 6), line, weight, arrows, bridge: this.bridging });
  }

  /** Where wires join. */
  node(along: number, across: number): void {
    this.outlines.push({ d: circlePath(this.at(along, across), NODE_RADIUS), kind: 'fill' });
  }

  symbol(outlines: readonly Outline[]): void {
    this.outlines.push(...outlines);
  }

  /** Text over a wire that runs along the diagram: above it in a row, to its right in a stack. */
  beside(
    lines: readonly string[],
    [along, across]: readonly [number, number],
    tone: SchematicText['tone'],
    room = 10,
  ): void {
    const at = this.at(along, across);
    const size = TEXT_SIZES.label;
    if (this.row) {
      this.text.push({ text: lines.join(' '), x: at.x, y: at.y - room, anchor: 'middle', size, tone });
    } else {
      const first = at.y - (lines.length - 1) * 7.5 + 0.35 * size;
      lines.forEach((text, index) =>
        this.text.push({ text, x: at.x + room, y: first + index * 15, anchor: 'start', size, tone }),
      );
    }
  }

  words(text: string, at: Point, tone: SchematicText['tone'], anchor: TextLine['anchor'] = 'middle'): void {
    this.text.push({ text, ...at, anchor, size: TEXT_SIZES.label, tone });
  }

  frame(from: number, to: number, name: 'driver' | 'receiver'): void {
    const a = this.at(from, this.row ? 30 : 14);
    const b = this.at(to, this.lines.shield + (this.row ? 48 : 78));
    this.outlines.push({
      d: boxPath({ x: a.x, y: a.y, width: b.x - a.x, height: b.y - a.y }, 3),
      kind: 'hairline',
    });
    this.text.push({
      text: name,
      x: this.row ? a.x : b.x - 8,
      // In a stack the names stand in the outer corners, clear of the contacts' own.
      y: this.row ? a.y - 8 : name === 'driver' ? a.y + 20 : b.y - 12,
      anchor: this.row ? 'start' : 'end',
      size: TEXT_SIZES.name,
      tone: 'faint',
    });
  }
}

function longestPart(path: readonly Point[]): readonly [Point, Point] {
  let best: readonly [Point, Point] = [path[0] ?? { x: 0, y: 0 }, path[0] ?? { x: 0, y: 0 }];
  path.slice(1).forEach((b, index) => {
    const a = path[index];
    if (
      a !== undefined &&
      Math.hypot(b.x - a.x, b.y - a.y) > Math.hypot(best[1].x - best[0].x, best[1].y - best[0].y)
    )
      best = [a, b];
  });
  return best;
}
