import type { LessonJacks } from '../../../src/core/learn/index.ts';

/** The jacks that this lesson measures. */
export const jacks = {
  out: { direction: 'out', connector: 'trs-3.5', style: 'type-a' },
  outTurned: { direction: 'out', connector: 'trs-3.5', style: 'type-b' },
  outLow: { direction: 'out', connector: 'trs-3.5', style: 'type-a', circuit: 'driver-3v3' },
  outUntied: { direction: 'out', connector: 'trs-3.5', style: 'type-a', extras: ['shield-untied'] },
  in: { direction: 'in', connector: 'trs-3.5', style: 'type-a' },
  inTurned: { direction: 'in', connector: 'trs-3.5', style: 'type-b' },
  switches: { other: 'footswitch-double', connector: 'trs-3.5' },
} satisfies LessonJacks;
