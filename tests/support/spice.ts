/**
 * The outside judge: a SPICE engine that runs in Node (package `eecircuit-engine`, general-purpose, MIT).
 *
 * The engine is one machine that remembers. After a failed run it may hand back the numbers of an earlier circuit, and after
 * a fatal error it never answers. So every run is proved fresh: a stamp with a name of its own is added to the deck and must
 * come back, the names of all variables must be those of this deck and no others, and the error text must be clean.
 */
import { Simulation } from 'eecircuit-engine';
import { readDeck } from './deck-text.ts';
import type { DeckPart } from './deck-text.ts';

/** Tight enough for 0.1 % + 1 nA and 0.1 mV; tighter than this the engine's own iteration breaks down. gmin stays at 1e-12 S. */
const OPERATING_POINT_OPTIONS = '.options reltol=1e-6 abstol=1e-15 vntol=1e-9 gmin=1e-12';

/** The engine's plateaus are off by 0.1 % at its defaults; with this and a maximum step they hold. */
const TRANSIENT_OPTIONS = '.options reltol=1e-5 gmin=1e-12';

/**
 * Words in the engine's messages after which its numbers cannot be trusted. 'transient op' is its last resort for an operating
 * point, a settling run without the accuracy asked for.
 */
const FAILURES = [
  'could not',
  'abort',
  'no writable',
  'fatal',
  'not parsed',
  'not started',
  'interrupted',
  'transient op',
  'error',
] as const;

/** How often to look for a fatal message, milliseconds: the engine stops answering after one. */
const WATCH_MILLISECONDS = 20;

/** Voltages and currents of a circuit at rest; all names in lower case, as the engine gives them. */
export interface EnginePoint {
  /** Volts of every node against node 0. */
  readonly volts: ReadonlyMap<string, number>;
  /** Amperes of every source, resistor and diode, positive from its first node through the part to its second. */
  readonly amperes: ReadonlyMap<string, number>;
}

/** Voltages and currents over time; every list is as long as `seconds`. Names in lower case. */
export interface EngineTrace {
  readonly seconds: readonly number[];
  readonly volts: ReadonlyMap<string, readonly number[]>;
  readonly amperes: ReadonlyMap<string, readonly number[]>;
}

let engine: Simulation | undefined;
let queue: Promise<unknown> = Promise.resolve();
let runs = 0;

/**
 * Find the operating point of a deck that holds `.op`.
 * Rejects when the deck cannot be read, when the engine complains, or when what comes back is not of this deck.
 */
export async function runOperatingPoint(deck: string): Promise<EnginePoint> {
  const columns = await inTurn(() => runDeck(deck, 'op', OPERATING_POINT_OPTIONS));
  const first = (values: readonly number[]): number => {
    if (values.length !== 1)
      throw new Error(`SPICE engine: an operating point has one value, got ${values.length}`);
    return values[0] ?? NaN;
  };
  const each = (from: ReadonlyMap<string, readonly number[]>): Map<string, number> =>
    new Map([...from].map(([name, values]) => [name, first(values)]));
  return { volts: each(columns.volts), amperes: each(columns.amperes) };
}

/**
 * Follow a deck that holds `.tran step stop start maximum`; the maximum step, seconds, must be given, since the engine's own
 * choice of step is too long for a reference. Rejects like `runOperatingPoint`.
 */
export async function runTransient(deck: string): Promise<EngineTrace> {
  return inTurn(() => runDeck(deck, 'tran', TRANSIENT_OPTIONS));
}

/** One run at a time: the engine holds one circuit. */
function inTurn<Result>(job: () => Promise<Result>): Promise<Result> {
  const mine = queue.then(job, job);
  queue = mine.catch(() => undefined);
  return mine;
}

async function runDeck(text: string, analysis: 'op' | 'tran', options: string): Promise<EngineTrace> {
  const deck = readDeck(text);
  if (deck.analysis !== analysis) throw new Error(`SPICE deck: needs .${analysis}, got .${deck.analysis}`);
  const stamp = `stamp${(runs += 1)}`;
  const asked = deck.parts.flatMap(currentProbe);
  const netlist = [
    deck.title,
    options,
    ...deck.lines,
    `v${stamp} ${stamp} 0 1`,
    `.save all ${asked.map(([, probe]) => probe).join(' ')}`,
    '.end',
  ].join('\n');

  const { result, errors } = await runEngine(netlist);
  const complaint = errors.find((line) => FAILURES.some((word) => line.toLowerCase().includes(word)));
  if (complaint !== undefined)
    throw new Error(
      `SPICE engine: ${deck.title}: ${errors.filter((line) => line.trim() !== '').join(' | ')}`,
    );
  if (result.dataType !== 'real')
    throw new Error(`SPICE engine: ${deck.title}: needs real numbers, got complex ones`);

  const expected = new Map<string, string>([
    [`v(${stamp})`, ''],
    [`i(v${stamp})`, ''],
  ]);
  for (const node of deck.nodes) expected.set(`v(${node})`, node);
  for (const [part, probe] of asked) expected.set(`i(${probe})`, part);
  for (const { letter, name } of deck.parts) if (letter === 'v') expected.set(`i(${name})`, name);
  if (analysis === 'tran') expected.set('time', '');

  const names = result.data.map((column) => column.name.toLowerCase());
  const missing = [...expected.keys()].filter((name) => !names.includes(name));
  const extra = names.filter((name) => !expected.has(name));
  if (missing.length + extra.length > 0) {
    throw new Error(
      `SPICE engine: ${deck.title}: not the results of this deck: missing ${missing.join(' ')}; not expected ${extra.join(' ')}`,
    );
  }

  const volts = new Map<string, readonly number[]>();
  const amperes = new Map<string, readonly number[]>();
  let seconds: readonly number[] = [];
  for (const { name, values } of result.data) {
    if (!values.every(Number.isFinite))
      throw new Error(`SPICE engine: ${deck.title}: ${name} is not a number`);
    const key = expected.get(name.toLowerCase()) ?? '';
    if (name === 'time') seconds = values;
    else if (key === '') continue;
    else (name.toLowerCase().startsWith('v(') ? volts : amperes).set(key, values);
  }
  return { seconds, volts, amperes };
}

/** The engine's name for the current of a part that has none by default; sources of volts have one already. */
function currentProbe({ letter, name }: DeckPart): readonly (readonly [string, string])[] {
  if (letter === 'r') return [[name, `@${name}[i]`]];
  if (letter === 'd') return [[name, `@${name}[id]`]];
  if (letter === 'i') return [[name, `@${name}[current]`]];
  return [];
}

type EngineResult = Awaited<ReturnType<Simulation['runSim']>>;

async function runEngine(netlist: string): Promise<{ result: EngineResult; errors: readonly string[] }> {
  engine ??= new Simulation();
  const machine = engine;
  await machine.start();
  machine.setNetList(netlist);
  let watch: NodeJS.Timeout | undefined;
  const fatal = new Promise<never>((_resolve, reject) => {
    watch = setInterval(() => {
      const said = machine.getError().find((line) => line.toLowerCase().includes('fatal'));
      if (said !== undefined) reject(new Error(`SPICE engine: stopped: ${said}`));
    }, WATCH_MILLISECONDS);
  });
  try {
    const result = await Promise.race([machine.runSim(), fatal]);
    return { result, errors: [...machine.getError()] };
  } catch (error) {
    engine = undefined;
    throw error;
  } finally {
    clearInterval(watch);
  }
}
