import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { dinAngle } from '../../../src/core/wiring/din-face.ts';
import type { Contact } from '../../../src/core/wiring/connectors.ts';
import { cableSheet } from '../../../src/core/making/build-sheet.ts';
import { cutLength, sayStrip } from '../../../src/core/making/lengths.ts';
import { NO_CHOICES } from '../../../src/core/making/sheet-choices.ts';
import { COLOUR_CODES, USUAL_COLOURS, colourWords } from '../../../src/core/making/colours.ts';
import { fullRows, proofRows } from '../../../src/core/making/proof-rows.ts';
import { leadPairs } from '../../../src/core/making/lead-table.ts';
import { proveLead } from '../../../src/core/making/prove.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';

const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'), { name: 'to the pedal' });
const link = {
  output: makeJack('out', 'din5', 'din'),
  branches: [{ input: makeJack('in', 'trs-3.5', 'type-a'), leads: [lead] }],
};

describe('the sheet of a lead', () => {
  const sheet = cableSheet(lead, link);

  it('names each conductor with its line, contacts and colour', () => {
    expect(sheet.rows.map(({ line, from, to, colour }) => [line, from, to, colour])).toEqual([
      ['source', 'pin 4', 'ring', 'red'],
      ['sink', 'pin 5', 'tip', 'white'],
      ['shield', 'pin 2', 'sleeve', 'the shield itself'],
    ]);
    expect(cableSheet(lead, undefined).rows.every(({ line }) => line === 'spare')).toBe(true);
  });

  it('cuts 2 % and 10 cm more, rounded up to a centimetre', () => {
    // 1 m: 1.02 + 0.10 = 1.12 m; 3 m: 3.06 + 0.10 = 3.16 m; 0.333 m: 0.43966 m.
    expect([1, 3, 0.333].map(cutLength)).toEqual([1.12, 3.16, 0.44]);
    expect(sheet.cutWords).toBe(
      'Cut 1.12 m of cable of 2 cores and a shield for a lead of 1.00 m: 2 % and 5 cm a plug more (common practice).',
    );
  });

  it('writes the viewing side and the key on a DIN plug, and warns of the mirror image', () => {
    expect(sheet.ends.from.view).toBe('solder side, key at the bottom');
    expect(sheet.mirrorWarning).toMatch(/left to right 1 4 2 5 3/);
    expect(
      cableSheet(makeLead('trs-3.5', 'trs-3.5', wires('tip-tip')), undefined).mirrorWarning,
    ).toBeUndefined();
  });

  it('gives the pins of a 7-pin plug in the order in which they are drawn from the solder side', () => {
    // From straight down, clockwise: angles count against the clock from the right.
    const place = (pin: Contact): number =>
      (dinAngle({ connector: 'din7', form: 'plug', view: 'solder' }, pin) + 90) % 360;
    const order = (['1', '2', '3', '4', '5', '6', '7'] as const).toSorted((a, b) => place(b) - place(a));
    const { mirrorWarning } = cableSheet(makeLead('din7', 'din7', wires('4-4')), undefined);
    expect(order.join(' ')).toBe('6 1 4 2 5 3 7');
    expect(mirrorWarning).toContain(order.join(' '));
  });

  it('says strip lengths in millimetres, every one of them common practice', () => {
    expect(sheet.lengths.map(sayStrip)).toEqual(['12 to 20 mm', '3 to 5 mm', '3 mm']);
    expect(sheet.lengths.every(({ status }) => status === 'P')).toBe(true);
  });

  it('flags stock that will not do', () => {
    const stock = { cores: 1, shielded: true, outsideMetres: 6.5e-3 };
    const { problems } = cableSheet(lead, link, { ...NO_CHOICES, stock, plugTakesMetres: { to: 5e-3 } });
    expect(problems).toEqual([
      'This cable has too few cores: 2 needed beside the shield, 1 in the cable.',
      'This cable is too thick for the plug at the input end: 6.5 mm cable, 5 mm at most.',
    ]);
    expect(
      cableSheet(lead, link, { ...NO_CHOICES, stock: { ...stock, cores: 2, outsideMetres: 4e-3 } }).problems,
    ).toEqual([]);
    expect(sheet.problems).toEqual([]);
  });

  it('needs a third core where the cable has no shield, and says what the standard asks for', () => {
    const { rows, problems } = cableSheet(lead, link, {
      ...NO_CHOICES,
      stock: { cores: 2, shielded: false, outsideMetres: 4e-3 },
    });
    expect(rows.map(({ isShield }) => isShield)).toEqual([false, false, false]);
    expect(problems[0]).toBe('This cable has too few cores: 3 needed beside the shield, 2 in the cable.');
    expect(problems[1]).toMatch(/shielded twisted pair/);
  });

  it('refuses two conductors of one colour, and green-and-yellow', () => {
    const { problems } = cableSheet(lead, link, { ...NO_CHOICES, colours: ['RD', 'RD', 'GNYE'] });
    expect(problems.join(' ')).toMatch(/same colour, RD.*protective earth/);
  });

  it('has cautions that exist in the reference', () => {
    const known = JSON.parse(
      readFileSync(new URL('../../../content/reference/cautions.json', import.meta.url), 'utf8'),
    ) as { id: string }[];
    const all = [...sheet.cautions, ...cableSheet(lead, undefined).cautions];
    for (const { id } of all) expect(known.map((one) => one.id)).toContain(id);
    expect(all.map(({ id }) => id)).toContain('powered-pins');
  });
});

describe('the proof table', () => {
  it('asks for each conductor, then for silence, and covers every two contacts that must not touch', () => {
    const rows = proofRows(lead);
    expect(rows.slice(0, 3).map(({ words, expects }) => [words, expects])[0]).toEqual([
      'pin 4 at the output end to ring at the input end, still and with each plug moved',
      'beep',
    ]);
    const silent = rows.filter(({ expects }) => expects === 'silent').flatMap(({ places }) => places);
    // 9 contacts make 36 pairs; 3 of them are joined.
    expect(leadPairs(lead)).toHaveLength(36);
    expect(silent).toHaveLength(33);
    expect(new Set(silent.map((place) => JSON.stringify(place))).size).toBe(33);
  });

  it('proves the lead when all of it is ticked', () => {
    const readings = proofRows(lead).flatMap(({ expects, places }) =>
      places.map((place) => ({ ...place, says: expects })),
    );
    const proof = proveLead(lead, readings);
    expect(proof.state).toBe('as-planned');
    // What is silent while the lead lies still stays silent when a plug is moved: those places need no reading.
    expect(proof.sentence).toBe('The lead is as planned: every reading of the full table agrees.');
    expect(proveLead(lead, readings.slice(1)).sentence).toMatch(/^So far the lead is as planned; 1 places/);
  });
});

it('spells the colours of IEC 60757, and never uses the earth colours for a core', () => {
  expect(COLOUR_CODES).toHaveLength(15);
  expect(colourWords('TQ')).toBe('turquoise');
  expect(USUAL_COLOURS).not.toContain('GNYE');
});

describe('the full proof', () => {
  it('has a row for every pair, and ends as planned when every row agrees, as the short one does', () => {
    // 6 contacts of a DIN plug with its shell and 3 of a TRS plug: 36 pairs, 3 of them joined.
    const rows = fullRows(lead);
    expect(rows).toHaveLength(36);
    expect(rows.filter(({ expects }) => expects === 'beep')).toHaveLength(3);
    for (const table of [rows, proofRows(lead)]) {
      const readings = table.flatMap(({ places, expects }) =>
        places.map((place) => ({ ...place, says: expects })),
      );
      expect(proveLead(lead, readings).sentence).toBe(
        'The lead is as planned: every reading of the full table agrees.',
      );
    }
  });
});
