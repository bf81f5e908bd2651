import {
  between,
  boardFrom,
  splitFrom,
  type AuthoredBoard,
  type AuthoredSplit,
  type Claims,
} from '../../../src/core/learn/index.ts';
import { checkBoard } from '../../../src/core/board/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';

const usual = (count: number): AuthoredSplit => ({ parts: Array.from({ length: count }, () => '6N138') });
const currents = (count: number) => checkLink(splitFrom(usual(count))).inputs.map(({ active }) => active);
const outcome = (split: AuthoredSplit) => checkLink(splitFrom(split)).outcome;
const passes = (layout: AuthoredBoard['layout']) => checkBoard(boardFrom({ layout, pedals: 4 })).passes;

export const claims: Claims = {
  'each of two inputs gets less than one alone, but more than half': () => {
    const [alone = NaN] = currents(1);
    return currents(2).map((one) => [one, between(alone / 2, alone)]);
  },
  'two of the usual inputs work, three are weak': () => [
    [[1, 2, 3].map((count) => outcome(usual(count))), ['flows', 'flows', 'weak']],
  ],
  'of the four pairs one is starved, and three work': () => [
    [outcome({ parts: ['PC900V', 'PC900V'] }), 'starved'],
    [outcome({ parts: ['6N138', '6N138'] }), 'flows'],
    [outcome({ parts: ['H11L1', 'H11L1'] }), 'flows'],
    [outcome({ parts: ['PC900V', 'PC900V'], circuit: 'driver-3v3' }), 'flows'],
  ],
  'two outputs on one input fail; a chain, a hub and a merger pass': () => [
    [passes('two senders'), false],
    [(['chain', 'hub', 'merger'] as const).map(passes), [true, true, true]],
  ],
};
