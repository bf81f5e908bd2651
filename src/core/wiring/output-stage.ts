/** The output stage of an input: what follows the light of its LED. */
import { hasLed } from './circuits.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';
import { LET_GO_SHARE, partEntry } from './optocouplers.ts';
import { outputModel } from './opto-outputs.ts';
import { USUAL_PARTS } from './parts.ts';
import { LOW_SHARE, ledAmperesFor } from './transistor-stage.ts';
import type { TransistorStage } from './transistor-stage.ts';

/** An output that takes fixed times: logic, or a level that is read as it is. */
interface FixedDelays {
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
}

/** What follows the LED of an input. */
type OutputStage = FixedDelays | TransistorStage;

/** A level input: a logic gate takes far less than a microsecond (common practice, no source). */
const NO_DELAYS: FixedDelays = { toOnSeconds: 0, toOffSeconds: 0 };

/** What of a jack decides its output side. */
export type OutputJack = Pick<Jack, 'circuit' | 'part' | 'values'>;

/** The output stage of an input jack. `baseResistor` false leaves the base resistor out whatever the jack says. */
export function outputStage(jack: OutputJack, baseResistor = true): OutputStage {
  if (!hasLed(jack.circuit)) return NO_DELAYS;
  const { kind } = outputModel(jack.part);
  if ('toOnSeconds' in kind)
    return { toOnSeconds: valueAt(jack, 'toOnSeconds'), toOffSeconds: valueAt(jack, 'toOffSeconds') };
  return {
    model: { ...kind, gain: valueAt(jack, 'gain') },
    supplyVolts: valueAt(jack, 'outputVolts'),
    loadOhms: valueAt(jack, 'loadOhms'),
    baseOhms: baseResistor && kind.baseGain !== undefined ? valueAt(jack, 'baseOhms') : 0,
  };
}

/** Values that shape what follows the LED. */
const SHAPING = ['outputVolts', 'loadOhms', 'baseOhms', 'gain', 'toOnSeconds', 'toOffSeconds'] as const;

/** Whether somebody chose what follows the LED of an input: a value of it, or a part that is none of the usual ones. */
export function hasOwnOutputSide({ circuit, part, values }: OutputJack): boolean {
  const usual = part === 'unknown' || USUAL_PARTS.some((one) => one === part);
  return hasLed(circuit) && (!usual || SHAPING.some((name) => values[name] !== undefined));
}

/** LED currents that decide an input, amperes. */
export interface LedThresholds {
  /** A typical part takes hold from here; the sheet's figure where it has one. */
  readonly onAmperes: number;
  /** Every part of the type does. */
  readonly sureAmperes: number;
  /** Below this every part lets go; between the two a part may stay on. */
  readonly offAmperes: number;
  /** A typical part that holds lets go here. */
  readonly letGoAmperes: number;
}

/** Values that take the output side away from what its sheet's turn-on current was measured with. */
const AROUND = ['outputVolts', 'loadOhms', 'baseOhms'] as const;

/** The LED currents that decide an input with an optocoupler. A reader's own turn-on current is taken at its word. */
export function ledThresholds(jack: OutputJack): LedThresholds {
  const given = valueAt(jack, 'turnOnAmperes');
  const { kind } = outputModel(jack.part);
  const stage = outputStage(jack);
  if ('toOnSeconds' in kind || 'toOnSeconds' in stage) {
    const offAmperes = 'toOnSeconds' in kind ? Math.min(kind.offAmperes, given) : given;
    return { onAmperes: given, sureAmperes: given, offAmperes, letGoAmperes: given * LET_GO_SHARE };
  }
  const { values } = jack;
  const typical = ledAmperesFor(stage, LOW_SHARE);
  const onAmperes = values.turnOnAmperes ?? Math.max(given, typical);
  // The least gain counts where nothing else is known: a sheet's own figure holds for its own load, a measured gain is what it is.
  const bySheet = partEntry(jack.part).turnOnBySheet && !AROUND.some((name) => values[name] !== undefined);
  const known = values.turnOnAmperes !== undefined || values.gain !== undefined || bySheet;
  const [least, greatest] = values.gain === undefined ? kind.gainRange : [1, 1];
  return {
    onAmperes,
    sureAmperes: known ? onAmperes : Math.max(onAmperes, ledAmperesFor(stage, LOW_SHARE, least)),
    offAmperes: Math.min(onAmperes, ledAmperesFor(stage, 1 - LOW_SHARE, greatest)),
    letGoAmperes: Math.min(onAmperes, ledAmperesFor(stage, 1 / 2)),
  };
}
