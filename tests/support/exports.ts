/** Which exports no other file imports. Read from the text, so that Svelte, Astro and MDX files count as the users that they are. */
import { posix } from 'node:path';

/** `import a, { b, type c as d } from 'e'` and `export { f } from 'g'`, with or without `type`. */
const NAMED =
  /^\s*(?:import|export)\s(?:type\s)?\s*(?:[\w$]+\s*,\s*)?\{([^}]*)\}\s*from\s*['"](\.[^'"]+)['"]/gm;

/** Ways to a whole file: a namespace, an import at run time or of a type in place, a pattern of files, a worker. */
const WHOLE = [
  /^\s*(?:import|export)\s+(?:type\s+)?\*\s*(?:as\s+[\w$]+\s+)?from\s*['"](\.[^'"]+)['"]/gm,
  /\bimport\(\s*['"](\.[^'"]+)['"]\s*\)/g,
  /\bimport\.meta\.glob(?:<[^>]*>)?\(\s*['"](\.[^'"]+)['"]/g,
];

const DECLARED =
  /^export (?:declare )?(?:async )?(?:abstract )?(?:const|let|function\*?|class|interface|type|enum)\s+([\w$]+)/gm;
const PASSED_ON = /^export (?:type )?\{([^}]*)\}/gm;

/** Files that a tool or a test asks for what they export by their names, not by an import. */
const ASKED_BY_TOOLS =
  /^(src\/content\.config\.ts|src\/pages\/.*\.ts|content\/lessons\/[^/]+\/claims\.ts|tests\/(?!support\/).*)$/;

/** The names inside the braces of a statement: those of the other file, and those that are given here. */
function namesIn(inside: string): readonly { readonly there: string; readonly here: string }[] {
  return inside
    .replace(/\/\*.*?\*\/|\/\/.*$/gm, '')
    .split(',')
    .map((part) => part.trim().replace(/^type\s+/, ''))
    .filter((part) => part !== '')
    .map((part) => {
      const [there = '', here = there] = part.split(/\s+as\s+/);
      return { there, here };
    });
}

/** The names that a text exports, by declaration or by passing them on, each once. */
export function exportsIn(text: string): readonly string[] {
  const declared = [...text.matchAll(DECLARED)].map(([, name = '']) => name);
  const passedOn = [...text.matchAll(PASSED_ON)].flatMap(([, inside = '']) =>
    namesIn(inside).map(({ here }) => here),
  );
  return [...new Set([...declared, ...passedOn])];
}

/** What a text at `path` uses of other files: a path or a pattern of paths with a name of it, or '*' for all of them. */
export function usesIn(
  path: string,
  text: string,
): readonly { readonly file: string; readonly name: string }[] {
  const at = (to: string) => posix.normalize(posix.join(posix.dirname(path), to.replace(/\?.*$/, '')));
  return [
    ...[...text.matchAll(NAMED)].flatMap(([, inside = '', to = '']) =>
      namesIn(inside).map(({ there }) => ({ file: at(to), name: there })),
    ),
    ...WHOLE.flatMap((way) => [...text.matchAll(way)]).map(([, to = '']) => ({ file: at(to), name: '*' })),
  ];
}

/** Every export that no other file uses, as 'path: name', from the files of the project with their texts. */
export function unusedExports(texts: ReadonlyMap<string, string>): readonly string[] {
  const uses = [...texts].flatMap(([path, text]) => usesIn(path, text));
  const used = new Set(uses.map(({ file, name }) => `${file}: ${name}`));
  const patterns = uses.map(({ file }) => file).filter((file) => file.includes('*'));
  return [...texts]
    .filter(([path]) => path.endsWith('.ts') && !ASKED_BY_TOOLS.test(path))
    .filter(([path]) => !used.has(`${path}: *`) && !patterns.some((one) => posix.matchesGlob(path, one)))
    .flatMap(([path, text]) => exportsIn(text).map((name) => `${path}: ${name}`))
    .filter((one) => !used.has(one))
    .sort();
}
