/** An optocoupler's transistor with its load, base resistor and supply, at rest. Currents in amperes. */
import type { TransistorModel } from './opto-outputs.ts';

/** A transistor with what stands around it. */
export interface TransistorStage {
  readonly model: TransistorModel;
  readonly supplyVolts: number;
  readonly loadOhms: number;
  /** 0 for none. */
  readonly baseOhms: number;
}

/** Volts across the junction that a base resistor drains. */
const BASE_VOLTS = 0.65;

/** What a base resistor takes from the collector's current, amperes; 0 without one. */
function drainedAmperes({ model, baseOhms }: TransistorStage): number {
  return baseOhms > 0 ? ((model.baseGain ?? 0) * BASE_VOLTS) / baseOhms : 0;
}

/** Collector current that the light of an LED current asks for, amperes; below 0 where the base resistor takes more. */
export function collectorAmperes(stage: TransistorStage, ledAmperes: number): number {
  const { gain, gainAmperes, gainPower } = stage.model;
  const ratio = Math.max(0, ledAmperes) / gainAmperes;
  const change = ratio === 0 || (gainPower < 0 && ratio < 1) ? 1 : ratio ** gainPower;
  return gain * Math.max(0, ledAmperes) * change - drainedAmperes(stage);
}

/** The collector current at which the load has all of the supply but the saturation voltage, amperes. */
export function saturationAmperes({ model, supplyVolts, loadOhms }: TransistorStage): number {
  return (supplyVolts - model.saturationVolts) / loadOhms;
}

/** LED current at which the output comes to rest at a share of its supply, amperes; the inverse of `collectorAmperes`. */
export function ledAmperesFor(stage: TransistorStage, shareOfSupply: number, gainShare = 1): number {
  const { gain, gainAmperes, gainPower } = stage.model;
  const wanted = ((1 - shareOfSupply) * stage.supplyVolts) / stage.loadOhms + drainedAmperes(stage);
  const flat = wanted / (gain * gainShare);
  if (gainPower < 0 && flat <= gainAmperes) return flat;
  return gainAmperes * (flat / gainAmperes) ** (1 / (1 + gainPower));
}

/** Logic reads low below this share of its supply, and high above 1 less it (CMOS inputs, from memory). */
export const LOW_SHARE = 0.3;
