/** Figures of the meter: how well the jack finder names jacks when its own advice is followed, and how fast advice comes. */
import { benchTable } from '../../src/core/faults/bench-table.ts';
import { guide } from '../../src/core/faults/guide.ts';
import { gradeFault, hideFault } from '../../src/core/faults/hidden-fault.ts';
import { faultsOf, madeLead } from '../../src/core/making/lead-faults.ts';
import { fullTable, tableOf } from '../../src/core/making/lead-table.ts';
import { proveLead } from '../../src/core/making/prove.ts';
import { findJack } from '../../src/core/readings/finder.ts';
import type { TakenReading } from '../../src/core/readings/taken.ts';
import { nextReading } from '../../src/core/readings/next-reading.ts';
import { makeLead, wires } from '../../src/core/wiring/link.ts';
import { drawWorld } from '../support/jack-world.ts';
import { seededRandom } from '../support/random.ts';
import { FOREIGN } from '../support/world-jacks.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

/** Readings that a reader is willing to take (our choice). */
const MOST_READINGS = 8;

/** How one simulated jack ended. `between`: not sure of one name, but of two, of which one is right. */
interface Trial {
  readonly end: 'right' | 'wrong' | 'between' | 'cannot-tell' | 'not-sure' | 'fits-nothing';
  readonly kind: string;
  readonly readings: number;
  readonly milliseconds: number;
  readonly words: string;
}

/** The name under which the finder has a jack: a footswitch input and one with its signal on the tip are one circuit. */
const nameFor = (name: string): string => (name === 'footswitch' ? 'in tip-signal' : name);

/** Kinds of jack whose figures are shown by themselves. */
const KINDS = ['loop input', 'loop output', 'signal to ground', 'another use', 'foreign'] as const;

function kindOf(name: string): (typeof KINDS)[number] {
  if (name === FOREIGN) return 'foreign';
  if (name.endsWith('-signal')) return 'signal to ground';
  return name.startsWith('in ') ? 'loop input' : name.startsWith('out ') ? 'loop output' : 'another use';
}

/** Follow the finder's advice on one simulated jack. */
export function follow(seed: number): Trial {
  const world = drawWorld(seededRandom(seed));
  const taken: TakenReading[] = [];
  let milliseconds = 0;
  for (;;) {
    const start = performance.now();
    const finding = findJack(world.evidence, taken);
    const { state, ranked } = finding;
    const advice = state === 'not-sure' ? nextReading(world.evidence, finding, taken) : undefined;
    milliseconds = Math.max(milliseconds, performance.now() - start);
    if (advice && taken.length < MOST_READINGS) {
      taken.push({ at: advice.at, reading: world.read(advice.at) });
      continue;
    }
    const right = ranked.findIndex(({ name }) => name === nameFor(world.name));
    const [first, second] = ranked.map(({ probability }) => probability);
    const between = (first ?? 0) + (second ?? 0) >= 0.98 && (right === 0 || right === 1);
    const open = between ? 'between' : advice ? 'not-sure' : 'cannot-tell';
    const end = state === 'sure' ? (right === 0 ? 'right' : 'wrong') : state === 'not-sure' ? open : state;
    const words = `seed ${seed}: ${world.name} ended ${end} as ${ranked[0]?.name ?? ''}`;
    return { end, kind: kindOf(world.name), readings: taken.length, milliseconds, words };
  }
}

/** The first of the jacks by which the finder is judged: no choice was made by any from here on. */
const FIRST_SEED = 1_000_001;

/** The finder's figures over many simulated jacks, from the first to the last one, counted from 1. */
function finderFigures([first, last]: readonly [number, number]): readonly Figure[] {
  const count = last - first + 1;
  // Crowds are solved once for each connector and meter, as a page does when it opens; the clock starts after that.
  for (let seed = 1; seed <= 200; seed++) follow(-seed);
  const trials = Array.from({ length: count }, (_, at) => follow(FIRST_SEED + first - 1 + at));
  const share = (end: Trial['end'], of: readonly Trial[] = trials): number =>
    (100 * of.filter((one) => one.end === end).length) / of.length;
  const finder = (name: string, value: number, more: Partial<Figure> = {}): Figure => ({
    name: `jack finder: ${name}`,
    value,
    unit: '%',
    ...more,
  });
  return [
    finder('simulated jacks', trials.length, { unit: 'jacks', atLeast: count }),
    finder('wrong and sure', share('wrong'), { atMost: 0.5 }),
    finder('right and sure', share('right'), { atLeast: 85 }),
    ...KINDS.slice(0, 4).map((kind) =>
      finder(
        `right and sure, ${kind}`,
        share(
          'right',
          trials.filter((one) => one.kind === kind),
        ),
      ),
    ),
    finder('one of two, the right one among them', share('between')),
    finder('cannot tell', share('cannot-tell')),
    finder('fits nothing', share('fits-nothing')),
    finder(`not sure after ${MOST_READINGS} readings`, share('not-sure')),
    finder(
      'median number of readings',
      quantile(
        trials.map(({ readings }) => readings),
        0.5,
      ),
      { unit: 'readings', atMost: 6 },
    ),
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
function benchFigures(): readonly Figure[] {
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

/** Simulated jacks by which the finder is judged. */
const JACKS = [1, 10_000] as const;

/** Every figure of the meter; `jacks` for some of the simulated jacks alone. */
export function figures({
  jacks = JACKS,
}: {
  readonly jacks?: readonly [number, number] | undefined;
}): Promise<readonly Figure[]> {
  return Promise.resolve([...finderFigures(jacks), ...benchFigures()]);
}
