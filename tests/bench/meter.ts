/** Figures of the meter: how well the jack finder names jacks when its own advice is followed, and how fast advice comes. */
import { nameOf } from '../../src/core/meter/evidence.ts';
import { findJack } from '../../src/core/meter/finder.ts';
import type { TakenReading } from '../../src/core/meter/finder.ts';
import { nextReading } from '../../src/core/meter/next-reading.ts';
import { seededRandom } from '../support/random.ts';
import { drawWorld } from '../support/meter-world.ts';

/** One figure, with the bound it must keep where there is one. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly atLeast?: number;
  readonly atMost?: number;
}

const MOST_READINGS = 6;
const OUTSIDE_SHARE = 0.25;

/** How one simulated jack ended. */
export interface Trial {
  readonly end: 'right' | 'wrong' | 'cannot-tell' | 'not-sure' | 'fits-nothing';
  readonly readings: number;
  readonly outside: boolean;
  readonly milliseconds: number;
  readonly words: string;
}

/** Follow the finder's advice on one simulated jack, for at most six readings. */
export function follow(seed: number): Trial {
  const world = drawWorld(seededRandom(seed), OUTSIDE_SHARE);
  const taken: TakenReading[] = [];
  let milliseconds = 0;
  const end = (what: Trial['end'], named: string): Trial => ({
    end: what,
    readings: taken.length,
    outside: world.outside,
    milliseconds,
    words: `seed ${seed}: ${world.name}${world.outside ? ' (outside)' : ''} ended ${what} as ${named}`,
  });
  for (;;) {
    const start = performance.now();
    const finding = findJack(world.evidence, taken);
    const advice =
      finding.state === 'not-sure'
        ? nextReading(
            world.evidence,
            finding,
            taken.map(({ at }) => at),
          )
        : undefined;
    milliseconds = Math.max(milliseconds, performance.now() - start);
    const named = finding.ranked[0]?.name ?? '';
    if (finding.state === 'sure') return end(named === nameOf(world.under) ? 'right' : 'wrong', named);
    if (finding.state === 'fits-nothing') return end('fits-nothing', named);
    if (!advice) return end('cannot-tell', named);
    if (taken.length === MOST_READINGS) return end('not-sure', named);
    taken.push({ at: advice.at, reading: world.read(advice.at) });
  }
}

/** The finder's figures over many simulated jacks. */
export function finderFigures(count: number): readonly Figure[] {
  // Predictions are made once for each connector and meter, as a page does when it opens; the clock starts after that.
  for (let seed = 1; seed <= 200; seed++) follow(-seed);
  const trials = Array.from({ length: count }, (_, at) => follow(at + 1));
  const share = (end: Trial['end'], of = trials): number =>
    of.filter((one) => one.end === end).length / of.length;
  const listed = trials.filter(({ outside }) => !outside);
  const readings = trials.map((one) => one.readings).sort((a, b) => a - b);
  const slowest = trials.map((one) => one.milliseconds).sort((a, b) => a - b);
  const percent = (name: string, value: number, atMost?: number): Figure => ({
    name,
    value: 100 * value,
    unit: '%',
    ...(atMost === undefined ? {} : { atMost }),
  });
  return [
    { name: 'jack finder: simulated jacks', value: trials.length, unit: 'jacks', atLeast: count },
    percent('jack finder: wrong and sure', share('wrong'), 1),
    percent('jack finder: cannot tell', share('cannot-tell'), 5),
    percent('jack finder: right and sure', share('right')),
    percent('jack finder: right and sure, catalogue parts', share('right', listed)),
    percent('jack finder: fits nothing', share('fits-nothing')),
    percent('jack finder: fits nothing, catalogue parts', share('fits-nothing', listed)),
    percent('jack finder: not sure after six readings', share('not-sure')),
    {
      name: 'jack finder: median number of readings',
      value: readings[readings.length >> 1] ?? NaN,
      unit: 'readings',
      atMost: MOST_READINGS,
    },
    {
      name: 'next reading: 95 of 100 within',
      value: slowest[Math.floor(slowest.length * 0.95)] ?? NaN,
      unit: 'ms',
      atMost: 50,
    },
  ];
}
