/** Every lesson, from its folder alone: its form, its words, its data and its claims. A new lesson is tested by being there. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { solve, underTestFrom } from '../../src/core/learn/index.ts';
import type {
  AuthoredLink,
  Claims,
  LessonJacks,
  LessonLinks,
  LessonPiles,
} from '../../src/core/learn/index.ts';
import { brokenPairs } from '../support/claims.ts';
import { LESSONS_FOLDER, lessonFolders, questionIn, readLesson } from '../support/lesson-text.ts';
import { gradeOf, wordsOf } from '../support/readability.ts';

/** What a file beside a lesson exports, or nothing when the lesson has no such file. */
async function besides(folder: string, file: string): Promise<Readonly<Record<string, unknown>>> {
  const path = join(process.cwd(), LESSONS_FOLDER, folder, file);
  return existsSync(path) ? ((await import(path)) as Readonly<Record<string, unknown>>) : {};
}

const LESSONS = await Promise.all(
  lessonFolders().map(async (folder) => ({
    ...readLesson(folder),
    data: await besides(folder, 'data.ts'),
    claims: ((await besides(folder, 'claims.ts')).claims ?? {}) as Claims,
  })),
);
const PARTS = LESSONS.flatMap(({ folder, parts }) =>
  parts.map((part, at) => ({ name: `${folder} part ${at + 1}`, ...part })),
);
const LINKS = LESSONS.flatMap(({ folder, data }) =>
  Object.entries((data.links ?? {}) as LessonLinks).map(([name, link]) => ({
    name: `${folder} ${name}`,
    link: link as AuthoredLink,
  })),
);
const CLAIMS = LESSONS.flatMap(({ folder, claims }) =>
  Object.entries(claims).map(([says, pairs]) => ({ folder, says, pairs })),
);

/** A figure has a number; figures that show a solved circuit, and two small widgets, must stand after the question. */
const FIGURES = /<(?!Part\b)[A-Z]\w*\s+n=\{(\d+)\}/g;
const SHOWS = /<(?:(?!Part\b|PlugFaces\b|Figure\b)[A-Z]\w*\s+n=\{|(?:SendByte|TurnPlug)\b)/g;
/** Figures to look at only: a lesson needs one that is not. A bench is heavy enough for two. */
const LIVE =
  /<(?!(?:Part|Figure|PlugFaces|Compare|Margins|Counts|Bars|Bytes|Timing|Symptoms)\b)[A-Z]\w*\s+n=\{/g;
const BENCHES = /<(?:LessonBench|SendBench)\b/g;

/** Exports of a data file whose entries a lesson names one by one. */
const LISTS = ['links', 'jacks', 'piles', 'readings'];

/** Fewest and most words of a part: its paragraphs and the question. */
const PART_WORDS = [60, 170] as const;
/** A reason is one or two sentences. */
const REASON_WORDS = 40;
/** Grade 9 is read at fourteen. */
const GRADE = 9;

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

  test.each(PARTS)('$name is neither a stub nor a wall of text', ({ prose }) => {
    const words = wordsOf(prose).length;
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
  const TRADE = [
    ...['LED', 'source', 'sink', 'shield', 'DIN', 'TRS', 'TS', 'tip', 'ring', 'sleeve', 'isolated'],
    ...[
      'THRU',
      'hub',
      'merger',
      'omni',
      'bank',
      'channel',
      'program change',
      'control change',
      'phantom power',
    ],
    ...['THRU box', 'Y lead', 'USB host', 'optocoupler', 'adapter', 'running status'],
  ];
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

describe('The data and the claims of a lesson', () => {
  test.each(LESSONS)('$folder uses each entry of its data, and no other', ({ body, data }) => {
    for (const [name, entries] of Object.entries(data)) {
      if (typeof entries === 'function' || Array.isArray(entries) || !LISTS.includes(name)) {
        expect(body).toMatch(new RegExp(`\\b${name}\\b`));
        continue;
      }
      const used = new Set([...body.matchAll(new RegExp(`\\b${name}\\.(\\w+)`, 'g'))].map(([, one]) => one));
      expect([...used].sort()).toEqual(Object.keys(entries as object).sort());
    }
  });

  test.each(LESSONS)('$folder names only jacks that can be', ({ data }) => {
    expect(() => Object.values((data.jacks ?? {}) as LessonJacks).forEach(underTestFrom)).not.toThrow();
  });

  test.each(LINKS)('$name gives the outcome and the notes that the text claims', ({ link }) => {
    const verdict = solve(link);
    expect(verdict.outcome).toBe(link.outcome);
    expect(verdict.notes.map(({ kind }) => kind)).toEqual(expect.arrayContaining([...(link.notes ?? [])]));
  });

  test.each(LESSONS)('$folder claims something that a test can hold it to', ({ claims }) => {
    expect(Object.keys(claims).length).toBeGreaterThan(0);
  });

  test.each(CLAIMS)('$folder: $says', ({ pairs }) => {
    expect(pairs().length).toBeGreaterThan(0);
    expect(brokenPairs(pairs())).toEqual([]);
  });

  test.each(LESSONS)('$folder hides every suspect of each pile that it hunts in once', ({ body, data }) => {
    const piles = (data.piles ?? {}) as LessonPiles;
    const hunts = [...body.matchAll(/pile=\{piles\.(\w+)\}\s+hidden=\{\[([\s\S]*?)\]\}/g)];
    for (const [, pile = '', list = ''] of hunts) {
      const hidden = [...list.matchAll(/'([^']+)'/g)].map(([, name = '']) => name);
      expect(hidden.sort()).toEqual([...(piles[pile]?.suspects ?? [])].sort());
    }
    expect(hunts.length).toBe(body.match(/\bhidden=/g)?.length ?? 0);
  });
});
