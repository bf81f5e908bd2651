/** What of a part each check is about: what a drawing of the part offers to be touched. */
import { describe, expect, test } from 'vitest';
import { BENCH_BOARDS, answerFaults } from '../../../src/core/faults/index.ts';
import type { BenchBoard, ObservationChoice, RoundAnswer } from '../../../src/core/faults/index.ts';
import { SIDES, contactWords, contactsOf, familyOf } from '../../../src/core/wiring/index.ts';
import type { Contact } from '../../../src/core/wiring/index.ts';

const round = (board: BenchBoard): RoundAnswer =>
  answerFaults({ kind: 'round', board, hidden: 7, made: [], end: undefined }) as RoundAnswer;
const at = (board: BenchBoard, place: string): readonly ObservationChoice[] =>
  round(board).choices.filter((one) => one.place === place);

describe.each(BENCH_BOARDS)('On the board ‘%s’', (board) => {
  const { leads, choices } = round(board);

  test('each lead is there as it should be, under the name of its place', () => {
    const places = new Set(choices.map(({ place }) => place).filter((place) => place.startsWith('lead')));
    expect(new Set(leads.map(({ name }) => name))).toEqual(places);
  });

  test('a check of a lead is about plugs and contacts that it has, and its words name the same contacts', () => {
    for (const lead of leads)
      for (const { words, spots } of at(board, lead.name)) {
        const own = SIDES.flatMap((side) => [
          `${side} plug`,
          ...contactsOf(lead[side].connector).map((contact) => `${side} ${contact}`),
        ]);
        for (const spot of spots) {
          expect(own).toContain(spot);
          const [, contact = ''] = spot.split(' ');
          if (contact !== 'plug') expect(words).toContain(contactWords(contact as Contact));
        }
      }
  });

  test('every wire that carries the loop has checks along it, and each plug has its looks', () => {
    for (const lead of leads) {
      const checks = at(board, lead.name);
      // Source and sink are measured; of the three wires only the shield has no check of its own.
      const along = lead.conductors.filter(({ from, to }) =>
        checks.some(({ spots }) => spots.includes(`from ${from}`) && spots.includes(`to ${to}`)),
      );
      expect(along).toHaveLength(2);
      for (const side of SIDES) {
        const looks = checks.filter(({ spots }) => spots.includes(`${side} plug`));
        expect(looks).toHaveLength(familyOf(lead[side].connector) === 'din' ? 2 : 3);
      }
    }
  });

  test('a check of a device is about its lamp, its display, a jack, or all of it', () => {
    const devices = choices.filter(({ place }) => !place.startsWith('lead'));
    for (const { spots } of devices)
      expect(spots.filter((spot) => !['lamp', 'display', 'jack'].includes(spot))).toEqual([]);
    for (const place of new Set(devices.map((one) => one.place)))
      for (const spot of ['lamp', 'display', 'jack'] as const)
        expect(at(board, place).some(({ spots }) => spots.includes(spot))).toBe(true);
  });
});
