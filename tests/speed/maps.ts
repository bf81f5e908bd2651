/** Every map of conductors between two jacks, solved one by one in both states. */
import { willTheyTalk } from '../../src/core/answer/index.ts';
import { findLead } from '../../src/core/verdict/index.ts';
import { conductorMaps, linkFor, wiredContacts } from '../../src/core/verdict/maps.ts';
import { judgeInputs } from '../../src/core/verdict/judge.ts';
import { prepareLink } from '../../src/core/verdict/prepare.ts';
import { makeJack } from '../../src/core/wiring/index.ts';
import type { Jack } from '../../src/core/wiring/index.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

const ROUNDS = 40;

function sweepMilliseconds(output: Jack, input: Jack): number {
  const maps = conductorMaps(wiredContacts(output), wiredContacts(input));
  return milliseconds(() => {
    for (const map of maps) judgeInputs(prepareLink(linkFor(output, input, map), 'separate'), false);
  });
}

function milliseconds(work: () => void): number {
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  return quantile(times.slice(10), 0.5);
}

/** Each map built, compiled and solved in both states by itself; and the whole answer with its corners and reasons. */
export function figures(): Promise<readonly Figure[]> {
  const din = makeJack('out', 'din5', 'din');
  const dinIn = makeJack('in', 'din5', 'din');
  const trsIn = makeJack('in', 'trs-3.5', 'type-a');
  return Promise.resolve([
    {
      name: 'all 136 maps DIN to TRS, both states',
      value: sweepMilliseconds(din, trsIn),
      unit: 'ms',
      atMost: 10,
    },
    {
      name: 'all 1546 maps DIN to DIN, both states',
      value: sweepMilliseconds(din, dinIn),
      unit: 'ms',
      atMost: 100,
    },
    {
      name: "'Which lead?' DIN to DIN, ranked and explained",
      value: milliseconds(() => findLead(din, dinIn)),
      unit: 'ms',
    },
    {
      name: "'Will these two talk?' large jack to small jack, neither type known",
      value: milliseconds(() =>
        willTheyTalk(
          { direction: 'out', socket: 'trs-6.35', type: undefined },
          { direction: 'in', socket: 'trs-3.5', type: undefined },
          [],
        ),
      ),
      unit: 'ms',
      atMost: 100,
    },
  ]);
}
