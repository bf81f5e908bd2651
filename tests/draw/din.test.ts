import { describe, expect, test } from 'vitest';
import { dinAngle, dinReadingOrder } from '../../src/core/wiring/index.ts';
import type { Contact, DinView } from '../../src/core/wiring/index.ts';
import { dinPin, drawDin } from '../../src/draw/din.ts';

// Angles typed by hand from the tables (a) to (d) of the museum's page and the drawing of the 7-pin socket in the open symbol library.
const SOCKET_FRONT = { '1': 180, '4': 135, '2': 90, '5': 45, '3': 0, '6': 225, '7': 315 };
const SOCKET_BACK = { '1': 0, '4': 45, '2': 90, '5': 135, '3': 180, '6': 315, '7': 225 };
const PLUG_FRONT = { '1': 0, '4': 45, '2': 90, '5': 135, '3': 180, '6': 315, '7': 225 };
const PLUG_BACK = { '1': 180, '4': 135, '2': 90, '5': 45, '3': 0, '6': 225, '7': 315 };

const VIEWS = [
  [
    'the socket from its mating face',
    { form: 'jack', view: 'mating' },
    SOCKET_FRONT,
    '1 4 2 5 3',
    '6 1 4 2 5 3 7',
  ],
  [
    'the socket from its solder side',
    { form: 'jack', view: 'solder' },
    SOCKET_BACK,
    '3 5 2 4 1',
    '7 3 5 2 4 1 6',
  ],
  [
    'the plug from its mating face',
    { form: 'plug', view: 'mating' },
    PLUG_FRONT,
    '3 5 2 4 1',
    '7 3 5 2 4 1 6',
  ],
  [
    'the plug from its solder side',
    { form: 'plug', view: 'solder' },
    PLUG_BACK,
    '1 4 2 5 3',
    '6 1 4 2 5 3 7',
  ],
] as const;

describe.each(VIEWS)('%s', (_, look, angles, five, seven) => {
  const din5: DinView = { connector: 'din5', ...look };
  const din7: DinView = { connector: 'din7', ...look };

  test('has every pin at the angle of its table, key at the bottom', () => {
    for (const pin of ['1', '2', '3', '4', '5'] as const) expect(dinAngle(din5, pin), pin).toBe(angles[pin]);
    for (const pin of ['1', '2', '3', '4', '5', '6', '7'] as const)
      expect(dinAngle(din7, pin), pin).toBe(angles[pin]);
  });

  test('turned half round has the key at the top and every pin opposite', () => {
    for (const pin of ['1', '2', '3', '4', '5'] as const) {
      expect(dinAngle({ ...din5, turned: true }, pin), pin).toBe((angles[pin] + 180) % 360);
    }
  });

  test('reads round the arc in the order of its table', () => {
    expect(dinReadingOrder(din5).join(' ')).toBe(five);
    // Round the arc from the key: the drawing's own order is left to right, so pins are sorted by angle here.
    const round = (['1', '2', '3', '4', '5', '6', '7'] as const).toSorted(
      (a, b) => fromKey(dinAngle(din7, a)) - fromKey(dinAngle(din7, b)),
    );
    expect(round.join(' ')).toBe(seven);
  });

  test('draws each pin of 1.45 mm on a circle of 7.0 mm inside a shell of 13.2 mm', () => {
    const face = drawDin(din7, { x: 0, y: 0 }, 10);
    expect(face.width).toBeCloseTo(132, 9);
    for (const contact of face.contacts) {
      if (contact.contact === 'shell') continue;
      expect(Math.hypot(contact.x, contact.y)).toBeCloseTo(35, 9);
      expect(contact.radius).toBeCloseTo(7.25, 9);
      const radians = (angles[contact.contact as keyof typeof angles] * Math.PI) / 180;
      expect(contact.x).toBeCloseTo(35 * Math.cos(radians), 9);
      expect(contact.y).toBeCloseTo(-35 * Math.sin(radians), 9);
    }
  });
});

/** Degrees clockwise from the key at the bottom. */
function fromKey(angle: number): number {
  return (270 - angle + 360) % 360;
}

test('pins 4 and 5 of a socket stand 2.47 mm up and to the left and right', () => {
  const look: DinView = { connector: 'din5', form: 'jack', view: 'mating' };
  expect(dinPin(look, '4').x).toBeCloseTo(-2.47, 2);
  expect(dinPin(look, '4').y).toBeCloseTo(2.47, 2);
  expect(dinPin(look, '5').x).toBeCloseTo(2.47, 2);
  expect(dinPin(look, '5').y).toBeCloseTo(2.47, 2);
});

test('no two touch shapes of neighbouring pins overlap, and each is at least 24 px across', () => {
  const face = drawDin({ connector: 'din7', form: 'plug', view: 'solder' });
  const reach = 14 * 3.5 * Math.sin(Math.PI / 8);
  expect(2 * reach).toBeGreaterThan(24);
  const pins = face.contacts.filter(({ contact }) => contact !== 'shell');
  for (const a of pins)
    for (const b of pins)
      if (a !== b) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(2 * reach - 1e-9);
});

test('says the view in words', () => {
  expect(drawDin({ connector: 'din5', form: 'plug', view: 'solder' })).toMatchObject({
    caption: 'solder side, key down',
    textAlternative:
      '5-pin DIN plug, solder side, key down. From left to right: pin 1, pin 4, pin 2, pin 5, pin 3. The shell runs round them.',
  });
});

test.each(['6', 'shell', 'tip'] satisfies Contact[])('refuses the angle of %s on a 5-pin face', (contact) => {
  expect(() => dinAngle({ connector: 'din5', form: 'plug', view: 'mating' }, contact)).toThrow(
    `a 5-pin DIN connector: contact must be one of its pins, got '${contact}'`,
  );
});
