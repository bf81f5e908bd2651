/** Symptoms in a player's words. */
import type { Symptom } from './board-symptoms.ts';

/** Symptoms in words: 'pedal 1 does nothing; pedal 2 shows the right preset'. */
export function saySymptoms(symptoms: readonly Symptom[]): string {
  return symptoms.map((symptom, at) => `pedal ${at + 1} ${VERBS[symptom]}`).join('; ');
}

const VERBS: Readonly<Record<Symptom, string>> = {
  'the right preset': 'calls up the right preset',
  nothing: 'does nothing',
  'comes and goes when leads are moved': 'comes and goes when leads are moved',
  'the preset next to it': 'calls up the preset next to the right one',
  'the right number in the wrong bank': 'calls up the right number in the wrong bank',
};
