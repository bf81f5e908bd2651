/** The junction law, its linear companion, and the limiting that keeps Newton's method from running away. */

/** Below this many N VT the law turns to the cubic that SPICE uses, so that both agree to the nanoampere. */
const REVERSE_CORNER = -3;

/** Current and slope of a junction, amperes and siemens. */
export interface JunctionLaw {
  amperes: number;
  siemens: number;
}

/**
 * Current and slope of a junction without the least conductance, written into `into`.
 * `volts` is behind RS, `saturation` IS in amperes, `slope` N VT in volts.
 */
export function junctionLaw(volts: number, saturation: number, slope: number, into: JunctionLaw): void {
  if (volts >= REVERSE_CORNER * slope) {
    const growth = saturation * Math.exp(volts / slope);
    into.amperes = growth - saturation;
    into.siemens = growth / slope;
    return;
  }
  const share = (3 * slope) / (Math.E * volts);
  const cube = share * share * share;
  into.amperes = -saturation * (1 + cube);
  into.siemens = (3 * saturation * cube) / volts;
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
