/** Any link judged in full and a byte sent through it both ways its grounds can be: the slowest of a sample. */
import { anyLink } from '../support/any-link.ts';
import { seededRandom } from '../support/random.ts';
import { tryLink } from '../support/try-link.ts';
import type { Tried } from '../support/try-link.ts';
import { checkLink } from '../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import type { Figure } from './figures.ts';

const LINKS = 400;
/** Rounds of which the least time counts: what else the machine does only adds. */
const ROUNDS = 3;

/** A split over four inputs of parts not known, each behind two leads of all six wires, crossed: nothing about it is quick to judge. */
function fourInputs(): number {
  const lead = makeLead('din5', 'din5', wires('4-5', '5-4', '2-2', '1-1', '3-3', 'shell-shell'));
  const extension = { ...lead, name: 'extension', from: { connector: 'din5', form: 'jack' } } as const;
  const input = makeJack('in', 'din5', 'din', { part: 'unknown' });
  const branches = Array.from({ length: 4 }, () => ({ input, leads: [lead, extension] }));
  const times = Array.from({ length: 4 * ROUNDS }, () => {
    const start = performance.now();
    checkLink({ output: makeJack('out', 'din5', 'din'), branches });
    return performance.now() - start;
  });
  return Math.min(...times);
}

/** Seeded, so that the same links are measured every time. */
export async function figures(): Promise<readonly Figure[]> {
  const least = Array.from({ length: LINKS }, (_, seed) => {
    const rounds = Array.from({ length: ROUNDS }, (): Tried => {
      const random = seededRandom(seed);
      return tryLink(anyLink(random), random.integer(0, 255));
    });
    const bad = rounds.find(({ problem }) => problem !== undefined);
    if (bad) throw new Error(`links: seed ${seed}: ${bad.problem}`);
    return {
      judge: Math.min(...rounds.map(({ judgeMilliseconds }) => judgeMilliseconds)),
      send: Math.min(...rounds.map(({ sendMilliseconds }) => sendMilliseconds)) / 2,
      moments: Math.max(...rounds.map(({ moments }) => moments)),
    };
  });
  const most = (of: (one: (typeof least)[number]) => number): number => Math.max(...least.map(of));
  return [
    { name: 'four inputs of two leads each, judged', value: fourInputs(), unit: 'ms', atMost: 50 },
    {
      name: `any of ${LINKS} links judged: slowest`,
      value: most(({ judge }) => judge),
      unit: 'ms',
      atMost: 50,
    },
    { name: `a byte through any of them: slowest`, value: most(({ send }) => send), unit: 'ms', atMost: 50 },
    { name: `a byte through any of them: most moments`, value: most(({ moments }) => moments), unit: '' },
  ];
}
