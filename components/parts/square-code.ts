/** An address as a code of squares that a telephone reads (ISO/IEC 18004). */
import { modulesPath } from '../../src/draw/modules.ts';

/** Side of one module on paper, millimetres: a telephone reads 0.4 mm from a hand's breadth (our choice, a little more). */
const MODULE_MM = 0.42;

/** Light modules around the code that its standard asks for (ISO/IEC 18004). */
const QUIET_MODULES = 4;

/** A square code to draw. `modules` counts the quiet zone too; `sideMm` is the side on paper. */
export interface SquareCode {
  readonly d: string;
  readonly modules: number;
  readonly sideMm: number;
}

/** The square code of an address, or undefined when it would be wider on paper than `mostMm` millimetres, or than any such code. */
export async function squareCode(address: string, mostMm = Infinity): Promise<SquareCode | undefined> {
  // The encoder comes when the first code is drawn.
  const { default: encodeQR } = await import('qr');
  try {
    const dark = encodeQR(address, 'raw', { ecc: 'medium', border: QUIET_MODULES });
    const sideMm = dark.length * MODULE_MM;
    return sideMm > mostMm ? undefined : { d: modulesPath(dark), modules: dark.length, sideMm };
  } catch {
    // Longer than any such code can hold.
    return undefined;
  }
}
