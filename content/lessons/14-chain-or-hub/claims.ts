import { boardFrom, shownDepth, type AuthoredBoard, type Claims } from '../../../src/core/learn/index.ts';
import { boardFacts } from '../../../src/core/planner/index.ts';

const facts = (board: AuthoredBoard) => boardFacts(boardFrom(board));
const four = (layout: 'chain' | 'hub'): AuthoredBoard => ({ layout, pedals: 4 });
const silentWithout = (board: AuthoredBoard, name: string): number =>
  facts(board).silentWithout.find(({ device }) => device === name)?.silent.length ?? 0;
const fits = (layout: 'chain' | 'hub'): readonly boolean[] =>
  shownDepth('', { layout, pedals: 6, part: 'unknown' }).rows.map(({ good }) => good);

export const claims: Claims = {
  'four pedals need four leads in a chain and five behind a hub; six in both ways need seven': () => [
    [facts(four('chain')).leads, 4],
    [facts(four('hub')).leads, 5],
    [facts({ layout: 'both', pedals: 6 }).leads, 7],
  ],
  'the first of a chain takes all others along, the last none, and the hub takes all': () => [
    [silentWithout(four('chain'), 'echo'), 3],
    [silentWithout(four('chain'), 'looper'), 0],
    [silentWithout(four('hub'), 'hub'), 4],
    [silentWithout(four('hub'), 'echo'), 0],
  ],
  'with parts not known the third pedal is the first too deep, and behind a hub none is': () => [
    [fits('chain').indexOf(false), 2],
    [facts({ layout: 'hub', pedals: 6 }).deepestLinks, 2],
    [fits('hub').includes(false), false],
  ],
  'software in each pedal makes the chain hundreds of times later': () => {
    const late = facts({ layout: 'chain', pedals: 6, thru: 'software' }).worstDelaySeconds;
    const times = late / facts({ layout: 'chain', pedals: 6 }).worstDelaySeconds;
    return [[times >= 200 && times < 1000, true]];
  },
};
