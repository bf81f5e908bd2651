/** The junction law, its linear companion, and the limiting that keeps Newton's method from running away. */

/** Below this many N VT the law turns to the cubic that SPICE uses, so that both agree to the nanoampere. */
const REVERSE_CORNER = -3;

/** Junction current without the least conductance, amperes. `volts` is behind RS, `slope` is N VT. */
export function junctionAmperes(volts: number, saturation: number, slope: number): number {
  if (volts >= REVERSE_CORNER * slope) return saturation * (Math.exp(volts / slope) - 1);
  const share = (3 * slope) / (Math.E * volts);
  return -saturation * (1 + share * share * share);
}

/** Slope of the junction current, siemens. */
export function junctionSiemens(volts: number, saturation: number, slope: number): number {
  if (volts >= REVERSE_CORNER * slope) return (saturation * Math.exp(volts / slope)) / slope;
  const share = (3 * slope) / (Math.E * volts);
  return (3 * saturation * share * share * share) / volts;
}

/**
 * Hold a junction voltage back to a step that the exponential can follow: beyond the critical voltage the step is taken
 * in current, not in volts. (Nagel's limiting, as in SPICE2: UCB/ERL M520, 1975.)
 */
export function limitJunction(next: number, last: number, slope: number, critical: number): number {
  if (next <= critical || Math.abs(next - last) <= 2 * slope) return next;
  if (last <= 0) return slope * Math.log(next / slope);
  const share = 1 + (next - last) / slope;
  return share > 0 ? last + slope * Math.log(share) : critical;
}
