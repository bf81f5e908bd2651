/** Where a jack's own values differ from what the standard has. */
import { styleEntry, valueAt, valuesOf } from '../wiring/index.ts';
import type { CircuitKind, Jack, ValueName } from '../wiring/index.ts';

/** A value that is not the standard's: what it is, and what the standard has, ohms or volts. */
interface OffStandard {
  readonly name: ValueName;
  readonly label: string;
  readonly value: number;
  readonly standard: number;
}

/** Circuits of the standard (MMA CA-033): at 5 V and at 3.3 V, each with its supply and resistors. */
const STANDARD_DRIVERS: readonly CircuitKind[] = ['driver-5v', 'driver-3v3'];

/** The supplies of the standard, volts, the higher first. */
export const STANDARD_VOLTS: readonly number[] = STANDARD_DRIVERS.map((kind) =>
  voltsOf(valuesOf(kind, 'unknown')),
);

/** Values that the standard sets. */
const SET: readonly ValueName[] = ['supplyVolts', 'sourceOhms', 'sinkOhms', 'seriesOhms'];

/**
 * The values of a loop jack that the standard sets otherwise. Resistors are held against those for the supply that is nearer,
 * 5 V or 3.3 V; a value within its tolerance is the standard's. Practices without a standard have none to differ from.
 */
export function offStandard(jack: Jack): readonly OffStandard[] {
  const { circuit, part } = jack;
  if (circuit === 'driver-off' || styleEntry(jack.style).family !== 'loop') return [];
  const own = valuesOf(circuit, part).filter(({ name }) => SET.includes(name));
  const supply = own.some(({ name }) => name === 'supplyVolts') ? valueAt(jack, 'supplyVolts') : undefined;
  const standards =
    supply === undefined
      ? own
      : STANDARD_DRIVERS.map((kind) => valuesOf(kind, part)).reduce((near, other) =>
          Math.abs(voltsOf(other) - supply) < Math.abs(voltsOf(near) - supply) ? other : near,
        );
  return own.flatMap(({ name, label }) => {
    const entry = standards.find((one) => one.name === name);
    if (!entry) return [];
    const value = valueAt(jack, name);
    const { low = 1, high = 1 } = entry.spread ?? {};
    const within = value >= entry.value * low - 1e-9 && value <= entry.value * high + 1e-9;
    return within ? [] : [{ name, label, value, standard: entry.value }];
  });
}

function voltsOf(entries: ReturnType<typeof valuesOf>): number {
  return entries.find(({ name }) => name === 'supplyVolts')?.value ?? 0;
}
