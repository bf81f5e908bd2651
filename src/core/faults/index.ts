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
export { FREQUENCIES_ARE_INVENTED, USUAL_FREQUENCIES, benchTable, taughtTable } from './bench-table.ts';
export type { BenchTable, Frequencies, Seen } from './bench-table.ts';
export { BENCH_BOARDS, BOARD_FAULTS, faultName, sayBoardFault, sayFaultKind } from './board-faults.ts';
export type { BenchBoard } from './board-faults.ts';
export { remedyFor } from './board-remedies.ts';
export type { Symptom } from './board-symptoms.ts';
export { bitsOfObservation, fewestExpected } from './decision.ts';
export { guide } from './guide.ts';
export type { GuideStep } from './guide.ts';
export { gradeFault, hideNumberedFault, MOST_FAULT_NUMBER, observe } from './hidden-fault.ts';
export type { HiddenFault } from './hidden-fault.ts';
export type { PartSpot } from './observation.ts';
export { saySymptoms } from './say-symptoms.ts';
