/** A letter to the maker of a device whose manual does not say what its jack is: the questions that matter, ready to copy. */
import { openTypes } from './told.ts';
import type { ToldJack } from './told.ts';
import { saySocket } from './say.ts';

/** The letter, in plain text of a few lines, for one jack. `further` are questions that the manual's own words leave open. */
export function letterToMaker(jack: ToldJack, further: readonly string[] = []): string {
  const way = jack.direction === 'out' ? 'MIDI output' : 'MIDI input';
  const types = openTypes(jack);
  const questions = [
    'Which DIN pin is on the tip, which on the ring, and which on the sleeve (4, 5, 2, or none)?',
    ...(types.includes('type-a') && types.includes('type-b')
      ? ['Is it Type A, Type B, or neither? Can a menu or a switch change it?']
      : []),
    ...(jack.inAndOut === true ? ['Which contact receives, and which one sends?'] : []),
    ...(jack.direction === 'in'
      ? ['Is the input isolated from the device’s ground, as the MIDI standard asks?']
      : [
          'Does the output run from 5 V or from 3.3 V, and may a plug with two contacts go into it without harm?',
        ]),
    'Does the jack carry anything else, such as an expression pedal, a footswitch or a supply?',
    'Which adapter or lead do you sell or recommend for it?',
    ...further,
  ];
  return [
    'Hello,',
    '',
    `I own your [name of the device]. Its ${way} is a ${saySocket(jack.socket)}, and the manual does not say how it is wired. Could you tell me:`,
    '',
    ...questions.map((question, at) => `${at + 1}. ${question}`),
    '',
    'Thank you.',
  ].join('\n');
}
