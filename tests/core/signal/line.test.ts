import { describe, expect, test } from 'vitest';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { driveLine } from '../../../src/core/signal/line.ts';
import type { LineRun } from '../../../src/core/signal/line.ts';
import { sendThrough } from '../../../src/core/signal/send.ts';
import { prepareTimeLink } from '../../../src/core/signal/time-link.ts';
import { waveform } from './lines.ts';
import { checkLink } from '../../../src/core/verdict/check.ts';
import type { Outcome } from '../../../src/core/verdict/outcomes.ts';
import type { Driver } from '../../../src/core/wiring/drivers.ts';
import type { Part } from '../../../src/core/wiring/parts.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack, Lead, Link } from '../../../src/core/wiring/link.ts';
import { seededRandom } from '../../support/random.ts';

interface Case {
  readonly circuit?: Driver;
  readonly part?: Part;
  readonly map?: readonly string[];
  readonly lead?: Partial<Lead>;
  readonly values?: Jack['values'];
}

function dinLink({
  circuit = 'driver-5v',
  part = '6N138',
  map = ['4-4', '5-5', '2-2'],
  lead = {},
  values = {},
}: Case = {}): Link {
  return {
    output: makeJack('out', 'din5', 'din', { circuit }),
    branches: [
      {
        input: makeJack('in', 'din5', 'din', { part, values }),
        leads: [makeLead('din5', 'din5', wires(...map), lead)],
      },
    ],
  };
}

const PROGRAM_CHANGE = [0xc0, 0x05];

function lineAmperes(run: LineRun, seconds: number): number {
  return run.transient.amperes('in0 resistor', seconds);
}

describe('a byte through a link', () => {
  test('the line current of a 0 is that of the operating point, 5.38 mA at 5 V, and none in a 1', () => {
    const { wave } = sendBytes([0x55]);
    const run = driveLine(prepareTimeLink(dinLink()), wave);
    // Facts worked by hand: 5 V, 660 ohm, 6N138. The wire and contacts of 1 m take 0.4 ohm of 660, 0.06 %.
    expect(lineAmperes(run, 31e-6) * 1e3).toBeCloseTo(5.38, 2);
    expect(Math.abs(lineAmperes(run, 63e-6))).toBeLessThan(1e-6);
  });

  test('a byte that alternates crosses the threshold once for each of its ten edges, within a microsecond of them', () => {
    const { wave } = sendBytes([0x55]);
    const [led] = driveLine(prepareTimeLink(dinLink()), wave).inputs;
    expect(led?.edges.map(({ level }) => level)).toEqual(wave.edges.map(({ level }) => level));
    led?.edges.forEach(({ seconds }, at) => {
      const late = seconds - (wave.edges[at]?.seconds ?? NaN);
      expect(late).toBeGreaterThan(0);
      expect(late).toBeLessThan(1e-6);
    });
  });

  test('a longer lead makes the edges later', () => {
    const lateOf = (lengthMetres: number): number =>
      driveLine(prepareTimeLink(dinLink({ lead: { lengthMetres } })), sendBytes([0x00]).wave).inputs[0]
        ?.edges[0]?.seconds ?? NaN;
    expect(lateOf(5)).toBeGreaterThan(lateOf(1));
    expect(lateOf(15)).toBeGreaterThan(lateOf(5));
  });

  test('a pulse shorter than the edge of the stage never lights the LED', () => {
    const blip = waveform([
      { seconds: 0, level: false },
      { seconds: 10e-9, level: true },
    ]);
    expect(driveLine(prepareTimeLink(dinLink()), blip).inputs[0]?.edges).toEqual([]);
  });

  test('0.1 uF at pin 2 changes nothing while the grounds are separate', () => {
    const { wave } = sendBytes([0x3c]);
    const plain = driveLine(prepareTimeLink(dinLink()), wave).inputs[0]?.edges ?? [];
    const more =
      driveLine(prepareTimeLink(dinLink(), { timing: { pin2Farads: 0.1e-6 } }), wave).inputs[0]?.edges ?? [];
    expect(more.length).toBe(plain.length);
    more.forEach(({ seconds }, at) =>
      expect(Math.abs(seconds - (plain[at]?.seconds ?? NaN))).toBeLessThan(2e-9),
    );
  });
});

describe('edges used again', () => {
  test.each<[string, Case]>([
    ['5 V output', {}],
    ['3.3 V open-drain output', { circuit: 'driver-3v3' }],
    ['15 m of lead', { lead: { lengthMetres: 15 } }],
    ['crossed lead', { map: ['4-5', '5-4', '2-2'] }],
  ])('give the currents of fresh integration: %s', (_what, one) => {
    const random = seededRandom(7);
    const bytes = Array.from({ length: 8 }, () => random.integer(0, 255));
    const gapSeconds = bytes.map(() => random.next() * 40e-6);
    const { wave } = sendBytes(bytes, { gapSeconds });
    const reusing = prepareTimeLink(dinLink(one));
    const fresh = prepareTimeLink(dinLink(one), { reuse: false });
    const again = driveLine(reusing, wave);
    const anew = driveLine(fresh, wave);
    expect(reusing.work.known.length).toBeLessThan(wave.edges.length);
    expect(fresh.work.known).toEqual([]);
    // Starts that count as equal differ by half a millivolt; over 660 ohm that is under a microampere, an edge moves by nanoseconds.
    for (let when = again.fromSeconds; when < again.toSeconds; when += 0.37e-6)
      expect(Math.abs(lineAmperes(again, when) - lineAmperes(anew, when))).toBeLessThan(20e-6);
    expect(again.inputs[0]?.edges.length).toBe(anew.inputs[0]?.edges.length);
    again.inputs[0]?.edges.forEach(({ seconds }, at) =>
      expect(Math.abs(seconds - (anew.inputs[0]?.edges[at]?.seconds ?? NaN))).toBeLessThan(5e-9),
    );
  });

  test('a second message through the same link solves no edge anew', () => {
    const time = prepareTimeLink(dinLink());
    driveLine(time, sendBytes(PROGRAM_CHANGE).wave);
    const solved = time.work.known.length;
    driveLine(time, sendBytes(PROGRAM_CHANGE).wave);
    expect(time.work.known.length).toBe(solved);
  });
});

describe('every outcome shows itself', () => {
  const heard = (link: Link): { outcome: Outcome; bytes: readonly number[]; kinds: readonly string[] } => {
    const { reception } = sendThrough([{ time: prepareTimeLink(link) }], PROGRAM_CHANGE);
    return {
      outcome: checkLink(link).outcome,
      bytes: reception.bytes,
      kinds: reception.heard.map(({ kind }) => kind),
    };
  };

  test('flows: the bytes arrive', () => {
    expect(heard(dinLink())).toEqual({ outcome: 'flows', bytes: PROGRAM_CHANGE, kinds: ['byte', 'byte'] });
  });

  test('backwards: silence', () => {
    expect(heard(dinLink({ map: ['4-5', '5-4', '2-2'] }))).toEqual({
      outcome: 'backwards',
      bytes: [],
      kinds: [],
    });
  });

  test('no path: silence', () => {
    expect(heard(dinLink({ map: ['4-4', '2-2'] }))).toEqual({ outcome: 'no-path', bytes: [], kinds: [] });
  });

  test('always on: a break', () => {
    const got = heard(dinLink({ map: ['4-4', '2-5'] }));
    expect(got).toEqual({ outcome: 'always-on', bytes: [], kinds: ['break'] });
  });

  test('inverted: nonsense', () => {
    const got = heard(dinLink({ map: ['5-4', '2-5'] }));
    expect(got.outcome).toBe('inverted');
    expect(got.bytes).not.toEqual(PROGRAM_CHANGE);
    expect(got.kinds.length).toBeGreaterThan(0);
  });

  test('starved: silence', () => {
    const joint = { kind: 'joint', side: 'to', contact: '4', ohms: 5000 } as const;
    expect(heard(dinLink({ lead: { faults: [joint] } }))).toEqual({
      outcome: 'starved',
      bytes: [],
      kinds: [],
    });
  });

  test('weak: right at nominal, silence at the worst corner', () => {
    const link = dinLink({ values: { turnOnAmperes: 4.5e-3 } });
    const verdict = checkLink(link);
    expect(verdict.outcome).toBe('weak');
    const send = (corner: Readonly<Record<string, 'low' | 'high' | 'nominal'>>): readonly number[] =>
      sendThrough([{ time: prepareTimeLink(link, { corner }) }], PROGRAM_CHANGE).reception.bytes;
    expect(send({})).toEqual(PROGRAM_CHANGE);
    expect(send(verdict.inputs[0]?.worstCorner ?? {})).not.toEqual(PROGRAM_CHANGE);
  });
});

describe('a chain of links', () => {
  test('each hop adds the delay of its optocoupler', () => {
    const time = prepareTimeLink(dinLink({ part: 'H11L1' }));
    const firstFall = (hops: number): number => {
      const { arrived } = sendThrough(
        Array.from({ length: hops }, () => ({ time })),
        [0x55],
      );
      return arrived.edges[0]?.seconds ?? NaN;
    };
    // H11L1: 1.0 us to on, and the lead's own edge, under 0.3 us.
    const [one, four] = [firstFall(1), firstFall(4)];
    expect(one).toBeGreaterThan(1e-6);
    expect(one).toBeLessThan(1.3e-6);
    expect((four - one) / 3).toBeCloseTo(one, 8);
  });

  test('a slow part wears bits out: 6N138 on 1.2 kohm without its base resistor', () => {
    const time = prepareTimeLink(dinLink({ values: { loadOhms: 1200 } }));
    const arrives = (hops: number): boolean =>
      sendThrough(
        Array.from({ length: hops }, () => ({ time, baseResistor: false })),
        [0x00, 0x7f, 0x00],
      ).outcomes.every(({ outcome }) => outcome === 'same');
    // Skew 5.1 us a hop against half a bit, 16 us: arithmetic allows three hops, not four.
    expect(arrives(3)).toBe(true);
    expect(arrives(4)).toBe(false);
  });
});
