import { describe, expect, test } from 'vitest';
import {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  LEAD_ORIGINS,
  POWERS,
  PRESS_KINDS,
  SETTINGS,
  TALKS,
  THRUS,
} from '../../../src/core/plan/kinds.ts';
import { sayProblem } from '../../../src/core/plan/reading.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { CIRCUITS } from '../../../src/core/wiring/circuits.ts';
import { PARTS } from '../../../src/core/wiring/parts.ts';
import { VALUES } from '../../../src/core/wiring/values.ts';
import { CONNECTORS, CONTACTS, FORMS } from '../../../src/core/wiring/connectors.ts';
import { DIRECTIONS, SIDES } from '../../../src/core/wiring/link.ts';
import { STYLES } from '../../../src/core/wiring/styles.ts';
import { seededRandom } from '../../support/random.ts';
import { PATIENCE, plainPlan, randomPlan } from './plans.ts';

const FIRST_LINK =
  'aRYxLCoBADEOvIl0HmTrqZUIXogMOioIfvL5YUMkqeUkoAlL2Kx_9mDY363kIwieamYGS-nF1nheBOmpebE8-p24o9J8yIqJGDYUaFFWLUIboC-_nZXr75PPI4Gd2Aw';

describe('A shared link', { timeout: PATIENCE }, () => {
  test('gives back the same plan, for three hundred seeded plans', async () => {
    for (let seed = 0; seed < 300; seed++) {
      const plan = randomPlan(seed);
      expect(await readSharedLink(await writeSharedLink(plan))).toEqual({ ok: true, plan });
    }
  });

  test('holds nothing that an address would change', async () => {
    for (let seed = 0; seed < 20; seed++)
      expect(await writeSharedLink(randomPlan(seed))).toMatch(/^a[A-Za-z0-9_-]+$/);
  });

  test('made by the first version of the workbook opens to the plain plan', async () => {
    // Kept as it was written on the day the packing was fixed; it must open for ever.
    const first = FIRST_LINK;
    const { plan } = await readSharedLink(first).then((one) => (one.ok ? one : { plan: undefined }));
    expect(plan).toEqual(plainPlan());
  });

  test('that is empty, of another packing or too long is refused by name', async () => {
    const said = async (text: string): Promise<string> => {
      const reading = await readSharedLink(text);
      return reading.ok ? 'a plan' : reading.problems.map(sayProblem).join('; ');
    };
    expect(await said('')).toBe('the link: expected a link made by this workbook, got nothing');
    expect(await said('zAAAA')).toBe(
      "the link: expected a link made by this workbook, got one that begins with 'z'",
    );
    expect(await said(`a${'A'.repeat(100_000)}`)).toBe(
      'the link: expected at most 100000 characters, got 100001 characters',
    );
    expect(await said('a!!!')).toBe('the link: expected a whole link, got one that is cut short or changed');
  });

  test('that would unpack to more than a page can hold is refused', async () => {
    const bomb = new Blob([new Uint8Array(5_000_000)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const bytes = new Uint8Array(await new Response(bomb).arrayBuffer());
    const text = `a${Buffer.from(bytes).toString('base64url')}`;
    expect(text.length).toBeLessThan(100_000);
    expect((await readSharedLink(text)).ok).toBe(false);
  });

  test('spoiled in 3 000 ways gives a plan or a message that names a place, never a throw', async () => {
    const random = seededRandom(11);
    const alphabet = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_=%'];
    const links = await randomLinks();
    for (let round = 0; round < 3000; round++) {
      const text = random.pick(links);
      const at = random.integer(0, text.length - 1);
      const spoiled = random.chance(0.3)
        ? text.slice(0, at)
        : text.slice(0, at) + random.pick(alphabet) + text.slice(at + 1);
      const reading = await readSharedLink(spoiled);
      if (!reading.ok && reading.problems.some(({ place }) => place === ''))
        throw new Error(`round ${round}: no place named`);
    }
  });

  test('whose numbers point nowhere is refused by the reader, place by place', async () => {
    const random = seededRandom(12);
    const packed = await Promise.all((await randomLinks()).map(unpack));
    let refused = 0;
    for (let round = 0; round < 2000; round++) {
      const odd = random.pick([-1, 99, 0.5, 1e9, null, 'x']);
      const reading = await readSharedLink(
        await pack(changeNumber(random.pick(packed), random.integer(0, 200), odd)),
      );
      if (reading.ok) continue;
      refused++;
      const silent = reading.problems
        .map(sayProblem)
        .find((one) => !/^[a-z].*: expected .+, got .+$/s.test(one));
      if (silent !== undefined) throw new Error(`round ${round}: ${silent}`);
    }
    expect(refused).toBeGreaterThan(500);
  });
});

describe('The closed sets that a link numbers', () => {
  // Members may be added at the end; these must stay where they are, or links made before would change their meaning.
  test.each([
    [CONNECTORS, ['din5', 'din7', 'trs-6.35', 'trs-3.5', 'trs-2.5', 'ts-6.35', 'ts-3.5']],
    [FORMS, ['plug', 'jack']],
    [CONTACTS, ['1', '2', '3', '4', '5', '6', '7', 'shell', 'tip', 'ring', 'sleeve']],
    [DIRECTIONS, ['out', 'in']],
    [SIDES, ['from', 'to']],
    [
      STYLES,
      [
        'din',
        'type-a',
        'type-b',
        'two-contact',
        'two-contact-turned',
        'both-ways',
        'ring-signal',
        'tip-signal',
      ],
    ],
    [
      CIRCUITS,
      [
        'driver-5v',
        'driver-3v3',
        'driver-3v3-push-pull',
        'driver-off',
        'driver-ground',
        'receiver-isolated',
        'receiver-both-ways',
        'receiver-logic',
        'receiver-led',
      ],
    ],
    [PARTS, ['6N138', 'H11L1', 'PC900V', 'unknown']],
    [
      VALUES,
      [
        'supplyVolts',
        'sourceOhms',
        'sourceWatts',
        'sinkOhms',
        'sinkWatts',
        'stageOhms',
        'stageAmperes',
        'railAmperes',
        'railOhms',
        'seriesOhms',
        'seriesWatts',
        'ledShiftVolts',
        'turnOnAmperes',
        'ledAmperes',
        'ledReverseVolts',
        'pullUpOhms',
        'inputOhms',
        'lowVolts',
        'highVolts',
      ],
    ],
    [DEVICE_KINDS, ['other', 'controller', 'pedal', 'instrument', 'hub', 'merger', 'converter', 'computer']],
    [TALKS, ['jacks', 'usb-only', 'wireless']],
    [POWERS, ['unknown', 'own', 'shared', 'battery', 'spare-pins']],
    [EDGES, ['back', 'right', 'front', 'left']],
    [JACK_ROLES, ['plain', 'thru', 'out-or-thru']],
    [THRUS, ['hardware', 'software']],
    [SETTINGS, ['out', 'thru']],
    [LEAD_ORIGINS, ['made', 'shop', 'owned']],
    [PRESS_KINDS, ['program', 'bank', 'control']],
  ] as readonly (readonly [readonly string[], readonly string[]])[])(
    'keep their order: %j',
    (now, frozen) => {
      expect(now.slice(0, frozen.length)).toEqual(frozen);
    },
  );
});

function randomLinks(): Promise<readonly string[]> {
  return Promise.all(Array.from({ length: 40 }, (_, seed) => writeSharedLink(randomPlan(seed))));
}

async function unpack(text: string): Promise<unknown> {
  const stream = new Blob([Buffer.from(text.slice(1), 'base64url')])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(stream).json();
}

async function pack(value: unknown): Promise<string> {
  const stream = new Blob([JSON.stringify(value)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return `a${Buffer.from(await new Response(stream).arrayBuffer()).toString('base64url')}`;
}

/** The packed plan with one of its numbers, counted from the front, put another way. */
function changeNumber(value: unknown, at: number, put: unknown): unknown {
  let count = 0;
  const walk = (one: unknown): unknown => {
    if (Array.isArray(one)) return one.map(walk);
    return typeof one === 'number' && count++ === at ? put : one;
  };
  return walk(value);
}
