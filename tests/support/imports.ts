import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';

/** One import: the file it stands in and what it names, both from the root of the project with '/'. */
export interface Import {
  readonly from: string;
  /** A path of the project for a relative import; otherwise the name of a package, such as 'd3-shape' or 'node:fs'. */
  readonly to: string;
  readonly relative: boolean;
}

const SOURCE = /\.(ts|js|mjs|svelte|astro|mdx)$/;

/** Static imports, exports from another file, and dynamic imports of a fixed name. */
const STATEMENTS = [
  /^\s*(?:import|export)\s(?:[^'"`;]*?\sfrom\s*)?['"]([^'"]+)['"]/gm,
  /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g,
];

/** Every import in a text that stands at `path` (from the root of the project). */
export function importsIn(path: string, text: string): readonly Import[] {
  return STATEMENTS.flatMap((statement) => [...text.matchAll(statement)]).map(([, name = '']) => {
    const isRelative = name.startsWith('.');
    return {
      from: path,
      to: isRelative ? posix.normalize(posix.join(posix.dirname(path), name)) : name,
      relative: isRelative,
    };
  });
}

/** Every import of every source file under the folders, which are given from `root`. */
export function importsUnder(root: string, folders: readonly string[]): readonly Import[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && SOURCE.test(entry.name))
      .flatMap((entry) => {
        const file = join(entry.parentPath, entry.name);
        return importsIn(relative(root, file).split(sep).join('/'), readFileSync(file, 'utf8'));
      }),
  );
}

/** The folders of the core, each with those it may import from. Arrows point one way. */
export const CORE_ARROWS: Readonly<Record<string, readonly string[]>> = {
  circuit: [],
  wiring: ['circuit'],
  verdict: ['circuit', 'wiring'],
  signal: ['circuit', 'wiring'],
  meter: ['circuit', 'wiring', 'verdict', 'signal'],
  board: ['circuit', 'wiring', 'verdict', 'signal', 'meter'],
  learn: ['circuit', 'wiring', 'verdict', 'signal', 'meter', 'board'],
  files: ['circuit', 'wiring', 'verdict', 'signal', 'meter', 'board'],
};

/** The floors of the house, lowest first: a floor may import from itself and from those below. */
export const FLOORS = ['src/core', 'src/draw', 'components', 'src/layouts', 'src/pages'] as const;

/** The one file of the core that others may import. */
export const CORE_DOOR = 'src/core/index.ts';

function floorOf(path: string): number {
  return FLOORS.findIndex((floor) => path === floor || path.startsWith(`${floor}/`));
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
    if (from === CORE_DOOR) return undefined;
    if (to === CORE_DOOR) return `${from}: inside the core, import the file itself, got the door '${to}'`;
    const [folder, other] = [coreFolder(from), coreFolder(to)];
    if (folder === undefined || other === undefined)
      return `${from}: every file of the core stands in a folder, got '${to}'`;
    if (folder === other) return undefined;
    const allowed = CORE_ARROWS[folder];
    if (allowed === undefined) return `${from}: the folder '${folder}' is not in the plan of the core`;
    return allowed.includes(other)
      ? undefined
      : `${from}: '${folder}' must not import from '${other}', got '${to}'`;
  }
  if (to.startsWith('src/core/') && to !== CORE_DOOR)
    return `${from}: import the core through ${CORE_DOOR}, got '${to}'`;
  const [floor, below] = [floorOf(from), floorOf(to)];
  if (floor >= 0 && below > floor) return `${from}: an import must not point up the house, got '${to}'`;
  return undefined;
}
