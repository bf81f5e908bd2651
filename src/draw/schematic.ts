/**
 * A circuit diagram of driver, lead and receiver: the whole loop on one sheet, side by side or, where that is too wide, from top to bottom.
 * It draws what it is told; currents come from the core.
 */
import { sayAmperes } from '../core/verdict/index.ts';
import type { LoopLine, SchematicDrawing, SchematicInput } from './schematic-sheet.ts';
import { LINES, MARGIN, Sheet } from './schematic-sheet.ts';
import { contactSymbol, diodeSymbol, groundSymbol, resistorSymbol, switchSymbol } from './symbols.ts';

export { SCHEMATIC_DRIVERS } from './schematic-sheet.ts';
export type { SchematicDrawing, SchematicDriver, SchematicInput } from './schematic-sheet.ts';

/** Narrowest sheet for the side-by-side layout, pixels: driver, receiver and labels between them. */
const LEAST_ROW = 860;

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
    const label = amperes === null ? [line] : [line, sayAmperes(Math.abs(amperes[line]))];
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
  const current = amperes === null ? '' : sayAmperes(Math.abs(amperes));
  if (row) {
    sheet.words(name, { x: middle.x + 28, y: middle.y - 4 }, 'ink', 'start');
    sheet.words(current, { x: middle.x + 28, y: middle.y + 12 }, 'ink', 'start');
  } else sheet.words(`${name} ${current}`, { x: middle.x, y: middle.y + 28 }, 'ink');
}

/** The diagram in words. */
function schematicWords({ state, connected, amperes, values, driver }: SchematicInput): string {
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
  const words = sayAmperes(Math.abs(amperes));
  return amperes < 0 && words !== '0 mA' ? `\u2212${words}` : words;
}
