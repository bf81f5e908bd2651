/** The output of an input in volts, held against the edges and the levels that the same model tells in closed form. */
import { describe, expect, test } from 'vitest';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { outputShape, outputVolts, throughTransistor } from '../../../src/core/signal/opto-output.ts';
import type { LitStage } from '../../../src/core/signal/opto-output.ts';
import { outputFacts, outputTrace } from '../../../src/core/signal/output-trace.ts';
import { sendThrough } from '../../../src/core/signal/send.ts';
import { prepareTimeLink } from '../../../src/core/signal/time-link.ts';
import type { TimeLink } from '../../../src/core/signal/time-link.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';
import { outputStage } from '../../../src/core/wiring/output-stage.ts';

const US = 1e-6;

function timed(input: Partial<Jack>): TimeLink {
  return prepareTimeLink({
    output: makeJack('out', 'din5', 'din'),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', input),
        leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))],
      },
    ],
  });
}

function lit(values: Jack['values']): LitStage {
  const stage = outputStage(makeJack('in', 'din5', 'din', { part: '4N35', values }));
  if (!('model' in stage)) throw new Error('4N35: needs a transistor');
  return { stage, lit: { dark: 0, bright: 5.7e-3 } };
}

describe('the output in volts', () => {
  test('passes the middle of its supply at every edge of the line that is read', () => {
    for (const loadOhms of [360, 1000, 4700]) {
      const stage = lit({ loadOhms });
      const { wave } = sendBytes([0x90, 0x3c, 0x40]);
      const { edges } = throughTransistor(wave, stage);
      expect(edges.length).toBeGreaterThan(3);
      const volts = outputVolts(
        wave,
        stage,
        edges.map(({ seconds }) => seconds),
      );
      for (const one of volts) expect(one).toBeCloseTo(2.5, 6);
    }
  });

  test('rests at the supply, comes down as far as its shape says, and takes its times from 10 to 90 %', () => {
    // 1 ms of light and 1 ms of dark, in steps of 10 ns: the crossings of 10 and 90 % are found on that grid.
    const stage = lit({ loadOhms: 1000 });
    const shape = outputShape(stage);
    const wave = {
      before: true,
      edges: [
        { seconds: 0, level: false },
        { seconds: 1e-3, level: true },
      ],
    };
    const step = 10e-9;
    const moments = Array.from({ length: 200_000 }, (_, at) => at * step);
    const volts = outputVolts(wave, stage, moments);
    expect(outputVolts(wave, stage, [-1e-6])).toEqual([5]);
    expect(Math.min(...volts.slice(0, 100_000))).toBeCloseTo(shape.lowVolts, 6);
    const swing = shape.highVolts - shape.lowVolts;
    const [low, high] = [shape.lowVolts + 0.1 * swing, shape.highVolts - 0.1 * swing];
    const dark = volts.slice(100_000);
    const rise = (dark.findIndex((one) => one > high) - dark.findIndex((one) => one > low)) * step;
    const fall = (volts.findIndex((one) => one < low) - volts.findIndex((one) => one < high)) * step;
    expect(Math.abs(rise / shape.riseSeconds - 1)).toBeLessThan(0.01);
    expect(Math.abs(fall / shape.fallSeconds - 1)).toBeLessThan(0.01);
  });

  test('of a link is low and high where its line is read so, whatever stands behind the LED', () => {
    for (const part of ['4N35', '6N138', 'H11L1'] as const) {
      const time = timed({ part });
      const { legs } = sendThrough([{ time }], [0x55]);
      const run = legs[0];
      if (!run) throw new Error('sending: needs a leg');
      const trace = outputTrace(time, run, -16 * US, 320 * US);
      const { readVolts } = outputFacts(time);
      const before = (seconds: number): boolean =>
        run.output.edges.findLast((edge) => edge.seconds <= seconds)?.level ?? run.output.before;
      const near = (seconds: number): boolean =>
        run.output.edges.some((edge) => Math.abs(edge.seconds - seconds) < US);
      for (const [seconds, volts] of trace)
        if (!near(seconds)) expect(volts > readVolts).toBe(before(seconds));
    }
  });

  test('tells the current that lights the LED as the loop gives it, and the levels of a logic part', () => {
    // 5 V, 660 ohm: 5.38 mA through a 6N138 (workbook's table of default circuits).
    expect(outputFacts(timed({ part: '6N138' })).litAmperes * 1e3).toBeCloseTo(5.38, 2);
    expect(outputFacts(timed({ part: 'H11L1' }))).toMatchObject({
      lowVolts: 0.2,
      highVolts: 5,
      readVolts: 2.5,
    });
  });
});
