/** Faults hidden in a small board, and the way to them. The door of the floor: what others may use, and nothing else. */
export { OBSERVATION_WAYS, answerFaults } from './answers.ts';
export type {
  FaultAnswer,
  FaultChoice,
  FaultOrder,
  GuideAnswer,
  ObservationChoice,
  RoundAnswer,
  RoundEnd,
  RoundOrder,
} from './answers.ts';
export { BENCH_BOARDS, BOARD_FAULTS, faultName, sayBoardFault, sayFaultKind } from './board-faults.ts';
export type { BenchBoard } from './board-faults.ts';
export { remedyFor } from './board-remedies.ts';
export type { Symptom } from './board-symptoms.ts';
export { bitsOfObservation, fewestExpected } from './decision.ts';
export {
  FREQUENCIES_ARE_INVENTED,
  MOST_FAULT_NUMBER,
  USUAL_FREQUENCIES,
  benchTable,
  gradeFault,
  guide,
  hideNumberedFault,
  observe,
} from './fault-bench.ts';
export type { BenchTable, Frequencies, GuideStep, HiddenFault, Seen } from './fault-bench.ts';
export { saySymptoms } from './say-symptoms.ts';
