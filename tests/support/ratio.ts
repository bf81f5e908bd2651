/** How much test there is to the code, how long the files are, and which stand over their size. */
import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { filesUnder } from './imports.ts';

/** One part of the house with its tests: the first part whose folders hold a file counts it. */
interface Part {
  readonly name: string;
  readonly code: RegExp;
  readonly tests: RegExp;
}

/** What was counted of one part: lines of code and of tests. */
interface Count {
  readonly name: string;
  readonly code: number;
  readonly tests: number;
}

/** Goals of tests to code, and most lines of a file: our own, after what was once reached. */
const GOALS: Readonly<Record<string, number>> = { core: 0.8, components: 0.4 };

/** Most lines of a file, by the folder that it stands under. */
const MOST_LINES = { 'src/core': 250, components: 300 } as const;

const CODE = /\.(ts|svelte|astro)$/;

/** The floors of the core found in `files`, the core as a whole, drawing, and what readers touch with the tests in a browser. */
function partsOf(files: readonly string[]): readonly Part[] {
  const floors = [
    ...new Set(
      files.map((file) => /^src\/core\/([^/]+)\//.exec(file)?.[1]).filter((name) => name !== undefined),
    ),
  ].sort();
  return [
    ...floors.map((floor) => ({
      name: `core/${floor}`,
      code: new RegExp(`^src/core/${floor}/`),
      tests: new RegExp(`^tests/core/${floor}/`),
    })),
    { name: 'core', code: /^src\/core\//, tests: /^tests\/(core|reference)\// },
    { name: 'draw', code: /^src\/draw\//, tests: /^tests\/draw\// },
    { name: 'components', code: /^components\//, tests: /^tests\/(widgets|pages|components)\// },
  ];
}

/** Lines of code and of tests of every part, from the files with their texts. */
export function countLines(texts: ReadonlyMap<string, string>): readonly Count[] {
  const lines = (pattern: RegExp) =>
    [...texts]
      .filter(([path]) => pattern.test(path) && CODE.test(path))
      .reduce((sum, [, text]) => sum + linesOf(text), 0);
  return partsOf([...texts.keys()]).map(({ name, code, tests }) => ({
    name,
    code: lines(code),
    tests: lines(tests),
  }));
}

/** Lines of a text: the last may end without a line feed. */
export function linesOf(text: string): number {
  return text === '' ? 0 : text.replace(/\n$/, '').split('\n').length;
}

/** Files of code with more lines than their folder allows, longest first. */
export function overSize(
  texts: ReadonlyMap<string, string>,
): readonly { readonly path: string; readonly lines: number }[] {
  return [...texts]
    .filter(([path]) => CODE.test(path))
    .map(([path, text]) => ({ path, lines: linesOf(text) }))
    .filter(({ path, lines }) =>
      Object.entries(MOST_LINES).some(([folder, most]) => path.startsWith(`${folder}/`) && lines > most),
    )
    .sort((one, other) => other.lines - one.lines);
}

/** The middle of some numbers; of an even count the lower of the two. Throws when there is none. */
export function median(numbers: readonly number[]): number {
  const middle = [...numbers].sort((one, other) => one - other)[Math.ceil(numbers.length / 2) - 1];
  if (middle === undefined) throw new Error('median: needs at least one number, got none');
  return middle;
}

/** Every file of code and tests under `root` with its text. */
export function readTexts(root: string): ReadonlyMap<string, string> {
  return new Map(
    filesUnder(root, ['src', 'components', 'tests'])
      .filter((path) => CODE.test(path))
      .map((path) => [path, readFileSync(`${root}/${path}`, 'utf8')]),
  );
}

/** The count as a table of words, a line each. */
export function ratioTable(texts: ReadonlyMap<string, string>): readonly string[] {
  const core = [...texts].filter(([path]) => path.startsWith('src/core/')).map(([, text]) => linesOf(text));
  return [
    `${'part'.padEnd(18)}${'code'.padStart(7)}${'tests'.padStart(7)}${'ratio'.padStart(7)}`,
    ...countLines(texts).map(({ name, code, tests }) => {
      const goal = GOALS[name];
      const ratio = (code === 0 ? 0 : tests / code).toFixed(2);
      const wanted = goal === undefined ? '' : `  goal ${goal}`;
      return `${name.padEnd(18)}${String(code).padStart(7)}${String(tests).padStart(7)}${ratio.padStart(7)}${wanted}`;
    }),
    `median core file: ${median(core)} lines, of ${core.length} files`,
    `over size: ${
      overSize(texts)
        .map(({ path, lines }) => `${path} ${lines}`)
        .join(', ') || 'none'
    }`,
  ];
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  for (const line of ratioTable(readTexts(fileURLToPath(new URL('../..', import.meta.url)))))
    console.log(line);
