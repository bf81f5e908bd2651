/** Every plug with everything that it may do, written in many ways, is read back as it was meant. */
import { describe, expect, test } from 'vitest';
import { readDeviceLines, sayDevice, sayLineProblem } from '../../../src/core/board/index.ts';
import { wholeDevice } from '../../../src/core/plan/index.ts';
import type { Connector, Style } from '../../../src/core/wiring/index.ts';

interface Plug {
  readonly words: readonly string[];
  readonly connector: Connector;
  readonly style: Style;
}

/** Phone sizes that are not told are 3.5 mm for types A and B, and 6.35 mm for the rest (our choice). */
const PLUGS: readonly Plug[] = [
  { words: ['DIN', '5-pin DIN', '5 pin', 'five-pin DIN', 'din'], connector: 'din5', style: 'din' },
  { words: ['7-pin DIN', '7 pin', 'DIN7'], connector: 'din7', style: 'din' },
  {
    words: ['TRS-A', 'TRS type A', 'TRS A', 'type-A', '3.5 mm TRS-A'],
    connector: 'trs-3.5',
    style: 'type-a',
  },
  { words: ['TRS-B', 'TRS type B', 'type B', 'minijack type B'], connector: 'trs-3.5', style: 'type-b' },
  { words: ['6.35 TRS-A', '1/4" TRS-A', '6.3 mm TRS type A'], connector: 'trs-6.35', style: 'type-a' },
  { words: ['2.5 mm TRS-B'], connector: 'trs-2.5', style: 'type-b' },
  { words: ['TRS signal on the tip', 'TRS tip', 'TRS on tip'], connector: 'trs-6.35', style: 'tip-signal' },
  { words: ['TRS data on ring', 'TRS ring-active'], connector: 'trs-6.35', style: 'ring-signal' },
  { words: ['TS two-contact', 'TS two contacts'], connector: 'ts-6.35', style: 'two-contact' },
];
const WAYS = [
  { words: ['in', 'IN', 'input'], jacks: [['in', 'plain']] },
  { words: ['out', 'output'], jacks: [['out', 'plain']] },
  { words: ['thru', 'through', 'THRU'], jacks: [['out', 'thru']] },
  { words: ['out or thru', 'out/thru', 'thru or out'], jacks: [['out', 'out-or-thru']] },
  {
    words: ['in and thru', 'in/thru', 'in & thru'],
    jacks: [
      ['in', 'plain'],
      ['out', 'thru'],
    ],
  },
] as const;

function jacksOf(text: string) {
  const [line] = readDeviceLines(text);
  if (!line) throw new Error('expected a line');
  if (!line.ok) throw new Error(`${text}: ${sayLineProblem(line.line, line.problem)}`);
  return wholeDevice(line.device).jacks;
}

describe('A line that tells one plug', () => {
  test('is read for every plug and everything that it may do, with a colon and either first', () => {
    for (const plug of PLUGS)
      for (const way of WAYS)
        for (const plugWords of plug.words)
          for (const wayWords of way.words)
            for (const text of [`box: ${plugWords} ${wayWords}`, `box: ${wayWords} ${plugWords}`]) {
              const jacks = jacksOf(text);
              expect([text, jacks.map(({ direction, role }) => [direction, role])]).toEqual([
                text,
                way.jacks,
              ]);
              for (const { connector, style } of jacks)
                expect([text, connector, style]).toEqual([text, plug.connector, plug.style]);
            }
  });

  test('may count, in digits or in words, before or after', () => {
    for (const text of [
      'hub: 3 x DIN out',
      'hub: 3x DIN out',
      'hub: three DIN outs',
      'hub: 3 DIN out',
      'hub: DIN out x 3',
    ])
      expect(
        jacksOf(text).map(({ name }) => name),
        text,
      ).toEqual(['OUT 1', 'OUT 2', 'OUT 3']);
  });

  test('gives each jack a name of its own, and a place along the back that rises', () => {
    const jacks = jacksOf('rack: DIN in, out and thru, 2 x TRS-A out');
    expect(new Set(jacks.map(({ name }) => name)).size).toBe(jacks.length);
    const along = jacks.map(({ alongCentimetres }) => alongCentimetres);
    expect(along).toEqual([...along].sort((one, other) => one - other));
    expect(new Set(along).size).toBe(jacks.length);
  });
});

describe('A line', () => {
  test('may stand in a list: numbers and dashes before it are no part of its name', () => {
    const names = readDeviceLines(
      '1. reverb: DIN in\n2) echo: DIN in\n- drive: DIN in\n* fuzz: TRS-A in\n\n  \n• hub: DIN in',
    );
    expect(names.map((line) => (line.ok ? line.device.name : ''))).toEqual([
      'reverb',
      'echo',
      'drive',
      'fuzz',
      'hub',
    ]);
    expect(names.map(({ line }) => line)).toEqual([1, 2, 3, 4, 7]);
  });

  test('names a channel from 1 to 16, and is asked for one where it is another', () => {
    const channel = (text: string) => {
      const [line] = readDeviceLines(text);
      return line?.ok ? wholeDevice(line.device).channel : line && sayLineProblem(line.line, line.problem);
    };
    for (const text of ['echo, channel 7: DIN in', 'echo (ch 7): DIN in', 'echo: DIN in, ch. 7'])
      expect(channel(text)).toBe(7);
    expect(channel('echo: DIN in')).toBe(0);
    expect(channel('echo ch 17: DIN in')).toBe("Line 1, at 'ch 17': expected a channel from 1 to 16.");
    expect(channel('echo ch 0: DIN in')).toBe("Line 1, at 'ch 0': expected a channel from 1 to 16.");
  });

  test('without jacks, without a name or with a word that is none of a jack says what was expected', () => {
    const problem = (text: string) => {
      const [line] = readDeviceLines(text);
      return line && !line.ok ? sayLineProblem(line.line, line.problem) : undefined;
    };
    expect(problem('echo')).toBe("Line 1: expected jacks after the name, such as 'echo: DIN in and thru'.");
    expect(problem(': DIN in')).toBe("Line 1, at ':': expected a name before the jacks, then a colon.");
    expect(problem('echo: banana in')).toMatch(
      /^Line 1, at 'banana': expected a jack: DIN, or TRS with its type/,
    );
    expect(problem('echo: DIN')).toMatch(/expected in, out or thru beside 'DIN'\.$/);
    expect(problem(`${'e'.repeat(81)}: DIN in`)).toMatch(/expected a name of at most 80 characters\.$/);
    expect(problem('echo: 33 x DIN out')).toBe("Line 1, at '33': expected at most 32 jacks on a device.");
    expect(problem('echo: 20 x DIN out, 20 x TRS-A out')).toMatch(
      /expected at most 32 jacks, and these are 40\.$/,
    );
  });

  test('is said back with everything that was understood', () => {
    const said = (text: string) => {
      const [line] = readDeviceLines(text);
      return line?.ok ? sayDevice(line.device) : undefined;
    };
    expect(said('echo, channel 3: DIN in and thru')).toBe(
      'echo, pedal, channel 3: IN on 5-pin DIN; THRU on 5-pin DIN',
    );
    expect(said('hub: DIN in, TRS-A/B out')).toBe(
      'hub, hub: IN on 5-pin DIN; OUT on 3.5 mm TRS, Type A or Type B',
    );
    expect(said('laptop: USB')).toBe('laptop, computer: USB only');
    expect(said('tablet: wireless only')).toBe('tablet, pedal: wireless');
  });
});
