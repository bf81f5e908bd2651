/** The task on a chain whose boxes copy in different ways: how far edges have shifted at its end. Shifts are the board's. */
import { hearers } from '../../../board/index.ts';
import type { Thru } from '../../../plan/index.ts';
import type { Part } from '../../../wiring/index.ts';
import { someOf } from '../chance.ts';
import { ROUNDING, aNumber, inRows, plainNumber } from '../forms.ts';
import { CONTROLLER, PEDALS, waysOf } from '../../boards.ts';
import { planOfLeads } from '../told-boards.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Parts whose two delays differ by a round amount, so that the shift of a link can be told. */
const SHIFTING: readonly Part[] = ['PC900V', 'H11L1'];
const MIXED_THRU_SAID = {
  'software passes shifts on':
    'A software THRU reads the byte and sends a new one. Its edges are fresh, and the shift begins at nothing.',
  'own input forgotten': 'The last box has an input too, and it shifts edges like the others.',
  'hardware makes edges fresh':
    'A hardware THRU repeats each edge as it comes, with the shift it has. Only software makes them fresh.',
  'counts up to the software':
    'That is the shift at the box with the software. Behind it the edges are fresh: count on from there.',
};

/** How far edges have shifted where hardware and software THRUs follow one another. */
export function mixedThru(level: Level, chance: Chance): Drawn {
  const count = chance.turn(level < 2 ? [3, 4] : [4, 5, 6]);
  const names = someOf(PEDALS, count, chance);
  const part = chance.pick(SHIFTING);
  const software = chance.pick(names.slice(0, level === 3 ? -1 : -2));
  const more = level === 3 ? chance.pick(names.slice(0, -1)) : software;
  const thrus = Object.fromEntries(
    names.map((name): [string, Thru] => [name, name === software || name === more ? 'software' : 'hardware']),
  );
  const plan = planOfLeads(waysOf('chain', names), { part, thrus });
  const shifts = hearers(plan, CONTROLLER).hearings.map(({ last }) => last.shiftSeconds * 1e6);
  const [one = 0] = shifts;
  const right = shifts.at(-1) ?? 0;
  const last = names.at(-1) ?? '';
  const links = Math.round(right / one);
  return {
    ask: `How far have edges shifted where '${last}' reads them, in microseconds?`,
    shows: inRows([
      ['each input shifts edges by', `${plainNumber(one)} µs`],
      ...names.map(
        (name, at) =>
          [`${at + 1}. ${name}`, at === count - 1 ? 'the last' : `${thrus[name] ?? ''} THRU`] as const,
      ),
    ]),
    ...aNumber(right, 'µs', ROUNDING, MIXED_THRU_SAID, {
      'software passes shifts on': count * one,
      'own input forgotten': right - one,
      'hardware makes edges fresh': one,
      'counts up to the software': (count - links) * one,
    }),
    hints: [
      'Hardware repeats edges and their shift. Software sends fresh ones.',
      'Look for the last software THRU before the end.',
      'Count the inputs behind it, the last one too.',
    ],
    steps: [
      `The last software THRU before '${last}' is that of '${names.findLast((name) => thrus[name] === 'software' && name !== last) ?? ''}'. Behind it ${links === 1 ? 'is one input' : `are ${links} inputs`}.`,
      `${links} × ${plainNumber(one)} µs: ${plainNumber(right)} µs.`,
    ],
  };
}
