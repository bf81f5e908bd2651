import {
  pileFrom,
  symptomGroups,
  workedHunt,
  type AuthoredPile,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { BOARD_FAULTS, bitsOfObservation } from '../../../src/core/faults/index.ts';
import { piles } from './data.ts';

/** Sizes of the piles that an answer makes of the suspects, the largest first. */
const sizes = (seen: readonly string[] = []): readonly number[] =>
  [...new Set(seen)].map((answer) => seen.filter((one) => one === answer).length).sort((a, b) => b - a);

/** What is told by each look at a pile, in bits, and whether all looks together tell every suspect from every other. */
function weigh(authored: AuthoredPile) {
  const { suspects, looks } = pileFrom(authored);
  const all = suspects.map((_, at) => at);
  const weighed = {
    names: suspects.map(({ name }) => name),
    weights: all.map(() => 1),
    answers: looks.map(({ seen }) => seen.map((one) => seen.indexOf(one))),
  };
  const bits = looks.map((_, at) => bitsOfObservation(weighed, all, at));
  const best = looks[bits.indexOf(Math.max(...bits))];
  const shown = new Set(all.map((at) => looks.map(({ seen }) => seen[at]).join('|')));
  return { best: best?.id, answers: sizes(best?.seen).length, apart: shown.size === all.length };
}

export const claims: Claims = {
  'of four checks of six suspects the light splits them three and three, and each other one and five': () =>
    pileFrom(piles.six).looks.map(({ id, seen }) => [sizes(seen), id === 'light pedal 1' ? [3, 3] : [5, 1]]),
  'silence leaves a dozen suspects, and each other symptom of one pedal a single one': () => {
    const groups = symptomGroups('link');
    const next = groups.find(({ symptom }) => symptom.includes('next to'));
    return [
      [groups.map(({ suspects }) => suspects.length), [12, 1, 1, 1]],
      [next?.suspects.map(({ name }) => name), ['sender: program-off-by-one']],
    ];
  },
  'the clock reading has three answers and tells most in both hunts, and every suspect can be told from the others':
    () => [
      [weigh(piles.silent), { best: 'volts clock lead 1', answers: 3, apart: true }],
      [weigh(piles.chain), { best: 'volts clock lead 2', answers: 3, apart: true }],
    ],
  'the hunt that is shown takes four checks, the lead first and the two lamps late, and ends at the wrong jack':
    () => {
      const { suspects } = piles.watched;
      const steps = workedHunt(pileFrom(piles.watched), suspects.indexOf('pedal 1: out-into-out'));
      return [
        [
          steps.map(({ check }) => /^Swap|activity light|lamp/.exec(check)?.[0]),
          ['Swap', 'activity light', 'lamp', 'lamp'],
        ],
        [steps.map(({ left }) => left.length), [5, 3, 2, 1]],
        [steps.at(-1)?.left.map((at) => suspects[at]), ['pedal 1: out-into-out']],
      ];
    },
  'the page of faults has as many kinds of fault as the lesson says': () => [[BOARD_FAULTS.length, 23]],
};
