/** A lesson taken apart: its parts, and the words a reader reads in each. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Where lessons live, from the root of the project. */
export const LESSONS_FOLDER = 'content/lessons';

/** One part of a lesson. */
interface LessonPart {
  readonly title: string;
  readonly source: string;
  /** Paragraphs and the question, as the reader meets them, without captions, margin notes and answers. */
  readonly prose: string;
  /** The paragraphs alone, terms marked as '[id|words]'. */
  readonly marked: string;
  readonly answers: readonly string[];
  readonly reasons: readonly string[];
}

/** A lesson as its author wrote it. */
interface LessonText {
  readonly folder: string;
  readonly frontMatter: string;
  readonly body: string;
  readonly parts: readonly LessonPart[];
}

/** The folders of all lessons, in order. */
export function lessonFolders(): readonly string[] {
  return readdirSync(LESSONS_FOLDER)
    .filter((name) => /^\d\d-/.test(name))
    .sort();
}

/** A lesson taken apart. @throws when it has no front matter. */
export function readLesson(folder: string): LessonText {
  const text = readFileSync(join(LESSONS_FOLDER, folder, 'index.mdx'), 'utf8');
  const [, frontMatter, body] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  if (frontMatter === undefined || body === undefined)
    throw new Error(`lesson '${folder}': needs front matter`);
  return {
    folder,
    frontMatter,
    body,
    parts: [...body.matchAll(/<Part n=\{\d+\} title="([^"]+)">([\s\S]*?)<\/Part>/g)].map(
      ([, title = '', source = '']) => ({
        title,
        source,
        prose: `${questionIn(source)}\n\n${proseOf(source)}`,
        marked: proseOf(source.replace(/<Term id="([^"]+)">([^<]*)<\/Term>/g, '[$1|$2]')),
        answers: stringsAfter('text', source),
        reasons: stringsAfter('because', source),
      }),
    ),
  };
}

/** The strings that follow `name:` in an attribute, with what is asked of the core put as one word. */
function stringsAfter(name: string, source: string): readonly string[] {
  return [...source.matchAll(new RegExp(`\\b${name}:\\s*(?:'([^']*)'|"([^"]*)"|\`([^\`]*)\`)`, 'g'))].map(
    ([, single, double, template]) => plain(single ?? double ?? template ?? ''),
  );
}

/** The question of a part. */
export function questionIn(source: string): string {
  const [, quoted, template] = /question=(?:"([^"]*)"|\{`([^`]*)`\})/.exec(source) ?? [];
  return plain(quoted ?? template ?? '');
}

/** What stands between the tags: words of terms are kept, a reading counts as one word. */
function proseOf(source: string): string {
  const noNotes = source.replace(/<MarginNote[\s\S]*?<\/MarginNote>/g, '');
  const asked = noNotes.replace(/<(?:Reading|CircuitValue)\s[^>]*?\/>/g, 'amount');
  return plain(withoutTags(asked));
}

/** Drops every tag with its attributes; braces in attributes may hold '>' and strings. */
function withoutTags(text: string): string {
  let out = '';
  let depth = 0;
  let inTag = false;
  for (const [at, letter] of [...text].entries()) {
    if (!inTag && letter === '<' && /[A-Za-z/]/.test(text[at + 1] ?? '')) inTag = true;
    else if (inTag && letter === '{') depth += 1;
    else if (inTag && letter === '}') depth -= 1;
    else if (inTag && letter === '>' && depth === 0) inTag = false;
    else if (!inTag) out += letter;
  }
  return out;
}

function plain(text: string): string {
  return text
    .replace(/\$?\{[^}]*\}/g, 'amount')
    .replace(/\*\*/g, '')
    .replace(/[ \t]+/g, ' ')
    .trim();
}
