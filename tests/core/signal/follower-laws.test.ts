/** Laws of what follows an LED, and of lines: against a twin that steps through time, and by counting. */
import { describe, expect, it } from 'vitest';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { delayEdges, follow, throughChain } from '../../../src/core/signal/hop.ts';
import type { Follower } from '../../../src/core/signal/opto-output.ts';
import { receive } from '../../../src/core/signal/receiver.ts';
import { resend } from '../../../src/core/signal/software-thru.ts';
import { edgesUpTo, levelAt, pulsesOf } from '../../../src/core/signal/waveform.ts';
import {
  collectorAmperes,
  makeJack,
  outputStage,
  saturationAmperes,
} from '../../../src/core/wiring/index.ts';
import type { Jack, Part } from '../../../src/core/wiring/index.ts';
import { waveform } from './lines.ts';

const US = 1e-6;
const LIT = { dark: 0, bright: 5.4e-3 };

function followerOf(part: Part, values: Jack['values'] = {}): Extract<Follower, { stage: unknown }> {
  const stage = outputStage(makeJack('in', 'din5', 'din', { part, values }));
  if ('toOnSeconds' in stage) throw new Error(`expected '${part}' to be a transistor`);
  return { stage, lit: LIT };
}

/**
 * The model of the facts sheet stepped through in nanoseconds: di/dt = (a - i) / T; T = ts + K/i above saturation, ta + CM g RL
 * below; nothing happens until the light has filled QD. The moments at which the output passes the middle of its supply.
 */
function stepped(part: Part, values: Jack['values'], onSeconds: number, forSeconds: number) {
  const { stage } = followerOf(part, values);
  const { model, loadOhms, supplyVolts, baseOhms } = stage;
  const saturation = saturationAmperes(stage);
  const below =
    model.bareSeconds + model.loadFarads * Math.min(1, saturation / 5e-3) ** model.loadPower * loadOhms;
  const wake = model.wakeCoulombs[baseOhms > 0 ? 1 : 0] / LIT.bright;
  const read = supplyVolts / 2 / loadOhms;
  const dt = 2e-9;
  let [current, low] = [0, false];
  const passes: number[] = [];
  for (let now = 0; now < forSeconds; now += dt) {
    const target =
      now >= wake && now < onSeconds
        ? collectorAmperes(stage, LIT.bright)
        : now < wake
          ? 0
          : collectorAmperes(stage, 0);
    const constant = current > saturation ? model.storageSeconds + model.tailCoulombs / current : below;
    current = Math.max(0, current + ((target - current) / constant) * dt);
    if (current > read !== low) {
      low = !low;
      passes.push(now);
    }
  }
  return passes;
}

describe('a transistor behind an LED', () => {
  it.each([
    ['6N138', { loadOhms: 1000, baseOhms: 0 }],
    ['6N138', { loadOhms: 1000 }],
    ['6N136', {}],
    ['4N35', {}],
    ['CNY17-2', {}],
    ['PC817', {}],
  ] as const)(
    'of a %s with %o takes hold and lets go when the model stepped through in time does',
    (part, values) => {
      const led = waveform([
        { seconds: 0, level: false },
        { seconds: 96 * US, level: true },
      ]);
      const out = follow(led, followerOf(part, values)).edges.map(({ seconds }) => seconds);
      const twin = stepped(part, values, 96 * US, 200 * US);
      expect(out).toHaveLength(2);
      // Steps of 2 ns, and a slope that changes at saturation: within a hundredth and 20 ns.
      twin.forEach((seconds, at) => {
        const since = at === 0 ? seconds : seconds - 96 * US;
        const given = (out[at] ?? NaN) - (at === 0 ? 0 : 96 * US);
        expect(Math.abs(given - since)).toBeLessThan(0.01 * since + 20e-9);
      });
    },
  );

  it('stays high without light, and low with light that never ends', () => {
    for (const part of ['6N138', '4N35', 'PC817'] as const) {
      const one = followerOf(part);
      expect(follow({ before: true, edges: [] }, one).edges).toEqual([]);
      const lit = follow(waveform([{ seconds: 0, level: false }]), one);
      expect(lit.edges.map(({ level }) => level)).toEqual([false]);
    }
  });

  it('does not move when everything is later by as much', () => {
    const at = (shift: number) =>
      follow(
        waveform([
          { seconds: shift, level: false },
          { seconds: shift + 64 * US, level: true },
        ]),
        followerOf('CNY17-2'),
      ).edges.map(({ seconds }) => seconds - shift);
    const here = at(0);
    at(1e-3).forEach((seconds, place) => expect(seconds).toBeCloseTo(here[place] ?? NaN, 10));
  });

  it('loses a flash that is shorter than the light that its first charge needs', () => {
    const flash = (seconds: number) =>
      follow(
        waveform([
          { seconds: 0, level: false },
          { seconds, level: true },
        ]),
        followerOf('4N35'),
      ).edges.length;
    // 10 nC at 5.4 mA: 1.85 us.
    expect(flash(1.8 * US)).toBe(0);
    expect(flash(32 * US)).toBe(2);
  });
});

describe('hops in a row', () => {
  it('of fixed delays are one hop of their sums, where every pulse lasts', () => {
    const { wave } = sendBytes([0x55, 0x00, 0xff]);
    const hops = [
      [1, 1.2],
      [1, 2],
      [0.075, 0.075],
    ].map(([on = 0, off = 0]) => ({
      kind: 'hardware thru' as const,
      toOnSeconds: on * US,
      toOffSeconds: off * US,
    }));
    const out = throughChain(wave, hops).at(-1)?.output.edges ?? [];
    const whole = delayEdges(wave, { toOnSeconds: 2.075 * US, toOffSeconds: 3.275 * US }).edges;
    expect(out).toHaveLength(whole.length);
    out.forEach(({ seconds, level }, at) => {
      expect(seconds).toBeCloseTo(whole[at]?.seconds ?? NaN, 12);
      expect(level).toBe(whole[at]?.level);
    });
  });

  it('may stand in any order', () => {
    const { wave } = sendBytes([0x2a]);
    const hops = [
      { kind: 'hardware thru' as const, toOnSeconds: 1 * US, toOffSeconds: 1.2 * US },
      { kind: 'hardware thru' as const, toOnSeconds: 1 * US, toOffSeconds: 2 * US },
    ];
    const times = (list: typeof hops) =>
      (throughChain(wave, list).at(-1)?.output.edges ?? []).map(({ seconds }) => Math.round(seconds * 1e12));
    expect(times(hops.toReversed())).toEqual(times(hops));
  });

  it('leave a line alone where there are none', () => {
    expect(throughChain(sendBytes([1]).wave, [])).toEqual([]);
  });
});

describe('bytes sent again', () => {
  const thru = { kind: 'software thru' as const, toOnSeconds: 0, toOffSeconds: 0, latencySeconds: 100 * US };

  it('leave whole bytes after they came, one at a time, and come out as they were', () => {
    const bytes = [0x90, 0x3c, 0x00, 0xff];
    const { wave, bytes: sent } = sendBytes(bytes);
    const copy = resend(wave, thru);
    expect(copy.bytes.map(({ value }) => value)).toEqual(bytes);
    copy.bytes.forEach(({ startSeconds }, at) => {
      const late = startSeconds - (sent[at]?.startSeconds ?? NaN);
      // A byte of 320 us, the latency, and up to a sample of 2 us to notice the start.
      expect(late).toBeGreaterThanOrEqual(420 * US - 1e-9);
      expect(late).toBeLessThan(423 * US);
    });
    expect(receive(copy.wave, {}).heard.map((event) => (event.kind === 'byte' ? event.value : -1))).toEqual(
      bytes,
    );
  });

  it('never overlap, however slow the copy is sent', () => {
    const copy = resend(sendBytes([1, 2, 3, 4]).wave, { ...thru, sender: { clockError: -0.01 } });
    copy.bytes.slice(1).forEach(({ startSeconds }, at) => {
      expect(startSeconds).toBeGreaterThanOrEqual((copy.bytes[at]?.endSeconds ?? NaN) - 1e-12);
    });
  });

  it('are refused a time that cannot be', () => {
    expect(() => resend(sendBytes([1]).wave, { ...thru, latencySeconds: -1 })).toThrow(
      'software thru: latency must be 0 s or more, got -1 s',
    );
  });
});

describe('a line over time', () => {
  const wave = waveform([
    { seconds: 1, level: false },
    { seconds: 2, level: true },
    { seconds: 5, level: false },
  ]);

  it('has at the moment of an edge the new level already', () => {
    expect([0, 1, 1.5, 2, 4.9, 5, 99].map((seconds) => levelAt(wave, seconds))).toEqual([
      true,
      false,
      false,
      true,
      true,
      false,
      false,
    ]);
    expect([0, 1, 2, 2.5, 5].map((seconds) => edgesUpTo(wave, seconds))).toEqual([0, 1, 2, 2, 3]);
  });

  it('is its pulses end to end, without a gap, from the beginning of time to its end', () => {
    const pulses = pulsesOf(wave);
    expect(pulses.map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds])).toEqual([
      [-Infinity, 1],
      [1, 2],
      [2, 5],
      [5, Infinity],
    ]);
    pulses.slice(1).forEach(({ level }, at) => expect(level).toBe(!pulses[at]?.level));
    expect(pulsesOf({ before: false, edges: [] })).toEqual([
      { level: false, fromSeconds: -Infinity, toSeconds: Infinity },
    ]);
  });
});
