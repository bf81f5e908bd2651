/** The current of the loop by school arithmetic: what the LED keeps is taken from the supply, and the rest stands across the resistors. */
import { valuesOf } from '../wiring/index.ts';
import type { ValueName } from '../wiring/index.ts';
import { activeOf, dinLink } from './links.ts';
import { LED_VOLTS } from './tasks/five-milliamp-loop/loops.ts';

/** What may be taken for the LED, volts: nothing (it is forgotten), the usual value, and that of the standard's own sum (MMA CA-033, footnote 1). */
export const LED_KEEPS = [0, LED_VOLTS, 1.7] as const;

/** A share of the supply: what keeps it, in volts. */
interface Share {
  readonly name: string;
  readonly ohms: number | undefined;
  readonly volts: number;
}

/** The sum, and beside it the current of the same loop solved with the curve of a 6N138. */
interface LoopSum {
  readonly supplyVolts: number;
  readonly leftVolts: number;
  readonly totalOhms: number;
  readonly amperes: number;
  /** The LED and the three resistors in the order of the loop; their volts add up to the supply. */
  readonly shares: readonly Share[];
  readonly solvedAmperes: number;
}

/** Work out a loop of a sender with an isolated input. `ledVolts` is what the LED is taken to keep, at most the supply. */
export function loopSum(circuit: 'driver-5v' | 'driver-3v3', ledVolts: number): LoopSum {
  const of = (name: ValueName, kind: Parameters<typeof valuesOf>[0] = circuit): number =>
    valuesOf(kind, '6N138').find((one) => one.name === name)?.value ?? NaN;
  const supplyVolts = of('supplyVolts');
  const resistors = [
    ['resistor in the source line', of('sourceOhms')],
    ['resistor in the receiver', of('seriesOhms', 'receiver-isolated')],
    ['resistor in the sink line', of('sinkOhms')],
  ] as const;
  const totalOhms = resistors.reduce((sum, [, ohms]) => sum + ohms, 0);
  const leftVolts = supplyVolts - ledVolts;
  const amperes = leftVolts / totalOhms;
  const shares = resistors.map(([name, ohms]): Share => ({ name, ohms, volts: ohms * amperes }));
  return {
    supplyVolts,
    leftVolts,
    totalOhms,
    amperes,
    shares: shares.toSpliced(2, 0, { name: 'LED', ohms: undefined, volts: ledVolts }),
    solvedAmperes: activeOf(dinLink({ circuit })),
  };
}
