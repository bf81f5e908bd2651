import { expect, test } from 'vitest';
import { conductorLabel, contactLabel, joinOf, neighbourOf } from '../../../components/figures/refs.ts';
import type { ContactRef } from '../../../components/figures/refs.ts';
import { drawLead } from '../../../src/draw/lead.ts';

const drawing = drawLead({
  width: 1080,
  from: { connector: 'din5', form: 'plug', view: 'solder', name: 'left plug' },
  to: { connector: 'trs-3.5', form: 'plug', view: 'mating', name: 'right plug' },
  conductors: [
    { from: '4', to: 'ring', line: 'source', amperes: 5.38e-3 },
    { from: '5', to: 'tip', line: 'sink', amperes: -5.38e-3 },
    { from: '4', to: 'tip', line: 'spare', amperes: null },
    { from: '1', to: 'sleeve', line: 'untold', amperes: null },
  ],
});

const at = (side: 'from' | 'to', contact: ContactRef['contact'], segment = 0): ContactRef => ({
  segment,
  side,
  contact,
});

test('arrow keys go round the pins as they are seen, and over to the other plug', () => {
  // From the solder side a plug reads 1 4 2 5 3 from left to right.
  expect(neighbourOf(drawing, at('from', '4'), 'ArrowRight')).toEqual(at('from', '2'));
  expect(neighbourOf(drawing, at('from', '2'), 'ArrowLeft')).toEqual(at('from', '4'));
  expect(neighbourOf(drawing, at('from', '4'), 'ArrowDown')).toEqual(at('from', '1'));
  // The right plug points away from the lead: its sleeve is the nearest.
  expect(neighbourOf(drawing, at('from', '3'), 'ArrowRight')).toEqual(at('to', 'sleeve'));
  expect(neighbourOf(drawing, at('to', 'tip'), 'ArrowRight')).toBeUndefined();
  expect(neighbourOf(drawing, at('to', 'tip'), 'a')).toBeUndefined();
});

test('every contact can be reached from every other by arrow keys', () => {
  const all = drawing.ends.flatMap(({ side, contacts }) => contacts.map(({ contact }) => at(side, contact)));
  for (const start of all) {
    const reached = new Set([`${start.side} ${start.contact}`]);
    const waiting = [start];
    for (let here = waiting.pop(); here !== undefined; here = waiting.pop()) {
      for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']) {
        const next = neighbourOf(drawing, here, key);
        if (next === undefined || reached.has(`${next.side} ${next.contact}`)) continue;
        reached.add(`${next.side} ${next.contact}`);
        waiting.push(next);
      }
    }
    expect(reached.size, `${start.side} ${start.contact}`).toBe(all.length);
  }
});

test('two contacts make a conductor only from end to end of one lead, the left end first', () => {
  expect(joinOf(at('from', '4'), at('to', 'ring'))).toEqual({ segment: 0, from: '4', to: 'ring' });
  expect(joinOf(at('to', 'ring'), at('from', '4'))).toEqual({ segment: 0, from: '4', to: 'ring' });
  expect(joinOf(at('from', '4'), at('from', '5'))).toBeUndefined();
  expect(joinOf(at('from', '4', 0), at('to', 'tip', 1))).toBeUndefined();
});

test('a contact says its end, its name, its reading and what it is joined to', () => {
  const [left, right] = drawing.ends;
  if (left === undefined || right === undefined) throw new Error('a lead must have two ends');
  const four = contactLabel(drawing, left, '4', 'source line, 5.00 V');
  expect(four).toMatch(/^left plug, pin 4, source line, 5.00 V, joined to (ring and tip|tip and ring)$/);
  expect(contactLabel(drawing, left, '3')).toBe('left plug, pin 3, not joined');
  expect(contactLabel(drawing, right, 'ring')).toBe('right plug, ring, joined to pin 4');
});

test('a conductor says where it goes, its line and which way the current flows', () => {
  const said = drawing.conductors.map(conductorLabel);
  expect(said).toContain('conductor from pin 4 to ring, source, 5.4 mA from left to right');
  expect(said).toContain('conductor from pin 5 to tip, sink, 5.4 mA from right to left');
  expect(said).toContain('conductor from pin 4 to tip, spare');
  expect(said).toContain('conductor from pin 1 to sleeve');
});
