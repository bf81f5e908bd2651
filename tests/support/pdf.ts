/** Reading a PDF that Chromium printed: how many pages it has, and the text on them. */
import { inflateSync } from 'node:zlib';

/** A PDF as far as a test needs it. `text` has no spaces, for a printer places letters, not words. */
interface PrintedPdf {
  readonly pages: number;
  /** Width and height of the first page, points (1/72 inch). */
  readonly size: readonly [width: number, height: number];
  readonly text: string;
}

/** Read a printed PDF. @throws when it has no page or a font whose letters cannot be told. */
export function readPdf(bytes: Buffer): PrintedPdf {
  const file = bytes.toString('latin1');
  const objects = new Map<string, { readonly head: string; readonly body: string }>();
  for (const [, number = '', content = ''] of file.matchAll(/(\d+) 0 obj\s([\s\S]*?)\sendobj/g)) {
    const at = content.indexOf('stream');
    const head = at < 0 ? content : content.slice(0, at);
    objects.set(number, { head, body: at < 0 ? '' : unpack(head, content.slice(at)) });
  }
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b(?!s)/.test(head));
  const box = /\/MediaBox\s*\[\s*\S+\s+\S+\s+([\d.]+)\s+([\d.]+)/.exec(pages[0]?.head ?? '');
  if (!box) throw new Error('pdf: needs a page with a size, got none');
  const text = pages.map((page) => textOf(page.head, objects)).join('');
  return { pages: pages.length, size: [Number(box[1]), Number(box[2])], text: text.replace(/\s/g, '') };
}

function unpack(head: string, content: string): string {
  const length = Number(/\/Length\s+(\d+)/.exec(head)?.[1] ?? NaN);
  const raw = Buffer.from(content.replace(/^stream\r?\n/, ''), 'latin1').subarray(0, length);
  return head.includes('/FlateDecode') ? inflateSync(raw).toString('latin1') : raw.toString('latin1');
}

type Objects = ReadonlyMap<string, { readonly head: string; readonly body: string }>;

function textOf(page: string, objects: Objects): string {
  const contents = /\/Contents\s+(\d+) 0 R/.exec(page)?.[1] ?? '';
  const letters = new Map<string, FontLetters>();
  for (const [, name = '', number = ''] of page.matchAll(/\/(F\d+)\s+(\d+) 0 R/g)) {
    const unicode = /\/ToUnicode\s+(\d+) 0 R/.exec(objects.get(number)?.head ?? '')?.[1] ?? '';
    letters.set(name, lettersOf(objects.get(unicode)?.body ?? ''));
  }
  let font: FontLetters | undefined;
  let text = '';
  const marks = /\/(F\d+)\s+[\d.]+\s+Tf|<([0-9A-Fa-f]+)>/g;
  for (const [, name, glyphs] of (objects.get(contents)?.body ?? '').matchAll(marks)) {
    if (name !== undefined) font = letters.get(name);
    for (const glyph of font && glyphs ? (glyphs.match(font.digits) ?? []) : [])
      text += font?.of.get(parseInt(glyph, 16)) ?? '';
  }
  return text;
}

/** The letters of a font by glyph, and the hex digits of one glyph: two for a font drawn letter by letter, else four. */
interface FontLetters {
  readonly of: ReadonlyMap<number, string>;
  readonly digits: RegExp;
}

/** Read a font's ToUnicode map. */
function lettersOf(map: string): FontLetters {
  const letters = new Map<number, string>();
  const spelt = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block = ''] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, glyph = '', hex = ''] of block.matchAll(/<(\w+)>\s*<(\w+)>/g))
      letters.set(parseInt(glyph, 16), spelt(hex));
  for (const [, block = ''] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, first = '', last = '', hex = ''] of block.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g))
      for (let glyph = parseInt(first, 16); glyph <= parseInt(last, 16); glyph++)
        letters.set(glyph, String.fromCharCode(parseInt(hex, 16) + glyph - parseInt(first, 16)));
  return { of: letters, digits: /begincodespacerange\s*<\w\w>/.test(map) ? /../g : /..../g };
}
