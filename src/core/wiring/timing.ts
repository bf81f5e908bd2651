/** What a link has in time that it does not need at rest. Times in seconds, capacitance in farads. */
export interface Timing {
  /** From low to high of the output stage, end to end; an open-drain stage takes as long to let go. */
  readonly riseSeconds: number;
  /** From high to low of the output stage, end to end; an open-drain stage takes as long to take hold. */
  readonly fallSeconds: number;
  /** Capacitor from the shield contact of an isolated input to its device's ground: 0 for none, 0.1 uF allowed (MMA CA-033, p. 3). */
  readonly pin2Farads: number;
}

/** The workbook's own times: the stage of a logic gate (common practice, no source); no capacitor at pin 2. */
export const DEFAULT_TIMING: Timing = { riseSeconds: 50e-9, fallSeconds: 50e-9, pin2Farads: 0 };

/**
 * Time of a software THRU between a byte read and its copy where none is given, seconds; the byte itself comes on top (our
 * choice: a small processor that is busy with other things; some take far longer). Plan files that leave it out mean this.
 */
export const LATENCY_SECONDS = 0.001;
