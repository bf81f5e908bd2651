/** What a change can break: found by following imports from the changed files to all that stand on them. */
import { execFileSync } from 'node:child_process';
import type { Import } from './imports.ts';

/** What is to be run for a change. Paths are from the root of the project, addresses from the root of the site. */
interface Reach {
  /** Whether the change touches the tools themselves, so that everything is run. */
  readonly all: boolean;
  readonly unitTests: readonly string[];
  readonly browserTests: readonly string[];
  readonly addresses: readonly string[];
}

/** Files that every test stands on, without an import that says so. */
const TOOLS =
  /^(package(-lock)?\.json|\.ox\w+\.json|tsconfig\.json|astro\.config\.mjs|tests\/(run|[^/]+\.config)\.[tj]s|src\/content\.config\.ts)$/;

const UNIT_TEST = /^tests\/(cli|components|content|core|draw|reference)\/.*\.test\.ts$/;
const BROWSER_TEST = /^tests\/(pages|widgets)\/.*\.test\.ts$/;

/** Files that differ from a commit, new ones too and lost ones as well, from the root of the project. */
export function changedFiles(root: string, base: string): readonly string[] {
  const git = (...commands: readonly string[]) =>
    execFileSync('git', commands, { cwd: root, encoding: 'utf8' })
      .split('\n')
      .filter((line) => line !== '');
  return [
    ...git('diff', '--name-only', '--no-renames', base, '--'),
    ...git('ls-files', '--others', '--exclude-standard'),
  ];
}

/** The files themselves and every file that imports one of them, over any number of steps. */
export function standingOn(files: readonly string[], imports: readonly Import[]): ReadonlySet<string> {
  const importers = Map.groupBy(imports, ({ to }) => to.replace(/\?.*$/, ''));
  const reached = new Set(files);
  for (const file of reached) for (const { from } of importers.get(file) ?? []) reached.add(from);
  return reached;
}

/** The addresses that a source file of a page makes, given those of all lessons; none for any other file. */
function addressesOf(file: string, lessons: readonly string[]): readonly string[] {
  const lesson = /^content\/lessons\/\d+-([^/]+)\//.exec(file)?.[1];
  if (lesson !== undefined) return [`/lessons/${lesson}/`];
  const page = /^src\/pages\/(.+)\.astro$/.exec(file)?.[1];
  if (page === undefined) return [];
  if (page === '404') return ['/404.html'];
  if (page === 'lessons/[name]') return lessons;
  return [`/${page}/`.replace(/\/index\/$/, '/')];
}

/** The addresses that the text of a browser test opens: it names each in a string of its own or at the head of one. */
export function addressesIn(text: string): readonly string[] {
  return [
    ...new Set(
      [...text.matchAll(/['"`](\/(?:[a-z][a-z0-9-]*\/)*)(?=[#$'"`])/g)].map(([, found = '']) => found),
    ),
  ];
}

/**
 * What to run for changed files. `imports` are those of the whole project, `tests` its browser tests by path with their text,
 * and `sources` at least every file that makes a page.
 */
export function reachOf(
  changed: readonly string[],
  imports: readonly Import[],
  tests: ReadonlyMap<string, string>,
  sources: readonly string[],
): Reach {
  const reached = [...standingOn(changed, imports)];
  const lessons = sources
    .filter((file) => file.endsWith('/index.mdx'))
    .flatMap((file) => addressesOf(file, []));
  const pages = [...new Set(sources.flatMap((file) => addressesOf(file, lessons)))].sort();
  // Words for readers and what is copied as it is stand on every page, or can.
  const everywhere = changed.some((file) =>
    /^(content\/reference|public|src\/licences|src\/offline)\//.test(file),
  );
  const addresses = everywhere
    ? pages
    : [...new Set(reached.flatMap((file) => addressesOf(file, lessons)))].sort();
  const cli = reached.some((file) => file.startsWith('src/cli/'));
  const unitTests = reached.filter((file) => UNIT_TEST.test(file));
  return {
    all: changed.some((file) => TOOLS.test(file)),
    // The tests of content read the project's files as text, the command line is started as a program.
    unitTests: [...new Set([...unitTests, 'tests/content', ...(cli ? ['tests/cli'] : [])])].sort(),
    browserTests: [...tests]
      .filter(
        ([path, text]) =>
          reached.includes(path) || addressesIn(text).some((address) => addresses.includes(address)),
      )
      .map(([path]) => path)
      .filter((path) => BROWSER_TEST.test(path))
      .sort(),
    addresses,
  };
}
