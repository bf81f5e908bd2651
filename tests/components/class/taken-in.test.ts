/** Files and folders that a teacher drops or picks. */
import { describe, expect, test } from 'vitest';
import { droppedFiles, pickedFiles } from '../../../components/class/files.ts';
import { readNamed, readText } from '../../../components/class/taken-in.ts';
import { resultHash, writeResultText } from '../../../src/core/class/index.ts';
import { sayProblem } from '../../../src/core/plan/index.ts';
import { studentResult } from '../../support/classroom.ts';

const file = (name: string, ...parts: BlobPart[]): File => new File(parts, name);

/** A file or a folder as a browser hands it over when it is dropped. */
function entryOf(path: string, inside?: readonly FileSystemEntry[]): FileSystemEntry {
  const name = path.slice(path.lastIndexOf('/') + 1);
  let left = inside ?? [];
  return {
    name,
    fullPath: path,
    isFile: inside === undefined,
    file: (done: (one: File) => void) => done(file(name, 'x')),
    createReader: () => ({
      // Browsers hand over the entries in parts, and an empty part after the last.
      readEntries: (done: (some: readonly FileSystemEntry[]) => void) => {
        const some = left.slice(0, 2);
        left = left.slice(2);
        done(some);
      },
    }),
  } as unknown as FileSystemEntry;
}

const dropped = (...entries: readonly FileSystemEntry[]): DataTransfer =>
  ({ items: entries.map((entry) => ({ webkitGetAsEntry: () => entry })) }) as unknown as DataTransfer;

describe('Files', () => {
  test('of a dropped folder come with the folder before their names, those of its folders too', async () => {
    const folder = entryOf('/class', [
      entryOf('/class/a.json'),
      entryOf('/class/b.json'),
      entryOf('/class/late', [entryOf('/class/late/c.json')]),
      entryOf('/class/.DS_Store'),
    ]);
    const found = await droppedFiles(dropped(folder, entryOf('/d.json')));
    expect(found.map(({ name }) => name)).toEqual([
      'class/a.json',
      'class/b.json',
      'class/late/c.json',
      'd.json',
    ]);
  });

  test('that systems leave in folders are nobody’s', () => {
    const names = ['.DS_Store', 'Thumbs.db', 'desktop.ini', 'loop-07.json'];
    expect(pickedFiles(names.map((name) => file(name))).map(({ name }) => name)).toEqual(['loop-07.json']);
  });
});

describe('A file', () => {
  const result = studentResult(7);
  const text = writeResultText(result);
  const read = async (one: File) => readNamed({ name: one.name, file: one });

  test('is read in UTF-8 and in UTF-16', async () => {
    const utf16 = new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));
    for (const one of [file('a', text), file('a', utf16)])
      expect(await read(one)).toEqual([{ source: 'a', reading: { ok: true, value: result } }]);
  });

  test('of a mail with links gives a result for each', async () => {
    const link = `https://example.org/mark/${await resultHash(result)}`;
    const found = await read(file('mail.txt', `${link}\n${link}`));
    expect(found.map(({ source, reading }) => [source, reading.ok])).toEqual([
      ['mail.txt, link 1', true],
      ['mail.txt, link 2', true],
    ]);
  });

  test('that is too large, or that cannot be read, is named with its reason', async () => {
    const problems = async (one: File): Promise<readonly string[]> =>
      (await read(one)).flatMap(({ reading }) => (reading.ok ? [] : reading.problems.map(sayProblem)));
    expect(await problems(file('a', new Uint8Array(2_000_001)))).toEqual([
      'the file: expected at most 2000000 bytes, got 2000001 bytes',
    ]);
    const gone = Object.assign(file('a', 'x'), {
      arrayBuffer: () => Promise.reject(new Error('it was moved')),
    });
    expect(await problems(gone)).toEqual(['the file: expected a file that can be read, got it was moved']);
    expect((await problems(file('a', 'PNG')))[0]).toMatch(/^the file: expected JSON, got other text/);
  });
});

test('A pasted text without a link says what was looked for, and what came', async () => {
  const [long, short] = [
    await readText('pasted 1', 'Dear teacher, here is my homework'),
    await readText('pasted 2', 'hello'),
  ];
  const problems = [...long, ...short].flatMap(({ reading }) =>
    reading.ok ? [] : reading.problems.map(sayProblem),
  );
  expect(problems).toEqual([
    "the text: expected a link to work that was handed in, got 'Dear teacher, here is my homew …'",
    "the text: expected a link to work that was handed in, got 'hello'",
  ]);
  const work = studentResult(3);
  const link = `See ${await resultHash(work)} and thanks`;
  for (const text of [link, writeResultText(work)])
    expect((await readText('pasted', text)).map(({ reading }) => reading.ok)).toEqual([true]);
});
