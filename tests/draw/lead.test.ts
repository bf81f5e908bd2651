import { describe, expect, test } from 'vitest';
import type { Connector, Contact } from '../../src/core/wiring/index.ts';
import { CONNECTORS, contactsOf, familyOf } from '../../src/core/wiring/index.ts';
import type { Box } from '../../src/draw/geometry.ts';
import type {
  ChainInput,
  ConductorInput,
  LeadDrawing,
  LeadEnd,
  LeadInput,
} from '../../src/draw/lead-shape.ts';
import { drawLead, drawLeadOnPaper } from '../../src/draw/lead.ts';
import { textBox } from '../../src/draw/text.ts';
import { seededRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { boxesOverlap, distanceToBox, pointsAlong } from './paths.ts';

/** Half a stroke and a hair of paper, pixels. */
const CLEAR = 1;

const WIDTHS = [342, 1080] as const;
const LOOKS = (['plug', 'jack'] as const).flatMap((form) =>
  (['mating', 'solder'] as const).map((view) => ({ form, view })),
);

/** 6 and 8 contacts of the DIN connectors with their shells, three times 3, twice 2. */
const ALL_CONTACTS = 6 + 8 + 9 + 4;

function end(connector: Connector, { form, view }: Pick<LeadEnd, 'form' | 'view'>): LeadEnd {
  return { connector, form, view, name: 'left plug' };
}

/** Everything that is wrong with a drawing, in words; empty when a technical illustrator would sign it. */
function faults(drawing: LeadDrawing): string[] {
  const found: string[] = [];
  const labels: { of: string; box: Box }[] = [
    ...drawing.ends.flatMap(({ segment, side, contacts, text }) => [
      ...contacts.map(({ contact, label }) => ({ of: `${segment} ${side} ${contact}`, box: textBox(label) })),
      ...text.map((line) => ({ of: line.text, box: textBox(line) })),
    ]),
    ...drawing.joints.flatMap(({ text }) => text.map((line) => ({ of: line.text, box: textBox(line) }))),
    ...drawing.conductors.map(({ index, segment, labelBox }) => ({
      of: `label ${segment} ${index}`,
      box: labelBox,
    })),
  ];
  labels.forEach((a, i) => {
    if (
      a.box.x < 0 ||
      a.box.y < 0 ||
      a.box.x + a.box.width > drawing.width ||
      a.box.y + a.box.height > drawing.height
    ) {
      found.push(`${a.of} leaves the sheet`);
    }
    for (const b of labels.slice(i + 1))
      if (boxesOverlap(a.box, b.box)) found.push(`${a.of} overlaps ${b.of}`);
  });
  for (const conductor of drawing.conductors) {
    const name = `conductor ${conductor.segment} ${conductor.index} ${conductor.from} to ${conductor.to}`;
    const half = conductor.weight / 2 + CLEAR;
    const points = pointsAlong(conductor.d);
    if (points.some(({ x, y }) => !(x > 2 && y > 2 && x < drawing.width - 2 && y < drawing.height - 2)))
      found.push(`${name} leaves the sheet`);
    for (const { of, box } of labels) {
      if (points.some((point) => distanceToBox(point, box) < half)) found.push(`${name} runs into ${of}`);
    }
    for (const { segment, side, contacts } of drawing.ends) {
      for (const contact of contacts) {
        // The shell is a ring round the pins: a conductor from a pin has to pass over it.
        if (contact.contact === 'shell') continue;
        const own =
          segment === conductor.segment &&
          contact.contact === (side === 'from' ? conductor.from : conductor.to);
        const away = points.map((point) =>
          contact.radius === undefined
            ? distanceToBox(point, contact.box)
            : Math.hypot(point.x - contact.x, point.y - contact.y) - contact.radius,
        );
        if (Math.min(...away) < (own ? -1 : half))
          found.push(`${name} runs into ${segment} ${side} ${contact.contact}`);
        // Paths are rounded to a tenth of a pixel, and the nose of a tip falls short of its box.
        if (own && Math.min(...away) > 1)
          found.push(`${name} does not reach ${segment} ${side} ${contact.contact}`);
      }
    }
  }
  return found;
}

describe.each(WIDTHS)('at a width of %i px', (width) => {
  test.each(CONNECTORS)(
    'a single conductor from any contact of %s to any other keeps clear of names and contacts',
    (left) => {
      const bad: string[] = [];
      let drawn = 0;
      for (const right of CONNECTORS)
        for (const from of contactsOf(left))
          for (const to of contactsOf(right)) {
            // Every view of the left end and, turning the other way, every view of the right one.
            LOOKS.forEach((look, turn) => {
              const other = LOOKS[(drawn + turn) % LOOKS.length] ?? look;
              const conductors: ConductorInput[] = [{ from, to, line: 'source', amperes: 5.38e-3 }];
              const ends = { from: end(left, look), to: { ...end(right, other), name: 'right plug' } };
              const wrong = faults(drawLead({ width, ...ends, conductors }));
              if (wrong.length > 0) {
                bad.push(
                  `${look.form} ${look.view} to ${right} ${other.form} ${other.view}: ${wrong.join('; ')}`,
                );
              }
            });
            drawn += 1;
          }
      expect(bad.slice(0, 5)).toEqual([]);
      expect(drawn).toBe(contactsOf(left).length * ALL_CONTACTS);
    },
    60_000,
  );

  test('300 seeded random leads keep clear of names and contacts', () => {
    const random = seededRandom(width);
    const bad: string[] = [];
    for (let round = 0; round < 300; round += 1) {
      const input = randomLead(random, width);
      const wrong = faults(drawLead(input));
      if (wrong.length > 0)
        bad.push(
          `${round}: ${input.from.connector} ${input.from.form} ${input.from.view} to ${input.to.connector} ${input.to.form} ${input.to.view}: ${wrong.join('; ')}`,
        );
    }
    expect(bad.slice(0, 8)).toEqual([]);
  }, 60_000);

  test('60 seeded random chains of two leads keep clear of names and contacts', () => {
    const random = seededRandom(width + 1);
    const bad: string[] = [];
    for (let round = 0; round < 60; round += 1) {
      const wrong = faults(drawLead(randomChain(random, width)));
      if (wrong.length > 0) bad.push(`${round}: ${wrong.join('; ')}`);
    }
    expect(bad.slice(0, 8)).toEqual([]);
  }, 60_000);
});

/** One to eight conductors, each pair of contacts at most once; some contacts carry several. */
function randomConductors(random: Random, left: Connector, right: Connector): ConductorInput[] {
  const most = Math.max(contactsOf(left).length, contactsOf(right).length);
  const pairs = new Map<string, ConductorInput>();
  const count = 1 + Math.floor(random.next() * most);
  for (let i = 0; i < count; i += 1) {
    const from: Contact = random.pick(contactsOf(left));
    const to: Contact = random.pick(contactsOf(right));
    const amperes = random.pick([null, 0, 5.38e-3, -22.7e-3, -5.38e-3, 1e-4]);
    pairs.set(`${from} ${to}`, {
      from,
      to,
      line: random.pick(['source', 'sink', 'shield', 'spare'] as const),
      amperes,
    });
  }
  return [...pairs.values()];
}

function randomLead(random: Random, width: number): LeadInput {
  const left = random.pick(CONNECTORS);
  const right = random.pick(CONNECTORS);
  return {
    width,
    from: end(left, random.pick(LOOKS)),
    to: { ...end(right, random.pick(LOOKS)), name: 'right plug' },
    conductors: randomConductors(random, left, right),
  };
}

function randomChain(random: Random, width: number): ChainInput {
  const first = randomLead(random, width);
  const second = randomLead(random, width);
  const shared = contactsOf(first.to.connector).filter((contact) =>
    contactsOf(second.from.connector).includes(contact),
  );
  return {
    width,
    segments: [first, second],
    joints: [{ name: 'coupler', touches: shared.map((contact) => ({ before: contact, after: contact })) }],
  };
}

describe('the usual leads', () => {
  const lines = (pairs: string): ConductorInput[] =>
    pairs.split(' ').map((pair) => {
      const [from, to] = pair.split(':') as [Contact, Contact];
      return { from, to, line: 'spare', amperes: null };
    });
  const crossings = (
    width: number,
    left: Connector,
    right: Connector,
    pairs: string,
    form: LeadEnd['form'] = 'plug',
  ) => {
    const view = (connector: Connector) => (familyOf(connector) === 'din' ? 'solder' : 'mating');
    return drawLead({
      width,
      from: { connector: left, form: 'plug', view: view(left), name: 'left plug' },
      to: { connector: right, form, view: view(right), name: 'right plug' },
      conductors: lines(pairs),
    }).crossings;
  };

  test('stands on paper with its plugs side by side, and no wider than that takes', () => {
    const lead = {
      from: { connector: 'din5', form: 'plug', view: 'solder', name: 'output end' },
      to: { connector: 'trs-3.5', form: 'plug', view: 'solder', name: 'input end' },
      conductors: lines('4:ring 5:tip 2:sleeve'),
    } as const;
    const { layout, width } = drawLeadOnPaper(lead);
    expect(layout).toBe('row');
    for (const narrower of [640, 720, 800, 900, 1000].filter((one) => one < width))
      expect(drawLead({ width: narrower, ...lead }).layout).toBe('stack');
  });

  test('has a conductor whose line is not told called by what it joins, on the lead and in words', () => {
    const looks = { form: 'plug', view: 'mating' } as const;
    const input = {
      from: { connector: 'din5', name: 'left plug', ...looks },
      to: { connector: 'trs-3.5', name: 'right plug', ...looks },
      conductors: [{ from: '4', to: 'ring' }],
    } as const;
    for (const width of WIDTHS) {
      const { conductors, textAlternative } = drawLead({ width, ...input });
      expect(conductors.map(({ label }) => label.map(({ text }) => text))).toEqual([['pin 4 to ring']]);
      expect(conductors[0]).toMatchObject({ line: 'untold', amperes: null, arrows: [] });
      expect(textAlternative).toContain(': pin 4 to ring.');
    }
  });

  test.each([
    ['DIN to DIN', 'din5', 'din5', '4:4 5:5 2:2'],
    ['DIN to type-a', 'din5', 'trs-3.5', '4:ring 5:tip 2:sleeve'],
    ['DIN to type-b', 'din5', 'trs-6.35', '4:tip 5:ring 2:sleeve'],
    ['a straight TRS lead', 'trs-3.5', 'trs-3.5', 'tip:tip ring:ring sleeve:sleeve'],
    ['a turned TRS lead', 'trs-3.5', 'trs-3.5', 'tip:ring ring:tip sleeve:sleeve'],
    ['a TS lead', 'ts-6.35', 'ts-6.35', 'tip:tip sleeve:sleeve'],
  ] as const)('%s is drawn side by side without a crossing', (_, left, right, pairs) => {
    expect(crossings(1080, left, right, pairs)).toBe(0);
  });

  test('all pins and the shell of two DIN plugs are drawn with one crossing at most', () => {
    expect(crossings(1080, 'din5', 'din5', '1:1 2:2 3:3 4:4 5:5 shell:shell')).toBeLessThanOrEqual(1);
    expect(crossings(342, 'din5', 'din5', '1:1 2:2 3:3 4:4 5:5 shell:shell')).toBe(0);
  });

  test('a narrow sheet stacks the ends and a wide one sets them side by side', () => {
    const input = {
      from: end('din5', { form: 'plug', view: 'solder' }),
      to: end('trs-3.5', { form: 'plug', view: 'mating' }),
      conductors: [],
    };
    expect(drawLead({ width: 342, ...input }).layout).toBe('stack');
    expect(drawLead({ width: 1080, ...input }).layout).toBe('row');
  });

  test('the height of a side-by-side drawing does not change while up to six conductors are laid', () => {
    const input = {
      width: 1080,
      from: end('din5', { form: 'plug', view: 'solder' }),
      to: end('din5', { form: 'plug', view: 'solder' }),
    };
    const empty = drawLead({ ...input, conductors: [] });
    const full = drawLead({ ...input, conductors: lines('1:1 2:2 3:3 4:4 5:5 shell:shell') });
    expect(full.height).toBe(empty.height);
  });

  test('a conductor to a contact that is not there is refused by name', () => {
    const left = { ...end('ts-6.35', { form: 'plug', view: 'mating' }), name: 'the left plug' };
    const right = end('din5', { form: 'plug', view: 'solder' });
    expect(() => drawLead({ width: 342, from: left, to: right, conductors: lines('ring:4') })).toThrow(
      "lead drawing: the left plug must have the contact that is joined, got 'ring' on a 6.35 mm TS plug",
    );
  });

  test('a lead is said in words that can be wired from', () => {
    const drawing = drawLead({
      width: 1080,
      from: { ...end('din5', { form: 'plug', view: 'solder' }), name: 'left plug' },
      to: { ...end('trs-3.5', { form: 'plug', view: 'mating' }), name: 'right plug' },
      conductors: [
        { from: '4', to: 'ring', line: 'source', amperes: 5.38e-3 },
        { from: '5', to: 'tip', line: 'sink', amperes: -5.38e-3 },
        { from: '2', to: 'sleeve', line: 'shield', amperes: 0 },
      ],
    });
    expect(drawing.textAlternative).toBe(
      'From left plug, a 5-pin DIN plug, to right plug, a 3.5 mm TRS plug: pin 4 to ring (source, 5.4 mA from left to right); ' +
        'pin 5 to tip (sink, 5.4 mA from right to left); pin 2 to sleeve (shield, no current).',
    );
  });
});
