/** Tasks on testing a lead. */
import type { TaskKind } from '../task.ts';
import { fewestReadings } from './count-task.ts';
import { bestReading, faultFromBeeps } from './fault-tasks.ts';
import { beepAtOhms, stillAndMoved } from './joint-tasks.ts';
import { strangersLead } from './stranger-task.ts';

/** The tasks of the lesson. */
export const TEST_TASKS: readonly TaskKind[] = [
  { kind: 'fewest-readings', title: 'How few readings?', draw: fewestReadings },
  { kind: 'fault-from-beeps', title: 'Beeps and a fault', draw: faultFromBeeps },
  { kind: 'best-reading', title: 'Which reading next?', draw: bestReading },
  { kind: 'beep-at-ohms', title: 'What a beep is worth', draw: beepAtOhms },
  { kind: 'still-and-moved', title: 'Lying still, and moved', draw: stillAndMoved },
  { kind: 'strangers-lead', title: 'A lead without a label', draw: strangersLead },
];
