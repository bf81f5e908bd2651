/** Our operating point of a link in both states against the SPICE engine's, in one run at equal tolerances. */
import { Simulation } from 'eecircuit-engine';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import { prepareLink, settleState } from '../../src/core/verdict/prepare.ts';
import { medianMicroseconds, quantile } from './figures.ts';
import type { Figure } from './figures.ts';

/** The default link as two decks by hand: 5 V output, isolated input, 1 m of 26 AWG, contacts 30 mohm. */
const deck = (stageVolts: number): string => `link
.options reltol=1e-6 abstol=1e-15 vntol=1e-9 gmin=1e-12
vsupply rail 0 5
vstage stage 0 ${stageVolts}
rsource rail out4 220
rt1 out4 p4 30m
rw1 p4 q4 0.1339
rt2 q4 in4 30m
rseries in4 entry 220
dled entry in5 led
dprotect in5 entry protect
rt3 in5 q5 30m
rw2 q5 p5 0.1339
rt4 p5 out5 30m
rsink out5 stage 220
.model led d(is=7.91e-20 n=1.44 rs=1)
.model protect d(is=2.52e-9 n=1.752 rs=0.568)
.op
.end`;

/** A deck of one resistor: what a run costs the engine before it has anything to do. */
const EMPTY = `nothing\nv1 a 0 1\nr1 a 0 1\n.op\n.end`;

const ENGINE_RUNS = 300;

async function engineMicroseconds(engine: Simulation, decks: readonly string[]): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < ENGINE_RUNS; run++) {
    const start = performance.now();
    for (const text of decks) {
      engine.setNetList(text);
      await engine.runSim();
    }
    times.push((performance.now() - start) * 1e3);
  }
  return quantile(times.slice(ENGINE_RUNS / 10), 0.5);
}

/** Circuit compiled, junctions cold, engine warm. */
export async function figures(): Promise<readonly Figure[]> {
  const engine = new Simulation();
  await engine.start();
  const theirs = await engineMicroseconds(engine, [deck(5), deck(0)]);
  const overhead = await engineMicroseconds(engine, [EMPTY]);
  const prepared = prepareLink(
    {
      output: makeJack('out', 'din5', 'din'),
      branches: [
        {
          input: makeJack('in', 'din5', 'din'),
          leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
        },
      ],
    },
    'separate',
  );
  const ours = medianMicroseconds(
    () => {
      settleState(prepared, 'idle');
      settleState(prepared, 'active');
    },
    2000,
    25,
  );
  return [
    { name: 'operating point, both states: ours', value: ours, unit: 'us' },
    { name: 'operating point, both states: engine, two runs', value: theirs, unit: 'us' },
    { name: 'engine: fixed cost of one run', value: overhead, unit: 'us' },
    { name: 'operating point, both states: times faster', value: theirs / ours, unit: 'x', atLeast: 100 },
    { name: 'the same, fixed cost of the runs taken off', value: (theirs - 2 * overhead) / ours, unit: 'x' },
  ];
}
