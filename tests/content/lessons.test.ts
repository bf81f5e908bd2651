import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { example, type Item } from '../../components/time/messages.ts';
import type { Pile } from '../../components/lesson/suspects.ts';
import type { Journey } from '../../components/time/sending.ts';
import {
  RECEIVERS,
  atMetres,
  edgesOf,
  hopsOf,
  sayBits,
  sayBytes,
  sayHex,
  sayLongest,
  sendOver,
} from '../../components/lesson/in-time.ts';
import {
  boardFrom,
  shownDepth,
  splitFrom,
  type AuthoredBoard,
} from '../../components/lesson/lesson-boards.ts';
import { proofOf, type AuthoredReading } from '../../components/lesson/lesson-proofs.ts';
import { pileFrom, symptomGroups, type AuthoredPile } from '../../components/lesson/lesson-suspects.ts';
import { meterOn, sayMeter, underTestFrom, type LessonJacks } from '../../components/lesson/lesson-jacks.ts';
import {
  linkFrom,
  say,
  searchFor,
  type AuthoredLink,
  type LessonLinks,
} from '../../components/lesson/lesson-links.ts';
import { ADAPTER_METRES, STANDARD_METRES, valuesOf, wireOhmsPerMetre } from '../../src/core/wiring/index.ts';
import type { Lead, State } from '../../src/core/wiring/index.ts';
import { BOARD_FAULTS, bitsOfObservation } from '../../src/core/faults/index.ts';
import { STANDARD_EDGE_SECONDS, bitCells } from '../../src/core/signal/index.ts';
import { boardFacts } from '../../src/core/planner/index.ts';
import { cableSheet, madeLead, proofRows, tableOf } from '../../src/core/making/index.ts';
import type { Proof } from '../../src/core/making/index.ts';
import { checkBoard, timePress } from '../../src/core/board/index.ts';
import { checkLink } from '../../src/core/verdict/index.ts';
import type { LinkVerdict } from '../../src/core/verdict/index.ts';
import type { PressItem } from '../../src/core/plan/index.ts';
import { dinReadingOrder } from '../../src/draw/index.ts';
import { lessonFolders, questionIn, readLesson } from '../support/lesson-text.ts';
import { gradeOf, sentencesOf, syllablesOf, wordsOf } from '../support/readability.ts';

/** A file of data beside a lesson, or nothing of the kind. */
function dataOf(folder: string, name: string): Readonly<Record<string, unknown>> {
  const path = join('content/lessons', folder, name);
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>) : {};
}

const LESSONS = lessonFolders().map((folder) => ({
  ...readLesson(folder),
  links: dataOf(folder, 'links.json') as LessonLinks,
  jacks: dataOf(folder, 'jacks.json') as LessonJacks,
}));
const PARTS = LESSONS.flatMap(({ folder, parts }) =>
  parts.map((part, at) => ({ name: `${folder} part ${at + 1}`, ...part })),
);
const LINKS = LESSONS.flatMap(({ folder, links }) =>
  Object.entries(links).map(([name, link]) => ({ name: `${folder} ${name}`, link })),
);

/** Figures and widgets that show a solved circuit, and so must stand after the question. */
const SHOWS =
  /<(LessonBench|Compare|Margins|Counts|SendByte|TurnPlug|SendBench|Timing|Bars|Bytes|ProbeJack|NextStep|SolderCups|StripEnd|ProveLead|TickProof|SplitSuspects|Symptoms|SplitWays|BoardWays|PressWays|PriceWays)\b/g;
const FIGURES =
  /<(?:LessonBench|Compare|Margins|Counts|PlugFaces|Figure|SendBench|Timing|Bars|Bytes|ProbeJack|NextStep|SolderCups|StripEnd|ProveLead|TickProof|SplitSuspects|Symptoms|SplitWays|BoardWays|PressWays|PriceWays)\s+n=\{(\d+)\}/g;
/** Widgets in which the reader does what the lesson is about: a lesson needs one, and a bench is heavy enough for two. */
const LIVE =
  /<(?:LessonBench|SendBench|ProbeJack|SolderCups|ProveLead|TickProof|SplitSuspects|SplitWays|BoardWays|PressWays)\b/g;
const BENCHES = /<(?:LessonBench|SendBench)\b/g;

/** Fewest and most words of a part: the paragraphs, the question and its answers. */
const PART_WORDS = [60, 220] as const;
/** A reason is one or two sentences. */
const REASON_WORDS = 40;
/** Grade 9 is read at fourteen. */
const GRADE = 9;

function linksOf(number: string): LessonLinks {
  const found = LESSONS.find(({ folder }) => folder.startsWith(number));
  if (found === undefined) throw new Error(`lesson ${number}: needs a folder, got none`);
  return found.links;
}

function linkNamed(number: string, name: string): AuthoredLink {
  const found = linksOf(number)[name];
  if (found === undefined) throw new Error(`lesson ${number}: needs a link '${name}', got none`);
  return found;
}

function solved(number: string, name: string): LinkVerdict {
  return checkLink(linkFrom(linkNamed(number, name)));
}

function active(number: string, name: string): number {
  return solved(number, name).inputs[0]?.active ?? NaN;
}

function sourceResistor(verdict: LinkVerdict, state: State): number {
  return verdict.readings[state].parts.find(({ part }) => part.role === 'source-resistor')?.amperes ?? NaN;
}

describe('The measure of readability', () => {
  test('counts syllables as they are spoken', () => {
    const words = { wire: 1, table: 2, joined: 1, ended: 2, changes: 2, resistance: 3, message: 2 };
    expect(Object.keys(words).map((word) => [word, syllablesOf(word)])).toEqual(Object.entries(words));
  });

  test('gives the grade of two sentences worked out by hand', () => {
    // 12 words, 2 sentences, 12 syllables: 0.39 x 6 + 11.8 x 1 - 15.59.
    const text = 'The cat sat on the mat. The dog ran to the door.';
    expect(sentencesOf(text).length).toBe(2);
    expect(wordsOf(text).length).toBe(12);
    expect(gradeOf(text)).toBeCloseTo(-1.45, 6);
  });

  test('finds a text too hard that is', () => {
    const text =
      'Notwithstanding considerable environmental variability, unidirectional optoelectronic isolation characteristically guarantees uninterrupted galvanic separation of interconnected instruments.';
    expect(gradeOf(text)).toBeGreaterThan(GRADE);
  });
});

describe('The form of a lesson', () => {
  test('there are lessons, and they are numbered without a gap', () => {
    expect(LESSONS.length).toBeGreaterThanOrEqual(3);
    expect(LESSONS.map(({ folder }) => Number(folder.slice(0, 2)))).toEqual(LESSONS.map((_, at) => at + 1));
  });

  test.each(LESSONS)('$folder opens with a question and has three to five parts in order', (lesson) => {
    expect(lesson.frontMatter).toMatch(/^question: .+\?$/m);
    expect(lesson.parts.length).toBeGreaterThanOrEqual(3);
    expect(lesson.parts.length).toBeLessThanOrEqual(5);
    const numbers = [...lesson.body.matchAll(/<Part n=\{(\d+)\}/g)].map(([, number]) => Number(number));
    expect(numbers).toEqual(lesson.parts.map((_, at) => at + 1));
  });

  test.each(LESSONS)(
    '$folder numbers its figures in a row, has a live widget, and at most two benches',
    ({ body }) => {
      const numbers = [...body.matchAll(FIGURES)].map(([, number]) => Number(number));
      expect(numbers).toEqual(numbers.map((_, at) => at + 1));
      expect(body.match(LIVE)?.length ?? 0).toBeGreaterThanOrEqual(1);
      expect(body.match(BENCHES)?.length ?? 0).toBeLessThanOrEqual(2);
    },
  );

  test.each(PARTS)('$name asks one question before it shows the circuit', ({ source }) => {
    expect(source.match(/<Predict\b/g)?.length).toBe(1);
    expect(questionIn(source)).toMatch(/\?$/);
    const [before = '', after = ''] = source.split('<Predict');
    expect(before.match(SHOWS)).toBeNull();
    expect(after.match(SHOWS)?.length).toBe(1);
  });

  test.each(PARTS)(
    '$name offers three answers or more, one of them right, each with a short reason',
    (part) => {
      expect(part.answers.length).toBeGreaterThanOrEqual(3);
      expect(part.reasons.length).toBe(part.answers.length);
      expect(part.source.match(/\bright: true\b/g)?.length).toBe(1);
      expect(part.source.match(/\bright: false\b/g)?.length).toBe(part.answers.length - 1);
      expect(part.reasons.filter((reason) => wordsOf(reason).length > REASON_WORDS)).toEqual([]);
      expect(part.reasons.filter((reason) => wordsOf(reason).length < 4)).toEqual([]);
    },
  );

  test.each(PARTS)('$name is neither a stub nor a wall of text', ({ prose, answers }) => {
    const words = wordsOf(`${prose} ${answers.join(' ')}`).length;
    expect(words).toBeGreaterThanOrEqual(PART_WORDS[0]);
    expect(words).toBeLessThanOrEqual(PART_WORDS[1]);
  });

  test.each(PARTS)('$name is read at fourteen', ({ prose, answers, reasons }) => {
    expect(gradeOf(prose)).toBeLessThanOrEqual(GRADE);
    expect(gradeOf([...answers, ...reasons].join('\n\n'))).toBeLessThanOrEqual(GRADE);
  });
});

describe('The words of a lesson', () => {
  const glossary = new Set(
    (JSON.parse(readFileSync('content/reference/glossary.json', 'utf8')) as { id: string }[]).map(
      ({ id }) => id,
    ),
  );
  /** Trade words that a reader may look up in every lesson that uses them. */
  const TRADE = ['LED', 'source', 'sink', 'shield', 'DIN', 'TRS', 'TS', 'tip', 'ring', 'sleeve', 'isolated'];
  const MARK = /\[([\w-]+)\|([^\]]*)\]/g;

  test.each(LESSONS)('$folder links only terms of the glossary, and each one once', ({ body }) => {
    const used = [...body.matchAll(/<Term id="([^"]+)">/g)].map(([, id = '']) => id);
    expect(used.length).toBeGreaterThan(5);
    expect(used.filter((id) => !glossary.has(id))).toEqual([]);
    expect(used.filter((id, at) => used.indexOf(id) !== at)).toEqual([]);
  });

  test.each(LESSONS)('$folder links a term where its paragraphs first use it', ({ parts }) => {
    const text = parts.map(({ marked }) => marked).join('\n');
    const late = [...text.matchAll(MARK)].filter(({ 2: words = '', index }) =>
      new RegExp(`(?<![\\w-])${words}(?![\\w-])`).test(text.slice(0, index).replace(MARK, '')),
    );
    expect(late.map(([, id]) => id)).toEqual([]);
  });

  test.each(LESSONS)('$folder links every trade word that its paragraphs use', ({ parts }) => {
    const text = parts.map(({ marked }) => marked).join('\n');
    const linked = new Set([...text.matchAll(MARK)].map(([, , words]) => words));
    const plain = text.replace(MARK, '');
    expect(TRADE.filter((word) => new RegExp(`\\b${word}\\b`).test(plain) && !linked.has(word))).toEqual([]);
  });

  test.each(PARTS)('$name prints no measured number that the core did not work out', (part) => {
    const typed = [part.prose, ...part.answers, ...part.reasons].flatMap(
      (text) => text.match(/\b\d+(?:\.\d+)?\s?(?:mA|A|mW|W|ohm|kohm|Ω|us|µs|ms)(?![\w])/g) ?? [],
    );
    expect(typed).toEqual([]);
    // Volts and metres name a kind of sender or lead; the links below hold them to the circuit.
    const named = [part.prose, ...part.answers, ...part.reasons].flatMap(
      (text) => text.match(/\b\d+(?:\.\d+)?\s?(?:V|m)(?![\w])/g) ?? [],
    );
    expect(named.filter((words) => !['5 V', '3.3 V', '1 m', '15 m'].includes(words))).toEqual([]);
  });
});

describe('The jacks of a lesson', () => {
  test.each(LESSONS)('$folder measures each jack of its jacks.json, and no other', ({ body, jacks }) => {
    const used = new Set([...body.matchAll(/\bjacks\.(?!json\b|ts\b)(\w+)/g)].map(([, name]) => name));
    expect([...used].sort()).toEqual(Object.keys(jacks).sort());
    expect(() => Object.values(jacks).forEach(underTestFrom)).not.toThrow();
  });

  test('a jack that cannot be is refused by name', () => {
    expect(() => underTestFrom({ direction: 'in', connector: 'din5', style: 'type-a' })).toThrow(
      "lesson jack: style 'type-a' does not suit a din5 jack",
    );
    expect(() => underTestFrom({ other: 'footswitch-double', connector: 'ts-6.35' })).toThrow(
      /^lesson jack: a .* cannot be on a ts-6\.35$/,
    );
  });
});

describe('The links of a lesson', () => {
  test.each(LESSONS)('$folder uses each link of its links.json, and no other', ({ body, links }) => {
    const used = new Set([...body.matchAll(/\blinks\.(?!json\b|ts\b)(\w+)/g)].map(([, name]) => name));
    expect([...used].sort()).toEqual(Object.keys(links).sort());
  });

  test.each(LINKS)('$name gives the outcome and the notes that the text claims', ({ link }) => {
    const verdict = checkLink(linkFrom(link));
    expect(verdict.outcome).toBe(link.outcome);
    expect(verdict.notes.map(({ kind }) => kind)).toEqual(expect.arrayContaining([...(link.notes ?? [])]));
  });

  test('a link with a style that its jack cannot have is refused by name', () => {
    const link: AuthoredLink = {
      output: { connector: 'din5', style: 'type-a' },
      input: { connector: 'din5', style: 'din' },
      leads: [],
      outcome: 'flows',
    };
    expect(() => linkFrom(link)).toThrow("lesson link: style 'type-a' does not suit a din5 jack");
  });

  test('a conductor on a contact that is not there is refused by name', () => {
    const link: AuthoredLink = {
      output: { connector: 'din5', style: 'din' },
      input: { connector: 'trs-3.5', style: 'type-a' },
      leads: [{ ends: ['din5', 'trs-3.5'], wires: ['5-4'] }],
      outcome: 'flows',
    };
    expect(() => linkFrom(link)).toThrow("a trs-3.5 has no contact '4'");
  });
});

describe('What lesson 1 says of the five-milliamp loop', () => {
  test('the way back is what was missing, and the shield changes nothing', () => {
    expect(say(linkNamed('01', 'noWayBack'), 'active')).toBe('0 mA');
    expect(say(linkNamed('01', 'pairAlone'), 'active')).toBe(say(linkNamed('01', 'whole'), 'active'));
  });

  test('at rest nothing flows, because both lines stand at the same voltage', () => {
    expect(say(linkNamed('01', 'whole'), 'idle')).toBe('0 mA');
    const volts = solved('01', 'whole')
      .readings.idle.contacts.filter(
        ({ spot }) => spot.place === 'output' && ['4', '5'].includes(spot.contact),
      )
      .map(({ volts: one }) => one ?? NaN);
    expect(volts.length).toBe(2);
    expect(volts[0]).toBeCloseTo(volts[1] ?? NaN, 6);
    expect(volts[0]).toBeCloseTo(5, 6);
  });

  test('a swapped pair carries more than a good lead, and less than a volt stands across the LED', () => {
    const reverse = solved('01', 'swapped').inputs[0]?.reverseAmperes.active ?? NaN;
    expect(reverse).toBeGreaterThan(active('01', 'whole'));
    expect(say(linkNamed('01', 'swapped'), 'LED volts')).toMatch(/^−0\.\d\d V$/);
  });

  test('the longest lead costs next to nothing, at 5 V and at 3.3 V', () => {
    expect(linkNamed('01', 'long').leads[0]?.metres).toBe(STANDARD_METRES);
    expect(linkNamed('01', 'lowLong').leads[0]?.metres).toBe(STANDARD_METRES);
    expect(active('01', 'long') / active('01', 'whole')).toBeGreaterThan(0.98);
    expect(active('01', 'long')).toBeLessThan(active('01', 'whole'));
    expect(active('01', 'lowLong') / active('01', 'low')).toBeGreaterThan(0.98);
  });

  test('the copper of the longest lead is the smallest resistance in the loop', () => {
    const resistors = ['driver-5v', 'driver-3v3'].flatMap((circuit) =>
      valuesOf(circuit as 'driver-5v' | 'driver-3v3', '6N138').filter(
        ({ unit, value }) => unit === 'ohm' && value > 0,
      ),
    );
    const copper = 2 * STANDARD_METRES * wireOhmsPerMetre(26);
    expect(resistors.length).toBe(4);
    expect(resistors.filter(({ value }) => value <= copper)).toEqual([]);
  });

  test('a 3.3 V sender gives more current than a 5 V one, and both leave a margin', () => {
    expect(active('01', 'low')).toBeGreaterThan(active('01', 'whole'));
    for (const name of ['whole', 'long', 'low', 'lowLong']) {
      const input = solved('01', name).inputs[0];
      expect(input?.worstActive).toBeGreaterThan(input?.on ?? NaN);
    }
  });
});

describe('What lesson 2 says of contacts', () => {
  const plug = { connector: 'din5', form: 'plug' } as const;

  test('the mating face of a plug reads 3 5 2 4 1, its solder side the reverse, and pin 2 stays', () => {
    const front = dinReadingOrder({ ...plug, view: 'mating' });
    expect(front).toEqual(['3', '5', '2', '4', '1']);
    expect(dinReadingOrder({ ...plug, view: 'solder' })).toEqual([...front].reverse());
  });

  test('each side of a jack is the mirror of the same side of a plug', () => {
    for (const view of ['mating', 'solder'] as const) {
      expect(dinReadingOrder({ ...plug, form: 'jack', view })).toEqual(
        [...dinReadingOrder({ ...plug, view })].reverse(),
      );
    }
  });

  test('the mirror of one plug gives the swapped lead, and two mirrors give the right one', () => {
    const front = dinReadingOrder({ ...plug, view: 'mating' });
    const back = dinReadingOrder({ ...plug, view: 'solder' });
    const mirror = (pin: string): string => back[front.findIndex((one) => one === pin)] ?? '';
    const wiresOf = (name: string): readonly string[] =>
      [...(linkNamed('02', name).leads[0]?.wires ?? [])].sort();
    const mirrored = (both: boolean): readonly string[] =>
      wiresOf('right')
        .map((pair) => pair.split('-'))
        .map(([from = '', to = '']) => `${both ? mirror(from) : from}-${mirror(to)}`)
        .sort();
    expect(wiresOf('oneMirrored')).toEqual(mirrored(false));
    expect(wiresOf('bothMirrored')).toEqual(mirrored(true));
  });

  test('with TS plugs the source resistor carries the same current at rest and while a 0 is sent', () => {
    const verdict = solved('02', 'twoContacts');
    // Contacts and wire differ a little in the two states: within 0.01 mA, the last digit that is printed.
    expect(Math.abs(sourceResistor(verdict, 'active') - sourceResistor(verdict, 'idle'))).toBeLessThan(1e-5);
    expect(say(linkNamed('02', 'twoContacts'), 'source resistor')).toBe('22.7 mA');
  });
});

describe('What lesson 3 says of makers', () => {
  test('an input that takes both directions gets the same from a straight and a crossed lead, and less than a plain one', () => {
    const straight = linkNamed('03', 'eitherWay');
    const crossed = { ...straight, leads: linkNamed('03', 'crossed').leads };
    expect(say(crossed, 'active')).toBe(say(straight, 'active'));
    expect(active('03', 'eitherWay')).toBeLessThan(active('03', 'crossed'));
  });

  test('an adapter of a length that the standard allows hardly changes the current', () => {
    expect(linkNamed('03', 'adapter').leads[1]?.metres).toBeLessThanOrEqual(ADAPTER_METRES);
    expect(active('03', 'adapter') / active('03', 'crossed')).toBeGreaterThan(0.99);
  });

  test('the adapter on the bench lacks one wire of the whole one', () => {
    const half = linkNamed('03', 'halfAdapter').leads[1]?.wires ?? [];
    const whole = linkNamed('03', 'adapter').leads[1]?.wires ?? [];
    expect(whole.filter((pair) => !half.includes(pair))).toEqual(['tip-ring']);
  });

  test('a sleeve on pin 2 carries the same current in both states', () => {
    const link = linkNamed('03', 'sleeveToShield');
    expect(say(link, 'idle')).toBe(say(link, 'active'));
  });

  test('a voltage without its ground works on some tables only', () => {
    expect(solved('03', 'voltageNoGround').byGrounding).toEqual({ separate: 'no-path', joined: 'flows' });
    const input = solved('03', 'voltage').inputs[0];
    expect(input?.active).toBeLessThan(input?.on ?? NaN);
    expect(input?.idle).toBeGreaterThan(input?.off ?? NaN);
  });

  test('of every way to join a ground-referenced output to a loop none works, and two are upside down', () => {
    const { answer, maps, counts } = searchFor(linkNamed('03', 'noSource'));
    expect(answer).toBe('no-passive-lead');
    // Maps of three contacts to three, each used at most once: 1 + 9 + 18 + 6.
    expect(maps).toBe(34);
    expect(counts.flows + counts.weak).toBe(0);
    expect(counts.inverted).toBe(2);
    expect(say(linkNamed('03', 'upsideDown'), 'active')).toBe('0 mA');
  });
});

/** What became of each byte of a program change sent over a link of a lesson. */
function outcomesOf(link: AuthoredLink, journey: Partial<Journey>): readonly string[] {
  return sendOver(link, [example('program change')], journey).sending.outcomes.map(({ outcome }) => outcome);
}

const WHOLE = ['same', 'same'];
const NO_BASE_RESISTOR = { baseResistor: false } as const;

describe('What lesson 4 says of bits', () => {
  const on = (note: number, velocity: number): Item => ({ kind: 'note on', channel: 0, note, velocity });
  const chord = [on(60, 39), on(64, 43), on(67, 37)];

  test('a bit, a byte, a program change and a chord take what the standard says', () => {
    // MIDI 1.0 Detailed Specification 4.2.1: 31 250 bits a second, ten bits a byte; appendix A-1: seven bytes, not nine.
    expect([sayBits(1), sayBytes(1), sayBytes(2)]).toEqual(['32\u00a0µs', '320\u00a0µs', '640\u00a0µs']);
    expect([sayBytes(9), sayBytes(7)]).toEqual(['2.88\u00a0ms', '2.24\u00a0ms']);
  });

  test('three notes with running status are the seven bytes that the standard prints', () => {
    expect(sayHex(chord, true).replaceAll('\u00a0', ' ')).toBe('90 3C 27 40 2B 43 25');
  });

  test('the byte 01 is dark right after the start bit, and 80 right before the stop bit', () => {
    const darkBits = (byte: number): readonly number[] =>
      bitCells({ value: byte, startSeconds: 0, endSeconds: 1 })
        .filter(({ level }) => level)
        .map(({ bit }) => bit);
    expect(darkBits(0x01)).toEqual([1, 9]);
    expect(darkBits(0x80)).toEqual([8, 9]);
  });

  test('channel 1 and program 5 are C0 04, and one bit turns for channel 2', () => {
    expect(sayHex([example('program change')]).replaceAll('\u00a0', ' ')).toBe('C0 04');
    expect((0xc0 ^ 0xc1).toString(2)).toBe('1');
  });
});

describe('What lesson 5 says of long leads', () => {
  const low = linkNamed('05', 'low');
  const far = linkNamed('05', 'lowFar');

  test('a lead far beyond the standard still carries nearly all of the current', () => {
    expect(active('05', 'fiveFar') / active('05', 'five')).toBeGreaterThan(0.95);
    expect(solved('05', 'fiveFar').notes.map(({ kind }) => kind)).toContain('too-long');
  });

  test('at 15 m both senders keep the bound on edges, and at 30 m only the 5 V one does', () => {
    const worst = (link: AuthoredLink, metres: number): number => {
      const { toActiveSeconds, toIdleSeconds } = edgesOf(atMetres(link, metres));
      return Math.max(toActiveSeconds, toIdleSeconds);
    };
    const five = linkNamed('05', 'five');
    expect(worst(five, STANDARD_METRES)).toBeLessThan(STANDARD_EDGE_SECONDS);
    expect(worst(low, STANDARD_METRES)).toBeLessThan(STANDARD_EDGE_SECONDS);
    expect(worst(five, 2 * STANDARD_METRES)).toBeLessThan(STANDARD_EDGE_SECONDS);
    expect(worst(low, 2 * STANDARD_METRES)).toBeGreaterThan(STANDARD_EDGE_SECONDS);
    expect(Number.parseInt(sayLongest(low))).toBeGreaterThan(STANDARD_METRES);
  });

  test('letting go is the slow edge of a 3.3 V sender', () => {
    const { toActiveSeconds, toIdleSeconds } = edgesOf(far);
    expect(toIdleSeconds).toBeGreaterThan(5 * toActiveSeconds);
  });

  test('one very long lead delivers, two garble, and two of 15 m deliver', () => {
    expect(outcomesOf(far, NO_BASE_RESISTOR)).toEqual(WHOLE);
    expect(outcomesOf(far, { ...NO_BASE_RESISTOR, hops: 2 })).toEqual(['garbled', 'garbled']);
    expect(outcomesOf(atMetres(far, STANDARD_METRES), { ...NO_BASE_RESISTOR, hops: 2 })).toEqual(WHOLE);
  });
});

describe('What lesson 6 says of chains', () => {
  const slow = linkNamed('06', 'slow');

  test('three links deliver, four garble, and with a base resistor four deliver', () => {
    expect(outcomesOf(slow, { ...NO_BASE_RESISTOR, hops: 3 })).toEqual(WHOLE);
    expect(outcomesOf(slow, { ...NO_BASE_RESISTOR, hops: 4 })).toEqual(['garbled', 'garbled']);
    expect(outcomesOf(slow, { hops: 4 })).toEqual(WHOLE);
  });

  test('a chain of H11L1 is four to five times as long as one of 6N138 with base resistor, for either receiver', () => {
    for (const receiver of RECEIVERS) {
      const times = hopsOf(linkNamed('06', 'logic'), receiver) / hopsOf(slow, receiver, true);
      expect(times).toBeGreaterThanOrEqual(4);
      expect(times).toBeLessThanOrEqual(5);
    }
  });

  test('one sample gives out at the hop of the arithmetic, and three votes hold out longer', () => {
    // 16 samples a bit, one taken for the start edge, clocks 2 % apart over 9.5 bits: (0.4375 - 0.19) x 32 us = 7.9 us;
    // 5 us a hop leave 1, 1 us a hop 7. The search may differ from it by one hop.
    expect(Math.abs(hopsOf(slow, 'one sample') - 1)).toBeLessThanOrEqual(1);
    expect(Math.abs(hopsOf(slow, 'one sample', true) - 7)).toBeLessThanOrEqual(1);
    expect(hopsOf(slow, 'three votes', true)).toBeGreaterThan(hopsOf(slow, 'one sample', true));
  });

  test('software in between garbles nothing, and holds every byte up by three bytes or more', () => {
    const { outcomes } = sendOver(slow, [example('program change')], {
      ...NO_BASE_RESISTOR,
      hops: 4,
      thru: 'software thru',
    }).sending;
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['late', 'late']);
    for (const { lagSeconds } of outcomes) expect(lagSeconds).toBeGreaterThan(3 * 320e-6);
  });
});

describe('What lesson 7 says of unmarked jacks', () => {
  const { jacks } = LESSONS.find(({ folder }) => folder.startsWith('07')) ?? { jacks: {} as LessonJacks };
  const on = (name: string, ...taken: Taken): string =>
    sayMeter(jack(name), ...taken).replaceAll('\u00a0', ' ');
  const volts = (name: string, ...taken: Taken): number => {
    const reading = meterOn(jack(name), ...taken);
    return reading.shows === 'value' ? reading.value : NaN;
  };
  type Taken = Parameters<typeof meterOn> extends [unknown, ...infer Rest] ? Rest : never;
  function jack(name: string): LessonJacks[string] {
    const found = jacks[name];
    if (found === undefined) throw new Error(`lesson 07: needs a jack '${name}', got none`);
    return found;
  }
  const PAIRS = ['ring-sleeve', 'tip-sleeve', 'ring-tip'] as const;

  test('an output shows its supply at rest, and an input shows nothing on any two contacts', () => {
    expect(on('out', 'volts idle', 'ring-sleeve')).toBe('5.00 V');
    expect(on('out', 'volts idle', 'tip-sleeve')).toBe('5.00 V');
    expect(PAIRS.map((pair) => on('in', 'volts idle', pair))).toEqual(['0 mV', '0 mV', '0 mV']);
  });

  test('while clock runs the sign between ring and tip names the source', () => {
    // 48 bytes F8 a second, each 4 bits of 32 us at 0: 0.6144 % of the time, and 5 V between the lines then: 30.7 mV.
    expect(volts('out', 'volts clock', 'ring-tip')).toBeCloseTo(48 * 4 * 32e-6 * 5, 3);
    expect(on('out', 'volts clock', 'ring-tip')).toBe('31 mV');
    expect(on('outTurned', 'volts clock', 'ring-tip')).toBe('−31 mV');
    expect(on('out', 'volts idle', 'ring-tip')).toBe('0 mV');
  });

  test('a 3.3 V output that lets go of its sink shows its source alone at rest', () => {
    expect(on('outLow', 'volts idle', 'ring-sleeve')).toBe('3.30 V');
    expect(on('outLow', 'volts idle', 'tip-sleeve')).toBe('0 mV');
  });

  test('the diode test shows the LED one way and about half as much the other way', () => {
    const [forward, back] = [volts('in', 'diode off', 'ring-tip'), volts('in', 'diode off', 'tip-ring')];
    expect(back / forward).toBeGreaterThan(0.45);
    expect(back / forward).toBeLessThan(0.55);
    expect(volts('inTurned', 'diode off', 'tip-ring')).toBeCloseTo(forward, 6);
    expect(meterOn(jack('in'), 'diode off', 'ring-tip', 'low-diode').shows).toBe('overload');
    expect(meterOn(jack('in'), 'diode off', 'tip-ring', 'low-diode').shows).toBe('value');
  });

  test('the LED tester is dark across the loop and glows where a line is fed', () => {
    const glow = (name: string, ...taken: Taken): string => meterOn(jack(name), ...taken).shows;
    for (const name of ['out', 'outLow']) {
      expect(glow(name, 'led clock', 'ring-tip')).toBe('dark');
      expect(glow(name, 'led idle', 'ring-tip')).toBe('dark');
      expect(glow(name, 'led clock', 'ring-sleeve')).toBe('glows');
    }
    expect(glow('out', 'led clock', 'tip-sleeve')).toBe('glows');
    expect(glow('outLow', 'led clock', 'tip-sleeve')).toBe('dark');
  });

  test('a footswitch input shows the voltage of a 3.3 V output, and ten times its resistance', () => {
    expect(on('switches', 'volts idle', 'ring-sleeve')).toBe(on('outLow', 'volts idle', 'ring-sleeve'));
    const ratio = volts('switches', 'ohms off', 'ring-sleeve') / volts('outLow', 'ohms off', 'ring-sleeve');
    expect(ratio).toBeGreaterThan(8);
    expect(ratio).toBeLessThan(12);
  });
});

describe('What lesson 8 says of making a lead', () => {
  test('the mirror of the right lead is the one that runs backwards', () => {
    const plug = { connector: 'din5', form: 'plug' } as const;
    const front = dinReadingOrder({ ...plug, view: 'mating' });
    const back = dinReadingOrder({ ...plug, view: 'solder' });
    const mirrored = (linkNamed('08', 'right').leads[0]?.wires ?? []).map((pair) => {
      const [from = '', to = ''] = pair.split('-');
      return `${back[front.findIndex((one) => one === from)] ?? ''}-${to}`;
    });
    expect([...(linkNamed('08', 'mirrored').leads[0]?.wires ?? [])].sort()).toEqual(mirrored.sort());
    expect(back.findIndex((one) => one === '4')).toBeLessThan(back.findIndex((one) => one === '2'));
  });

  test('a strand on the ring loads the source at rest and while a 0 is sent, and a dull joint weakens', () => {
    const verdict = solved('08', 'strandOnRing');
    expect(Math.abs(sourceResistor(verdict, 'active') - sourceResistor(verdict, 'idle'))).toBeLessThan(1e-5);
    // 5 V over 220 ohm: 22.7 mA.
    expect(sourceResistor(verdict, 'idle')).toBeCloseTo(5 / 220, 4);
    expect(active('08', 'dullJoint')).toBeLessThan(0.7 * active('08', 'right'));
    expect(active('08', 'dullJoint')).toBeGreaterThan(solved('08', 'dullJoint').inputs[0]?.on ?? NaN);
  });

  test('the sheet has the shells first, and the proof last', () => {
    const { output, branches } = linkFrom(linkNamed('08', 'right'));
    const lead = branches[0]?.leads[0];
    if (lead === undefined) throw new Error('lesson 08: needs a lead, got none');
    const { steps } = cableSheet(lead, { output, branches });
    expect(steps[0]).toMatch(/shells/);
    expect(steps.at(-1)).toMatch(/prove the lead/);
    expect(steps.findIndex((step) => step.includes('strain relief'))).toBeLessThan(steps.length - 1);
  });
});

describe('What lesson 9 says of proving a lead', () => {
  const { readings } = { readings: dataOf('09-prove-it', 'readings.json') as LessonReadings };
  type LessonReadings = Readonly<Record<string, readonly AuthoredReading[]>>;
  const lead = (name: string): Lead => {
    const found = linkFrom(linkNamed('09', name)).branches[0]?.leads[0];
    if (found === undefined) throw new Error(`lesson 09: needs a lead in '${name}', got none`);
    return found;
  };
  const proof = (name: string): Proof => proofOf(lead('fromDin'), readings[name] ?? []);

  test('one silent wire leaves a dozen single mistakes or so, and a second one leaves three that read alike', () => {
    expect(proof('oneSilent').sets.length).toBeGreaterThanOrEqual(11);
    expect(proof('oneSilent').sets.length).toBeLessThanOrEqual(14);
    expect(proof('oneSilent').sets.every((set) => set.length === 1)).toBe(true);
    // Swapped at one end, swapped at the other, or the DIN plug mirrored.
    expect(proof('twoSilent').sets.map((set) => set.map(({ kind }) => kind).join())).toEqual([
      'swapped',
      'mirrored',
      'swapped',
    ]);
    expect(proof('twoSilent').alike.length).toBe(1);
    expect(proof('twoSilent').next).toBeUndefined();
    expect(proof('oneOfTwo').sets.length).toBeLessThan(proof('oneSilent').sets.length);
    expect(proof('oneOfTwo').sets.length).toBeGreaterThan(proof('twoSilent').sets.length);
  });

  test('two touching wires touch in one plug or in the other, and no reading tells which', () => {
    const { sets, alike } = proof('touching');
    expect(
      sets.map((set) =>
        set.map((fault) => ('side' in fault ? `${fault.kind} ${fault.side}` : fault.kind)).join(),
      ),
    ).toEqual(['short from', 'short to']);
    expect(alike).toEqual([[0, 1]]);
  });

  test('a lead with two contacts that touch beeps in all three conductors, and in its fourth row too', () => {
    const plan = lead('straight');
    const says = tableOf(madeLead(plan, [{ kind: 'short', side: 'to', between: ['tip', 'ring'] }]));
    const rows = proofRows(plan);
    expect(
      rows
        .slice(0, 3)
        .every(({ expects, places }) => expects === 'beep' && places.every((at) => says(at) === 'beep')),
    ).toBe(true);
    expect(rows[3]?.expects).toBe('silent');
    expect(rows[3]?.places.some((at) => says(at) === 'beep')).toBe(true);
  });

  test('a reading at a contact that the plug lacks is refused by name', () => {
    expect(() => proofOf(lead('straight'), [{ from: 'out.4', to: 'in.tip', says: 'beep' }])).toThrow(
      "lesson proof: a trs-3.5 has no contact '4', got 'out.4'",
    );
  });
});

describe('What lesson 10 says of finding a fault', () => {
  type Piles = Readonly<Record<string, AuthoredPile>>;
  const piles = dataOf('10-when-nothing-answers', 'piles.json') as Piles;
  const pile = (name: string): Pile => {
    const found = piles[name];
    if (found === undefined) throw new Error(`lesson 10: needs a pile '${name}', got none`);
    return pileFrom(found);
  };
  /** Sizes of the piles that a look makes, the largest first. */
  const sizes = (name: string, look: string): readonly number[] => {
    const seen = pile(name).looks.find(({ id }) => id === look)?.seen ?? [];
    return [...new Set(seen)]
      .map((answer) => seen.filter((one) => one === answer).length)
      .sort((a, b) => b - a);
  };

  test('of four looks at six suspects the light parts three and three, and each other one and five', () => {
    expect(sizes('six', 'light pedal 1')).toEqual([3, 3]);
    const others = pile('six').looks.filter(({ id }) => id !== 'light pedal 1');
    expect(others.map(({ id }) => sizes('six', id))).toEqual([
      [5, 1],
      [5, 1],
      [5, 1],
    ]);
  });

  test('silence leaves a dozen suspects, and each other symptom of one pedal a single one', () => {
    expect(symptomGroups('link').map(({ suspects }) => suspects.length)).toEqual([12, 1, 1, 1]);
    const next = symptomGroups('link').find(({ symptom }) => symptom.includes('next to'));
    expect(next?.suspects.map(({ name }) => name)).toEqual(['sender: program-off-by-one']);
  });

  test('the clock reading has three answers, and tells most in both hunts', () => {
    for (const [name, look] of [
      ['silent', 'volts clock lead 1'],
      ['chain', 'volts clock lead 2'],
    ] as const) {
      expect(sizes(name, look).length).toBe(3);
      const { suspects, looks } = pile(name);
      const all = suspects.map((_, at) => at);
      const weighed = {
        names: suspects.map((one) => one.name),
        weights: all.map(() => 1),
        answers: looks.map(({ seen }) => seen.map((one) => seen.indexOf(one))),
      };
      const bits = looks.map((_, at) => bitsOfObservation(weighed, all, at));
      expect(looks[bits.indexOf(Math.max(...bits))]?.id).toBe(look);
      // Every suspect can be told from every other one: no two show the same in all looks.
      expect(new Set(all.map((at) => looks.map(({ seen }) => seen[at]).join('|'))).size).toBe(all.length);
    }
  });

  test('each hunt hides every one of its suspects once', () => {
    const { body } = readLesson('10-when-nothing-answers');
    const hidden = [...body.matchAll(/hidden=\{\[([\s\S]*?)\]\}/g)].map(([, list = '']) =>
      [...list.matchAll(/'([^']+)'/g)].map(([, name = '']) => name).sort(),
    );
    expect(hidden).toEqual([
      [...(piles.silent?.suspects ?? [])].sort(),
      [...(piles.chain?.suspects ?? [])].sort(),
    ]);
  });

  test('a suspect or a look that the board does not have is refused by name', () => {
    expect(() => pileFrom({ board: 'link', suspects: ['lead 2: open'], looks: [] })).toThrow(
      "lesson suspects: the board 'link' has no fault 'lead 2: open'",
    );
    expect(() => pileFrom({ board: 'link', suspects: ['lead 1: open'], looks: ['thru menu'] })).toThrow(
      "lesson suspects: the board 'link' has no observation 'thru menu'",
    );
  });

  test('the fault bench has as many kinds of fault as the lesson says', () => {
    expect(BOARD_FAULTS.length).toBe(17);
  });
});

/** Seconds until the last message of a press to the first four pedals of a lesson's board is there. */
function pressTime(board: Omit<AuthoredBoard, 'pedals' | 'press'>, order: readonly string[]): number {
  const press = order.map((device): PressItem => ({ device, send: 'program', program: 5 }));
  return timePress(boardFrom({ ...board, pedals: 4, press })).seconds ?? NaN;
}

describe('What lesson 11 says of splits', () => {
  const currents = (count: number): readonly number[] =>
    checkLink(splitFrom({ parts: Array.from({ length: count }, () => '6N138' as const) })).inputs.map(
      (input) => input.active,
    );

  test('each of two inputs gets less than one alone, but more than half', () => {
    const [alone = NaN] = currents(1);
    for (const one of currents(2)) {
      expect(one).toBeLessThan(alone);
      expect(one).toBeGreaterThan(alone / 2);
    }
  });

  test('two of the usual inputs work, three are weak', () => {
    const outcomes = [1, 2, 3].map(
      (count) =>
        checkLink(splitFrom({ parts: Array.from({ length: count }, () => '6N138' as const) })).outcome,
    );
    expect(outcomes).toEqual(['flows', 'flows', 'weak']);
  });

  test('of the four pairs one is starved, and three work', () => {
    const outcomes = [
      checkLink(splitFrom({ parts: ['PC900V', 'PC900V'] })).outcome,
      checkLink(splitFrom({ parts: ['6N138', '6N138'] })).outcome,
      checkLink(splitFrom({ parts: ['H11L1', 'H11L1'] })).outcome,
      checkLink(splitFrom({ parts: ['PC900V', 'PC900V'], circuit: 'driver-3v3' })).outcome,
    ];
    expect(outcomes).toEqual(['starved', 'flows', 'flows', 'flows']);
  });

  test('two outputs on one input fail; a chain, a hub and a merger pass', () => {
    const passes = (layout: AuthoredBoard['layout']): boolean =>
      checkBoard(boardFrom({ layout, pedals: 4 })).passes;
    expect(passes('two senders')).toBe(false);
    expect(['chain', 'hub', 'merger'].filter((layout) => !passes(layout as AuthoredBoard['layout']))).toEqual(
      [],
    );
  });
});

describe('What lesson 12 says of chains and hubs', () => {
  const facts = (board: AuthoredBoard) => boardFacts(boardFrom(board));

  test('four pedals need four leads in a chain and five behind a hub; six in both ways need seven', () => {
    expect(facts({ layout: 'chain', pedals: 4 }).leads).toBe(4);
    expect(facts({ layout: 'hub', pedals: 4 }).leads).toBe(5);
    expect(facts({ layout: 'both', pedals: 6 }).leads).toBe(7);
  });

  test('the first of a chain takes all others along, the last none, and the hub takes all', () => {
    const silent = (board: AuthoredBoard, name: string): number =>
      facts(board).silentWithout.find(({ device }) => device === name)?.silent.length ?? 0;
    expect(silent({ layout: 'chain', pedals: 4 }, 'echo')).toBe(3);
    expect(silent({ layout: 'chain', pedals: 4 }, 'looper')).toBe(0);
    expect(silent({ layout: 'hub', pedals: 4 }, 'hub')).toBe(4);
    expect(silent({ layout: 'hub', pedals: 4 }, 'echo')).toBe(0);
  });

  test('with parts not known the fourth pedal is the first too deep, and behind a hub none is', () => {
    const fits = (layout: 'chain' | 'hub', part: 'unknown' | 'H11L1'): readonly boolean[] =>
      shownDepth('', { layout, pedals: 6, part }).rows.map(({ good }) => good);
    expect(fits('chain', 'unknown').indexOf(false)).toBe(3);
    expect(facts({ layout: 'hub', pedals: 6 }).deepestLinks).toBe(2);
    expect(fits('hub', 'unknown')).not.toContain(false);
  });

  test('software in each pedal makes the chain hundreds of times later', () => {
    const late = facts({ layout: 'chain', pedals: 6, thru: 'software' }).worstDelaySeconds;
    const times = late / facts({ layout: 'chain', pedals: 6 }).worstDelaySeconds;
    expect(times).toBeGreaterThanOrEqual(200);
    expect(times).toBeLessThan(1000);
  });
});

describe('What lesson 13 says of one press', () => {
  const near = ['echo', 'drive', 'chorus', 'looper'];

  test('running status saves nothing on four channels, and a quarter on four knobs of one pedal', () => {
    const bytes = (press: readonly PressItem[], runningStatus: boolean): number =>
      timePress(boardFrom({ layout: 'chain', pedals: 4, press }), { runningStatus }).bytes;
    const four = near.map((device): PressItem => ({ device, send: 'program', program: 5 }));
    const knobs = [20, 21, 22, 23].map((controller): PressItem => ({
      device: 'echo',
      send: 'control',
      controller,
      value: 100,
    }));
    expect([bytes(four, false), bytes(four, true)]).toEqual([8, 8]);
    expect([bytes(knobs, false), bytes(knobs, true)]).toEqual([12, 9]);
  });

  test('with software on the way the far pedal first saves nearly a third, and hardware or a hub more', () => {
    const software = { layout: 'chain', thru: 'software' } as const;
    const first = pressTime(software, near);
    const saved = 1 - pressTime(software, near.toReversed()) / first;
    expect(saved).toBeGreaterThan(0.28);
    expect(saved).toBeLessThan(1 / 3);
    for (const layout of ['chain', 'hub'] as const)
      expect(1 - pressTime({ layout }, near) / first).toBeGreaterThan(saved);
  });
});
