/** Figures of the meter: how well the jack finder names jacks when its own advice is followed, and how fast advice comes. */
import { nameOf } from '../../src/core/readings/evidence.ts';
import { benchTable, gradeFault, guide, hideFault } from '../../src/core/faults/fault-bench.ts';
import { findJack } from '../../src/core/readings/finder.ts';
import type { TakenReading } from '../../src/core/readings/finder.ts';
import { faultsOf, madeLead } from '../../src/core/making/lead-faults.ts';
import { fullTable, tableOf } from '../../src/core/making/lead-table.ts';
import { nextReading } from '../../src/core/readings/next-reading.ts';
import { LEAST_STEPS, partingsOf } from '../../src/core/readings/partings.ts';
import { proveLead } from '../../src/core/making/prove.ts';
import { makeLead, wires } from '../../src/core/wiring/link.ts';
import { seededRandom } from '../support/random.ts';
import { drawWorld } from '../support/meter-world.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

/** Readings that a reader is willing to take, and the share of jacks with parts in no catalogue (our choices). */
const MOST_READINGS = 6;
const OUTSIDE_SHARE = 0.25;

/** How one simulated jack ended. */
export interface Trial {
  readonly end: 'right' | 'wrong' | 'cannot-tell' | 'not-sure' | 'fits-nothing';
  readonly readings: number;
  readonly outside: boolean;
  readonly milliseconds: number;
  readonly words: string;
  /** Where it ends in 'cannot tell': the most by which a permitted reading differs between any two names still possible, in noise. */
  readonly parts: number;
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
    parts: 0,
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
    if (!advice) {
      const partings = partingsOf(
        world.evidence,
        finding,
        taken.map(({ at }) => at),
      );
      return { ...end('cannot-tell', named), parts: partings[0]?.steps ?? 0 };
    }
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
    percent(
      'jack finder: cannot tell, though a permitted reading differs by more than the noise',
      trials.filter(({ end, parts }) => end === 'cannot-tell' && parts >= LEAST_STEPS).length / trials.length,
      0,
    ),
    percent('jack finder: right and sure', share('right')),
    percent('jack finder: right and sure, catalogue parts', share('right', listed)),
    percent('jack finder: fits nothing', share('fits-nothing')),
    percent('jack finder: fits nothing, catalogue parts', share('fits-nothing', listed)),
    percent('jack finder: not sure after six readings', share('not-sure')),
    {
      name: 'jack finder: median number of readings',
      value: quantile(
        trials.map(({ readings }) => readings),
        0.5,
      ),
      unit: 'readings',
      atMost: MOST_READINGS,
    },
    {
      name: 'next reading: 95 of 100 within',
      value: quantile(
        trials.map(({ milliseconds }) => milliseconds),
        0.95,
      ),
      unit: 'ms',
      atMost: 50,
    },
  ];
}

/** How fast a fault is named and graded, and a lead is proved. */
export function benchFigures(): readonly Figure[] {
  const times: number[] = [];
  for (const board of ['link', 'chain'] as const) {
    benchTable(board);
    for (let at = 0; at < 40; at++) {
      const hidden = hideFault(board, at / 40);
      const start = performance.now();
      guide(board, hidden.symptoms, []);
      gradeFault(hidden, hidden.fault, []);
      times.push(performance.now() - start);
    }
  }
  const lead = makeLead('din5', 'din5', wires('1-1', '2-2', '3-3', '4-4', '5-5'));
  const proofs = faultsOf(lead)
    .slice(0, 20)
    .map((fault) => {
      const says = tableOf(madeLead(lead, [fault, { kind: 'short', side: 'to', between: ['1', 'shell'] }]));
      const readings = fullTable(lead).map((place) => ({ ...place, says: says(place) }));
      const start = performance.now();
      proveLead(lead, readings);
      return performance.now() - start;
    });
  return [
    { name: 'fault bench: guide and grade, median', value: quantile(times, 0.5), unit: 'ms', atMost: 50 },
    {
      name: 'proof of a five-conductor DIN lead with two faults, median',
      value: quantile(proofs, 0.5),
      unit: 'ms',
      atMost: 50,
    },
  ];
}

/** Simulated devices of the bench. */
const JACKS = 10_000;

/** Every figure of the meter. */
export function figures(): Promise<readonly Figure[]> {
  return Promise.resolve([...finderFigures(JACKS), ...benchFigures()]);
}
