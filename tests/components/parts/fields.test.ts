/** Fields as they are rendered: numbers in the unit that is read, choices in words, and every label with its field. */
import { describe, expect, test } from 'vitest';
import SheetChoicesForm from '../../../components/making/SheetChoicesForm.svelte';
import ValueField from '../../../components/bench/ValueField.svelte';
import LeadTable from '../../../components/bench/LeadTable.svelte';
import Choice from '../../../components/parts/Choice.svelte';
import NumberField from '../../../components/parts/NumberField.svelte';
import JourneyFields from '../../../components/time/JourneyFields.svelte';
import { COLOUR_CODES, FIRST_STOCK, NO_CHOICES, PLUG_BODIES } from '../../../src/core/making/index.ts';
import { PLAIN_JOURNEY } from '../../../src/core/signal/index.ts';
import {
  CIRCUITS,
  contactWords,
  contactsOf,
  makeJack,
  makeLead,
  valuesOf,
  wires,
} from '../../../src/core/wiring/index.ts';
import type { Link } from '../../../src/core/wiring/index.ts';
import { attributeValues } from '../../support/html.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

const nothing = (): void => undefined;
const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));

/** The value and the unit of every number field, by its label. */
function numbers(html: string): ReadonlyMap<string, string> {
  const fields = [...html.matchAll(/<label for="([^"]*)">([^<]*)<\/label>\s*<span[^>]*>([\s\S]*?)<\/span>/g)];
  return new Map(
    fields.map(([, id, label = '', inside = '']) => {
      expect(inside).toContain(`id="${id ?? ''}"`);
      return [label, `${attributeValues(inside, 'value')[0] ?? ''} ${wordsOf(inside)}`.trim()];
    }),
  );
}

describe('A number', () => {
  const field = { label: 'Time', unit: 'ms', least: 0, most: 1, onchange: nothing };
  const shown = (value: number, per?: number): string | undefined =>
    numbers(htmlOf(NumberField, { ...field, value, ...(per !== undefined && { per }) })).get('Time');

  test('is shown in its unit without the dust of a change of units', () => {
    expect(shown(0.3)).toBe('0.3 ms');
    expect(shown(0.0021, 1e-3)).toBe('2.1 ms');
    expect(shown(0.07, 0.01)).toBe('7 ms');
    for (let tenths = 1; tenths < 500; tenths++) expect(shown(tenths * 1e-4, 1e-3)).toBe(`${tenths / 10} ms`);
  });
});

describe('A choice', () => {
  test('has its options in words, those that are barred too', () => {
    const html = htmlOf(Choice, {
      label: 'Side',
      value: 'b',
      options: ['a', 'b', 'c'],
      words: { a: 'first', b: 'second', c: 'third' },
      barred: ['c'],
    });
    expect(allOf(html, 'option')).toEqual(['first', 'second', 'third']);
    expect(html.match(/<option[^>]*>/g)?.map((one) => / disabled/.test(one))).toEqual([false, false, true]);
    expect(attributeValues(html, 'for')[0]).toBe(attributeValues(html, 'id')[0]);
  });
});

describe('The values of a circuit', () => {
  test('are shown in milliamperes, microseconds and percent, each with its bounds in reach', () => {
    const factor: Readonly<Record<string, readonly [number, string]>> = {
      A: [1e3, 'mA'],
      s: [1e6, 'µs'],
      '%': [100, '%'],
    };
    for (const circuit of CIRCUITS)
      for (const entry of valuesOf(circuit, 'H11L1')) {
        const [times, unit] = factor[entry.unit] ?? [1, entry.unit];
        const html = htmlOf(ValueField, { entry, value: undefined, onchange: nothing });
        const [number, ...units] = (numbers(html).get(entry.label) ?? '').split(' ');
        expect(Number(number), entry.label).toBeCloseTo(entry.value * times, 9);
        expect(units.join(' ')).toBe(unit);
      }
  });

  test('offer the way back only when they were changed', () => {
    const [entry] = valuesOf('driver-5v', 'H11L1');
    if (!entry) throw new Error('needs a value');
    const back = (value: number | undefined): readonly string[] =>
      allOf(htmlOf(ValueField, { entry, value, onchange: nothing }), 'button');
    expect(back(undefined)).toEqual([]);
    expect(back(entry.most)).toEqual([`Back to ${entry.value} ${entry.unit} (${entry.label})`]);
  });
});

describe('The journey of a message', () => {
  test('shows clocks in percent, and the kind of THRU only where there is one', () => {
    const input = makeJack('in', 'din5', 'din', { part: 'H11L1' });
    const link: Link = { output: makeJack('out', 'din5', 'din'), branches: [{ input, leads: [] }] };
    const fields = (hops: number): string =>
      htmlOf(JourneyFields, {
        link,
        journey: { ...PLAIN_JOURNEY, hops, senderClock: 0.01, receiverClock: -0.005 },
        onchange: nothing,
      });
    const shown = numbers(fields(3));
    expect(shown.get("sender's clock, fast by")).toBe('1 %');
    expect(shown.get("receiver's clock, fast by")).toBe('-0.5 %');
    expect(shown.get('links in a chain')).toBe('3');
    expect([wordsOf(fields(3)), wordsOf(fields(1))].map((words) => words.includes('each THRU is'))).toEqual([
      true,
      false,
    ]);
  });
});

describe('The choices of a build sheet', () => {
  const form = (choices: typeof NO_CHOICES): string =>
    htmlOf(SheetChoicesForm, { lead: LEAD, choices, onlength: nothing, onchange: nothing });

  test('ask for each plug and each core, and for no cable before the reader has one', () => {
    const html = form(NO_CHOICES);
    expect([...numbers(html).keys()]).toEqual(['Length']);
    const labels = allOf(html, 'label');
    for (const { from, to } of LEAD.conductors)
      expect(labels).toContain(`Colour, ${contactWords(from)} to ${contactWords(to)}`);
    // Two plugs, and for each of three cores the usual colour and every other one.
    expect(allOf(html, 'option')).toHaveLength(2 * PLUG_BODIES.length + 3 * (COLOUR_CODES.length + 1));
  });

  test('show the cable and what the plugs take in millimetres', () => {
    const shown = numbers(form({ ...NO_CHOICES, stock: FIRST_STOCK, plugTakesMetres: { from: 7.2e-3 } }));
    expect(shown.get('Cable, outside')).toBe(`${FIRST_STOCK.outsideMetres * 1000} mm`);
    expect(shown.get('Plug at the output end takes')).toBe('7.2 mm');
    expect(shown.get('Plug at the input end takes')).toBe('6 mm');
  });
});

describe('The lead as a table of choices', () => {
  const html = htmlOf(LeadTable, { lead: LEAD, name: 'Lead 1', ontoggle: nothing, onmove: nothing });

  test('has a choice for every contact of the first end', () => {
    expect(attributeValues(html, 'aria-label')).toEqual(
      contactsOf('din5').map((contact) => `Lead 1, ${contactWords(contact)} to`),
    );
    expect(allOf(html, 'option').filter((one) => one === 'nothing')).toHaveLength(contactsOf('din5').length);
  });

  test('has two for a contact that two wires leave, and bars a wire that is there', () => {
    const two = { ...LEAD, conductors: [...LEAD.conductors, ...wires('4-sleeve')] };
    const shown = htmlOf(LeadTable, { lead: two, name: 'Lead 1', ontoggle: nothing, onmove: nothing });
    const labels = attributeValues(shown, 'aria-label').filter((one) => one === 'Lead 1, pin 4 to');
    expect(labels).toHaveLength(2);
    const barred = (shown.match(/<option[^>]* disabled[^>]*>/g) ?? []).length;
    expect(barred).toBe(2);
  });
});
