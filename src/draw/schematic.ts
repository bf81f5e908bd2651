/**
 * A circuit diagram of driver, lead and receiver: the whole loop on one sheet, side by side or, where that is too wide, from top to bottom.
 * It draws what it is told; currents come from the core.
 */
import type { Outline } from './face.ts';
import type { Point } from './geometry.ts';
import { boxPath, circlePath, roundedPath } from './geometry.ts';
import type { LineKind } from './stroke.ts';
import { LEAST_ARROW_AMPERES, arrowhead, milliampereWords, weightOf } from './stroke.ts';
import { contactSymbol, diodeSymbol, groundSymbol, resistorSymbol, switchSymbol } from './symbols.ts';
import type { TextLine } from './text.ts';
import { TEXT_SIZES } from './text.ts';

/** The two drivers that a lesson shows: a push-pull stage on 5 V, an open-drain stage on 3.3 V. */
export const SCHEMATIC_DRIVERS = ['driver-5v', 'driver-3v3'] as const;
export type SchematicDriver = (typeof SCHEMATIC_DRIVERS)[number];

type LoopLine = 'source' | 'sink' | 'shield';

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
export interface SchematicWire {
  readonly d: string;
  readonly line: LineKind;
  readonly weight: number;
  readonly arrows: readonly string[];
  /** True where it may pass over another wire that it does not join: paper is left on both sides. */
  readonly bridge: boolean;
}

/** Text with the tone it is printed in. */
export interface SchematicText extends TextLine {
  readonly tone: LineKind | 'ink' | 'faint';
}

export interface SchematicDrawing {
  readonly width: number;
  readonly height: number;
  readonly layout: 'row' | 'stack';
  readonly wires: readonly SchematicWire[];
  readonly outlines: readonly Outline[];
  readonly text: readonly SchematicText[];
  readonly textAlternative: string;
}

/** Narrowest sheet for the side-by-side layout, pixels: driver, receiver and labels between them. */
const LEAST_ROW = 860;

/** Where the lines run across the diagram, and the extents of driver and receiver along it, pixels. */
const LINES = {
  row: { source: 78, sink: 178, shield: 252 },
  stack: { source: 62, sink: 172, shield: 250 },
} as const;
const DRIVER = 262;
const RECEIVER = { row: 348, stack: 268 } as const;
const STACK_LEAD = 120;
const MARGIN = 14;
const NODE_RADIUS = 3.4;

/** Draws the loop. */
export function drawSchematic(input: SchematicInput): SchematicDrawing {
  const row = input.width >= LEAST_ROW;
  const sheet = new Sheet(input, row);
  drawDriver(sheet);
  sheet.bridging = true;
  drawJoins(sheet);
  sheet.bridging = false;
  drawReceiver(sheet);
  return {
    width: input.width,
    height: row ? LINES.row.shield + 58 : sheet.length,
    layout: row ? 'row' : 'stack',
    wires: sheet.wires,
    outlines: sheet.outlines,
    text: sheet.text,
    textAlternative: schematicWords(input),
  };
}

/** Collects what is drawn; `at` turns (along, across) into the page. */
class Sheet {
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
      Math.abs(amperes) >= LEAST_ARROW_AMPERES &&
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

function drawDriver(sheet: Sheet): void {
  const { input, lines, driverEdge: edge } = sheet;
  const { values, state, driver, amperes } = input;
  const start = MARGIN + 44;
  sheet.frame(MARGIN, edge, 'driver');

  sheet.wire('source', amperes?.source ?? null, [start, lines.source], [edge, lines.source]);
  sheet.symbol(resistorSymbol(sheet.at(start + 34, lines.source), sheet.at(start + 94, lines.source)));
  sheet.symbol(contactSymbol(sheet.at(start, lines.source)));
  const supply = sheet.at(start, lines.source);
  sheet.words(values.supply, { x: supply.x, y: supply.y - 13 }, 'ink');
  sheet.beside([values.sourceResistor], [start + 64, lines.source], 'ink', 17);

  const down = state === 'active';
  const pole: readonly [number, number] = [start + 46, lines.sink];
  const low: readonly [number, number] = [start, lines.sink + 24];
  const high: readonly [number, number] = [start, lines.sink - 24];
  const pushPull = driver === 'driver-5v';
  const intoStage = amperes?.sink ?? null;
  sheet.wire('sink', intoStage, [edge, lines.sink], pole);
  sheet.symbol(resistorSymbol(sheet.at(start + 150, lines.sink), sheet.at(start + 90, lines.sink)));
  sheet.beside([values.sinkResistor], [start + 120, lines.sink], 'ink', 17);
  sheet.wire('sink', down ? intoStage : 0, low, [start, lines.shield]);
  sheet.wire('shield', amperes?.shield ?? null, [start, lines.shield], [edge, lines.shield]);
  if (pushPull) sheet.wire('sink', down ? 0 : intoStage, high, [start, lines.source]);
  const rest: readonly [number, number] = [start + 2, lines.sink - 3];
  const tip = down ? low : pushPull ? high : rest;
  sheet.symbol(
    switchSymbol(
      sheet.at(...pole),
      sheet.at(...tip),
      (pushPull ? [low, high] : [low]).map((point) => sheet.at(...point)),
    ),
  );

  const foot = sheet.row ? sheet.at(start, lines.shield + 16) : sheet.at(start + 34, lines.shield + 40);
  if (sheet.row) sheet.wire('spare', null, [start, lines.shield], [start, lines.shield + 16]);
  else
    sheet.wire(
      'spare',
      null,
      [start, lines.shield],
      [start, lines.shield + 40],
      [start + 34, lines.shield + 40],
    );
  sheet.node(start, lines.shield);
  sheet.symbol(groundSymbol(foot));
  for (const line of ['source', 'sink', 'shield'] as const) contact(sheet, line, edge, -1);
}

/** A contact at the edge of the driver (-1) or of the receiver (1), with its name inside. */
function contact(sheet: Sheet, line: LoopLine, along: number, side: 1 | -1): void {
  const names = side === -1 ? sheet.input.contacts?.driver : sheet.input.contacts?.receiver;
  const across = sheet.lines[line];
  sheet.symbol(contactSymbol(sheet.at(along, across)));
  if (names !== undefined)
    sheet.beside([names[line]], [along + side * 28, across], 'faint', sheet.row ? 8 : 11);
}

function drawJoins(sheet: Sheet): void {
  const { input, lines, driverEdge: from, receiverEdge: to } = sheet;
  const { connected, amperes } = input;
  const landing: Readonly<Record<LoopLine, LoopLine>> = connected.crossed
    ? { source: 'sink', sink: 'source', shield: 'shield' }
    : { source: 'source', sink: 'sink', shield: 'shield' };
  const bend = Math.min(60, (to - from) / 2 - 6);
  for (const line of ['shield', 'sink', 'source'] as const) {
    const end = landing[line];
    const sign = line === 'sink' ? -1 : 1;
    const current = amperes === null ? null : sign * amperes[line];
    const middle = connected.crossed ? from + (to - from) * 0.34 : (from + to) / 2;
    if (!connected[line]) {
      sheet.wire(line, 0, [from, lines[line]], [from + 12, lines[line]]);
      sheet.wire(line, 0, [to - 12, lines[end]], [to, lines[end]]);
      sheet.beside([line, 'not joined'], [middle, lines[line]], 'faint');
      continue;
    }
    if (end === line) sheet.wire(line, current, [from, lines[line]], [to, lines[line]]);
    else {
      const turn = sheet.row ? to - bend - 20 : from + 66;
      sheet.wire(
        line,
        current,
        [from, lines[line]],
        [turn, lines[line]],
        [turn + bend * 0.7, lines[end]],
        [to, lines[end]],
      );
    }
    const label = amperes === null ? [line] : [line, milliampereWords(amperes[line])];
    const where = end === line || sheet.row ? middle : from + 34;
    sheet.beside(label, [where, lines[line]], line, sheet.row ? 11 : 12);
  }
}

function drawReceiver(sheet: Sheet): void {
  const { input, lines, receiverEdge: edge, row } = sheet;
  const { amperes, connected, values } = input;
  sheet.frame(edge, sheet.length - MARGIN, 'receiver');
  const led = edge + (row ? 150 : 138);
  const guard = edge + (row ? 248 : 212);
  // Current into the receiver's source contact: its own line's, or the sink's the other way when the lead is crossed.
  const into = amperes === null ? null : connected.crossed ? -amperes.sink : amperes.source;
  const back = amperes === null ? null : connected.crossed ? -amperes.source : amperes.sink;
  sheet.wire('source', into, [edge, lines.source], [led, lines.source]);
  sheet.symbol(resistorSymbol(sheet.at(edge + 48, lines.source), sheet.at(edge + 108, lines.source)));
  sheet.beside([values.receiverResistor], [edge + 78, lines.source], 'ink', 17);
  sheet.wire('sink', back, [led, lines.sink], [edge, lines.sink]);
  const through = (name: 'led' | 'protection') => amperes?.[name] ?? null;
  branch(sheet, led, through('led'), 'LED', false);
  sheet.wire(
    'source',
    amperes === null ? null : -amperes.protection,
    [led, lines.source],
    [guard, lines.source],
  );
  sheet.wire('sink', amperes === null ? null : -amperes.protection, [guard, lines.sink], [led, lines.sink]);
  branch(sheet, guard, through('protection'), 'diode', true);
  sheet.node(led, lines.source);
  sheet.node(led, lines.sink);
  sheet.wire('shield', 0, [edge, lines.shield], [edge + 34, lines.shield]);
  const open = sheet.at(edge + 40, lines.shield);
  if (row) sheet.words('open', { x: open.x + 4, y: open.y + 4 }, 'faint', 'start');
  else sheet.words('open', { x: open.x, y: open.y + 12 }, 'faint');
  for (const line of ['source', 'sink', 'shield'] as const) contact(sheet, line, edge, 1);
}

/** A diode between the two rails; `reverse` points from sink to source. */
function branch(sheet: Sheet, along: number, amperes: number | null, name: string, reverse: boolean): void {
  const { lines, row } = sheet;
  const ends: readonly [readonly [number, number], readonly [number, number]] = reverse
    ? [
        [along, lines.sink],
        [along, lines.source],
      ]
    : [
        [along, lines.source],
        [along, lines.sink],
      ];
  sheet.wire(reverse ? 'sink' : 'source', amperes, ends[0], [along, (lines.source + lines.sink) / 2]);
  sheet.wire(reverse ? 'source' : 'sink', amperes, [along, (lines.source + lines.sink) / 2], ends[1]);
  sheet.symbol(diodeSymbol(sheet.at(...ends[0]), sheet.at(...ends[1]), !reverse));
  const middle = sheet.at(along, (lines.source + lines.sink) / 2);
  const current = amperes === null ? '' : milliampereWords(amperes);
  if (row) {
    sheet.words(name, { x: middle.x + 28, y: middle.y - 4 }, 'ink', 'start');
    sheet.words(current, { x: middle.x + 28, y: middle.y + 12 }, 'ink', 'start');
  } else sheet.words(`${name} ${current}`, { x: middle.x, y: middle.y + 28 }, 'ink');
}

/** The diagram in words. */
export function schematicWords({ state, connected, amperes, values, driver }: SchematicInput): string {
  const stage = driver === 'driver-5v' ? 'push-pull output stage' : 'open-drain output stage';
  const missing = (['source', 'sink', 'shield'] as const).filter((line) => !connected[line]);
  const joined =
    missing.length === 0
      ? 'The lead joins source, sink and shield'
      : `The lead does not join ${missing.join(' and ')}`;
  const currents =
    amperes === null
      ? ''
      : ` ${state === 'idle' ? 'Idle' : 'Active'}: source ${signedWords(amperes.source)}, LED ${signedWords(amperes.led)}, ` +
        `protection diode ${signedWords(amperes.protection)}, sink ${signedWords(amperes.sink)}.`;
  return (
    `Driver: ${values.supply} supply, ${values.sourceResistor} to the source contact; ${stage} and ${values.sinkResistor} on the sink contact; ` +
    `shield at its ground. ${joined}${connected.crossed ? ', with source and sink crossed' : ''}. ` +
    `Receiver: ${values.receiverResistor}, then the LED with a protection diode the other way round; shield open.${currents}`
  );
}

function signedWords(amperes: number): string {
  const words = milliampereWords(amperes);
  return amperes < 0 && words !== '0 mA' ? `\u2212${words}` : words;
}
