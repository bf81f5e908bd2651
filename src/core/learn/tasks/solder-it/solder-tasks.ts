/** Tasks on soldering a lead. */
import type { TaskKind } from '../task.ts';
import { orderSteps, solderCups } from './bench-tasks.ts';
import { benchHazards } from './hazard-task.ts';
import { judgeJoints } from './joint-tasks.ts';
import { strayStrand } from './strand-task.ts';
import { stripLength } from './strip-task.ts';

/** The tasks of the lesson. */
export const SOLDER_TASKS: readonly TaskKind[] = [
  { kind: 'order-steps', title: 'What comes first?', draw: orderSteps },
  { kind: 'solder-cups', title: 'Which cup?', draw: solderCups },
  { kind: 'strip-length', title: 'How much is bare?', draw: stripLength },
  { kind: 'judge-joints', title: 'Good joint, bad joint', draw: judgeJoints },
  { kind: 'stray-strand', title: 'One strand too many', draw: strayStrand },
  { kind: 'bench-hazards', title: 'What can hurt here?', draw: benchHazards },
];
