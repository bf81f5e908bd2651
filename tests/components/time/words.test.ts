/** The words and links of the page Bytes on the wire, held to the core that encodes and judges them. */
import { describe, expect, test } from 'vitest';
import {
  FIELDS,
  ITEM_KINDS,
  REAL_TIMES,
  example,
  kindWords,
  readHex,
} from '../../../components/time/messages.ts';
import { OUTPUTS, WIRINGS, stationLink, wiredAs, wiringOf } from '../../../components/time/station.ts';
import type { Station } from '../../../components/time/station.ts';
import { bytesOf } from '../../../src/core/signal/index.ts';
import type { Item } from '../../../src/core/signal/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { PARTS, makeJack } from '../../../src/core/wiring/index.ts';

/** A kind's example with one of its numbers changed. */
const withNumber = (item: Item, name: string, value: number): Item => ({ ...item, [name]: value }) as Item;

describe('Messages to choose from', () => {
  test.each(ITEM_KINDS)(
    '%s: its example has every field that the page asks for, and becomes bytes',
    (kind) => {
      const item = example(kind);
      expect(item.kind).toBe(kind);
      for (const { name } of FIELDS[kind]) expect(item).toHaveProperty(name, expect.any(Number));
      const bytes = bytesOf([item], false);
      expect(bytes.length).toBeGreaterThan(0);
      for (const byte of bytes) expect(byte).toBeLessThanOrEqual(0xff);
    },
  );

  test('take every number from nothing to the most that the page allows, and the core refuses the next', () => {
    for (const kind of ITEM_KINDS)
      for (const { name, most } of FIELDS[kind]) {
        for (const value of [0, most])
          expect(
            () => bytesOf([withNumber(example(kind), name, value)], false),
            `${kind} ${name}`,
          ).not.toThrow();
        expect(
          () => bytesOf([withNumber(example(kind), name, most + 1)], false),
          `${kind} ${name}`,
        ).toThrow();
      }
  });

  test('are all called differently, and a real-time message is one byte', () => {
    expect(new Set(ITEM_KINDS.map(kindWords)).size).toBe(ITEM_KINDS.length);
    for (const signal of REAL_TIMES) expect(bytesOf([{ kind: 'real-time', signal }], false)).toHaveLength(1);
  });
});

describe('Bytes typed by hand', () => {
  test('are read in hex, with spaces, commas and 0x', () => {
    expect(readHex('90 3C 27', 0xff)).toEqual([0x90, 0x3c, 0x27]);
    expect(readHex('0x7f,1 , fF', 0xff)).toEqual([0x7f, 1, 0xff]);
  });

  test('are refused by name where one is too large, no hex, or missing', () => {
    expect(readHex('01 80', 0x7f)).toBe("bytes: expected hex from 00 to 7F, got '80'");
    expect(readHex('1 G2', 0xff)).toBe("bytes: expected hex from 00 to FF, got 'G2'");
    expect(readHex('100', 0xff)).toBe("bytes: expected hex from 00 to FF, got '100'");
    expect(readHex(' , ', 0xff)).toBe('bytes: expected at least one, got none');
  });
});

describe('The link to send through', () => {
  const station: Station = { circuit: 'driver-5v', part: 'H11L1', lengthMetres: 2, wiring: 'line to line' };

  test('has the outcome that its wiring says: a current, one the wrong way round, and none', () => {
    const outcomes = WIRINGS.map((wiring) => checkLink(stationLink({ ...station, wiring })).outcome);
    expect(outcomes).toEqual(['flows', 'backwards', 'no-path']);
  });

  test('can be solved with every output and part that is to be chosen', () => {
    for (const circuit of OUTPUTS)
      for (const part of PARTS)
        expect(checkLink(stationLink({ ...station, circuit, part })).outcome, `${circuit} ${part}`).not.toBe(
          'unsolved',
        );
  });

  test('keeps the length and the values that were set', () => {
    const link = stationLink({ ...station, lengthMetres: 15, values: { seriesOhms: 330 } });
    expect(link.branches[0]?.leads[0]?.lengthMetres).toBe(15);
    expect(link.branches[0]?.input.values).toEqual({ seriesOhms: 330 });
  });

  test('knows its wiring again between any two jacks, and tells none where it is none of these', () => {
    const input = makeJack('in', 'trs-3.5', 'type-b');
    const output = makeJack('out', 'din5', 'din');
    for (const wiring of WIRINGS) {
      const laid = wiredAs(output, input, wiring);
      expect(wiringOf(output, input, laid)).toBe(wiring);
      expect(wiringOf(output, input, [...laid].reverse())).toBe(wiring);
    }
    expect(wiringOf(output, input, [])).toBeUndefined();
  });
});
