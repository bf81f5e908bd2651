import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';

/** One import: the file it stands in and what it names, both from the root of the project with '/'. */
export interface Import {
  readonly from: string;
  /** A path of the project for a relative import; otherwise the name of a package, such as 'd3-shape' or 'node:fs'. */
  readonly to: string;
  readonly relative: boolean;
}

const SOURCE = /\.(ts|js|mjs|svelte|astro|mdx|css)$/;

/** Static imports, exports from another file, dynamic imports of a fixed name, and workers and files named from where they are used. */
const STATEMENTS = [
  /^\s*(?:import|export)\s(?:[^'"`;]*?\sfrom\s*)?['"]([^'"]+)['"]/gm,
  /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
  /\bnew URL\(\s*['"](\.[^'"]+)['"]\s*,\s*import\.meta\.url\s*\)/g,
  /\bimport\.meta\.glob(?:<[^>]*>)?\(\s*['"](\.[^'"]+)['"]/g,
  /^\s*@import\s+['"](\.[^'"]+)['"]/gm,
];

/** Every import in a text that stands at `path` (from the root of the project). */
export function importsIn(path: string, text: string): readonly Import[] {
  return STATEMENTS.flatMap((statement) => [...text.matchAll(statement)]).map(([, named = '']) => {
    // What follows a '?' says how a file is taken, not which.
    const name = named.replace(/\?.*$/, '');
    const isRelative = name.startsWith('.');
    return {
      from: path,
      to: isRelative ? posix.normalize(posix.join(posix.dirname(path), name)) : name,
      relative: isRelative,
    };
  });
}

/** Every file under the folders, all given from `root`. */
export function filesUnder(root: string, folders: readonly string[]): readonly string[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/')),
  );
}

/** Every import of every source file under the folders, which are given from `root`; a pattern becomes the files that it names. */
export function importsUnder(root: string, folders: readonly string[]): readonly Import[] {
  const files = filesUnder(root, folders);
  return files
    .filter((file) => SOURCE.test(file))
    .flatMap((file) => importsIn(file, readFileSync(join(root, file), 'utf8')))
    .flatMap((one) =>
      one.to.includes('*')
        ? files.filter((file) => posix.matchesGlob(file, one.to)).map((to) => ({ ...one, to }))
        : [one],
    );
}

/** The floors of the core, each with those it may import from. Arrows point one way. */
export const CORE_ARROWS: Readonly<Record<string, readonly string[]>> = {
  circuit: [],
  wiring: ['circuit'],
  verdict: ['circuit', 'wiring'],
  signal: ['circuit', 'wiring'],
  plan: ['wiring'],
  arrived: ['wiring', 'signal', 'verdict', 'plan', 'board'],
  readings: ['circuit', 'wiring', 'verdict', 'signal'],
  making: ['wiring', 'verdict', 'readings', 'plan'],
  faults: ['wiring', 'verdict', 'readings'],
  board: ['wiring', 'verdict', 'signal', 'making', 'plan'],
  answer: ['wiring', 'verdict'],
  planner: ['wiring', 'verdict', 'plan', 'board'],
  learn: [
    'answer',
    'circuit',
    'wiring',
    'verdict',
    'signal',
    'readings',
    'making',
    'faults',
    'plan',
    'board',
    'planner',
  ],
  class: ['wiring', 'verdict', 'making', 'plan', 'board', 'learn'],
};

/** The rooms of the components, each with the others that it may import from. Each may also use the core and the drawings. */
export const COMPONENT_ARROWS: Readonly<Record<string, readonly string[]>> = {
  parts: [],
  figures: [],
  keep: ['parts'],
  faults: ['parts', 'figures', 'keep', 'arrived'],
  arrived: ['parts', 'keep'],
  time: ['parts', 'figures'],
  bench: ['parts', 'figures', 'keep', 'time'],
  making: ['parts', 'figures', 'keep', 'bench', 'arrived'],
  meter: ['parts', 'figures', 'keep', 'bench', 'making'],
  board: ['parts', 'figures', 'keep', 'bench', 'making'],
  answer: ['parts', 'figures', 'keep', 'bench', 'meter'],
  course: ['parts', 'keep', 'class'],
  class: ['parts', 'figures', 'keep', 'practice'],
  practice: ['parts', 'figures', 'keep', 'time', 'bench', 'making', 'faults', 'meter', 'board'],
  lesson: ['parts', 'figures', 'bench', 'meter'],
  search: ['parts'],
  page: ['parts', 'figures', 'time', 'bench', 'lesson'],
};

/** The other folders outside the core, each with those it may import from. A lesson uses no other lesson. */
const OUTER_ARROWS: Readonly<Record<string, readonly string[]>> = {
  'src/draw': ['src/core'],
  'src/cli': ['src/core'],
  'src/licences': [],
  'src/course': ['src/core', 'src/styles', 'components/course'],
  'src/headers': [],
  'src/offline': [],
  'src/scripts': [],
  'src/search': [],
  'src/layouts': [
    'src/core',
    'src/styles',
    'components/lesson',
    'components/page',
    'components/parts',
    'components/practice',
  ],
  'src/pages': ['src/core', 'src/draw', 'src/layouts', 'src/styles', 'components', 'content'],
  'content/lessons': ['src/core', 'src/draw', 'components/lesson'],
  'content/reference': [],
};

/** Whether a file is the door of a floor of the core: the only file of it that others may import. */
const isDoor = (path: string): boolean => /^src\/core\/[^/]+\/index\.ts$/.test(path);

const isUnder = (path: string, folder: string): boolean => path.startsWith(`${folder}/`);

/** The folder of a lesson or of a room of the components that holds a file, or undefined. */
const roomOf = (path: string): string | undefined =>
  /^(content\/lessons\/[^/]+|components\/[^/]+)\//.exec(path)?.[1];

/** The folders that a file outside the core may import from besides its own, or undefined when no rule speaks of it. */
function allowedFrom(from: string): readonly string[] | undefined {
  const outer = Object.keys(OUTER_ARROWS).find((folder) => isUnder(from, folder));
  if (outer !== undefined) return OUTER_ARROWS[outer];
  const room = /^components\/([^/]+)\//.exec(from)?.[1];
  if (room === undefined) return undefined;
  const rooms = COMPONENT_ARROWS[room];
  // A room that is not in the plan may use nothing, so that whoever adds one writes down what it uses.
  return rooms === undefined ? [] : ['src/core', 'src/draw', ...rooms.map((other) => `components/${other}`)];
}

/** What is wrong with an import of one file by another, both outside the core or from outside into it. */
function outerComplaint(from: string, to: string): string | undefined {
  if (isUnder(to, 'src/core') && !isDoor(to))
    return `${from}: import the core through the door of a floor, got '${to}'`;
  const allowed = allowedFrom(from);
  const home = roomOf(from) ?? Object.keys(OUTER_ARROWS).find((folder) => isUnder(from, folder));
  if (allowed === undefined || home === undefined || isUnder(to, home)) return undefined;
  if (allowed.some((folder) => isUnder(to, folder))) return undefined;
  return `${from}: '${home}' may import from ${allowed.join(', ') || 'nothing'}, got '${to}'`;
}

function coreFolder(path: string): string | undefined {
  return /^src\/core\/([^/]+)\//.exec(path)?.[1];
}

/** What is wrong with an import, in words, or undefined when it is allowed. */
export function complaint({ from, to, relative: isRelative }: Import): string | undefined {
  const inCore = from.startsWith('src/core/');
  if (!isRelative) {
    if (inCore) return `${from}: the core imports nothing from outside, got '${to}'`;
    if (from.startsWith('src/draw/') && !/^d3-[a-z-]+$|^d3$/.test(to)) {
      return `${from}: drawing imports only d3 and the core, got '${to}'`;
    }
    return undefined;
  }
  if (inCore && !to.startsWith('src/core/'))
    return `${from}: the core imports nothing from outside, got '${to}'`;
  if (inCore) {
    const [folder, other] = [coreFolder(from), coreFolder(to)];
    if (folder === undefined || other === undefined)
      return `${from}: every file of the core stands on a floor, got '${to}'`;
    if (folder === other)
      return isDoor(to) ? `${from}: inside a floor, import the file itself, got the door '${to}'` : undefined;
    const allowed = CORE_ARROWS[folder];
    if (allowed === undefined) return `${from}: the floor '${folder}' is not in the plan of the core`;
    if (!allowed.includes(other)) return `${from}: '${folder}' must not import from '${other}', got '${to}'`;
    return isDoor(to) ? undefined : `${from}: import another floor through its door, got '${to}'`;
  }
  return outerComplaint(from, to);
}

/** Every circle of files that import each other, each as its path: the first circle found from each file on. */
export function circlesIn(imports: readonly Import[]): readonly string[] {
  const importsOf = Map.groupBy(
    imports.filter((one) => one.relative),
    ({ from }) => from,
  );
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (file: string, path: readonly string[]): void => {
    if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
    if (done.has(file) || path.includes(file)) return;
    for (const { to } of importsOf.get(file) ?? []) visit(to.replace(/\?.*$/, ''), [...path, file]);
    done.add(file);
  };
  for (const file of importsOf.keys()) visit(file, []);
  return circles;
}
