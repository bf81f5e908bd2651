/** The tasks of the lesson on contacts. */
import type { TaskKind } from '../task.ts';
import { fourBeeps } from './beep-tasks.ts';
import { hiddenPin, whichView } from './face-tasks.ts';
import { listToPicture, pictureToList } from './list-tasks.ts';
import { tsPlug } from './plug-tasks.ts';

/** The tasks of the lesson. */
export const CONTACT_TASKS: readonly TaskKind[] = [
  { kind: 'hidden-pin', title: 'Which pin is it?', draw: hiddenPin },
  { kind: 'which-view', title: 'Which side is it?', draw: whichView },
  { kind: 'picture-to-list', title: 'From the picture to the list', draw: pictureToList },
  { kind: 'list-to-picture', title: 'From the list to the picture', draw: listToPicture },
  { kind: 'ts-plug', title: 'What does the plug join?', draw: tsPlug },
  { kind: 'four-beeps', title: 'Four beeps', draw: fourBeeps },
];
