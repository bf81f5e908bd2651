/** What can hurt where a task is done for real, in one or two sentences. The pages of a lesson have the cautions in full. */

/** Where joints are made. */
export const SOLDER_CAUTION =
  'Solder only by the rules of your school, workshop or country. Keep the fume away from your face, protect your eyes, put the iron in its stand, and wash your hands after leaded solder.';

/** Where leads are swapped or jacks are measured. */
export const HUNT_CAUTION =
  'Swap and unplug leads with the power off. With the power on, take no reading but DC volts. The rules where you work, and qualified people, come first.';

/** Where a lead is tested. */
export const TEST_CAUTION =
  'Test a lead before it meets a box, and plug it in with the power off. The rules where you work come first.';
