/** Reading a PDF that Chromium printed: how many pages it has, the text on them, and letters that lie on other letters. */
import { inflateSync } from 'node:zlib';

/** A PDF as far as a test needs it. `text` has no spaces, for a printer places letters, not words. */
interface PrintedPdf {
  readonly pages: number;
  /** Width and height of the first page, points (1/72 inch). */
  readonly size: readonly [width: number, height: number];
  readonly text: string;
  /** The text of each page. */
  readonly texts: readonly string[];
  /** Every letter that is drawn, page by page. */
  readonly letters: readonly (readonly PrintedLetter[])[];
}

/** A letter on paper: where its line begins to be drawn, from the top left corner of the page, and its size; points. */
interface PrintedLetter {
  readonly letter: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

const MARGIN = '12mm';

/** How a page is printed that asks for no size and margins of its own: on A4. */
export const ON_PAPER = {
  format: 'A4',
  preferCSSPageSize: true,
  margin: { top: MARGIN, bottom: MARGIN, left: MARGIN, right: MARGIN },
};

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
  const [width, height] = [Number(box[1]), Number(box[2])];
  const letters = pages.map((page) => lettersOn(page.head, objects, height));
  const texts = letters.map((page) => page.map(({ letter }) => letter).join(''));
  return { pages: pages.length, size: [width, height], text: texts.join(''), texts, letters };
}

/** Shares of a letter's size: closer along the line, and this far above or below it, two letters lie on each other. */
const ALONG = 0.4;
const [LEAST_APART, MOST_APART] = [0.12, 0.6];

/** Lines of a page that lie on other lines, as the letters of both around the place; those of one line stand beside each other. */
export function overprints({ letters }: PrintedPdf): readonly string[] {
  return letters.flatMap((page, at) => {
    const byHeight = page.map((letter, place) => ({ ...letter, place })).toSorted((a, b) => a.y - b.y);
    const around = (place: number): string =>
      page
        .slice(Math.max(0, place - 8), place + 8)
        .map(({ letter }) => letter)
        .join('');
    return byHeight.flatMap((one, first) => {
      const found: string[] = [];
      for (const other of byHeight.slice(first + 1)) {
        const size = Math.min(one.size, other.size);
        const apart = other.y - one.y;
        if (apart > MOST_APART * Math.max(one.size, other.size)) break;
        if (apart < LEAST_APART * size || apart > MOST_APART * size) continue;
        if (Math.abs(one.x - other.x) < ALONG * size)
          found.push(`page ${at + 1}: '${around(one.place)}' on '${around(other.place)}'`);
      }
      return found;
    });
  });
}

function unpack(head: string, content: string): string {
  const length = Number(/\/Length\s+(\d+)/.exec(head)?.[1] ?? NaN);
  const raw = Buffer.from(content.replace(/^stream\r?\n/, ''), 'latin1').subarray(0, length);
  return head.includes('/FlateDecode') ? inflateSync(raw).toString('latin1') : raw.toString('latin1');
}

type Objects = ReadonlyMap<string, { readonly head: string; readonly body: string }>;

/** A place and a scale on paper: x' = a x + c y + e, y' = b x + d y + f. */
type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

/** Fonts, transformations and text of a page's drawing, in their order. */
const MARKS =
  /\/(F\d+)\s+([\d.]+)\s+Tf|<([0-9A-Fa-f]+)>|((?:-?[\d.]+\s+){6})(cm|Tm)\b|(-?[\d.]+)\s+(-?[\d.]+)\s+Td\b|\b([qQ])\b/g;

/** Every letter that a page draws and that is no space; `height` of the page in points. */
function lettersOn(page: string, objects: Objects, height: number): readonly PrintedLetter[] {
  const contents = /\/Contents\s+(\d+) 0 R/.exec(page)?.[1] ?? '';
  const fonts = new Map<string, FontLetters>();
  for (const [, name = '', number = ''] of page.matchAll(/\/(F\d+)\s+(\d+) 0 R/g)) {
    const unicode = /\/ToUnicode\s+(\d+) 0 R/.exec(objects.get(number)?.head ?? '')?.[1] ?? '';
    fonts.set(name, lettersOf(objects.get(unicode)?.body ?? ''));
  }
  let font: FontLetters | undefined;
  let size = 0;
  let drawing: Matrix = [1, 0, 0, 1, 0, 0];
  let line: Matrix = drawing;
  const kept: Matrix[] = [];
  const found: PrintedLetter[] = [];
  for (const mark of (objects.get(contents)?.body ?? '').matchAll(MARKS)) {
    const [, name, points, glyphs, six, operator, x, y, state] = mark;
    if (name !== undefined) [font, size] = [fonts.get(name), Number(points)];
    else if (six !== undefined) {
      const matrix = six.trim().split(/\s+/).map(Number) as unknown as Matrix;
      if (operator === 'cm') drawing = times(matrix, drawing);
      else line = matrix;
    } else if (x !== undefined) line = times([1, 0, 0, 1, Number(x), Number(y)], line);
    else if (state === 'q') kept.push(drawing);
    else if (state === 'Q') drawing = kept.pop() ?? drawing;
    const [, , c, d, left, base] = times(line, drawing);
    for (const glyph of font && glyphs ? (glyphs.match(font.digits) ?? []) : []) {
      const letter = (font?.of.get(parseInt(glyph, 16)) ?? '').replace(/\s/g, '');
      if (letter !== '') found.push({ letter, x: left, y: height - base, size: size * Math.hypot(c, d) });
    }
  }
  return found;
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
