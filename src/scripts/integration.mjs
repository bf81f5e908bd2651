/** Fewer, larger files of scripts: a trial says which parts the bundler would make, and those that pages load together become one file. */
import { gzipSync } from 'node:zlib';
import { rolldown } from 'rolldown';
import { mergedParts } from './merge.mjs';

/** Where a module names a file that only the real build writes. */
const FILE_NAME = /import\.meta\.ROLLDOWN_FILE_URL_[\w$-]+/g;

/** The chunks that the bundler makes by itself of the modules that a build has read, minified but not written. */
async function trial(build) {
  const known = new Map([...build.getModuleIds()].map((id) => [id, build.getModuleInfo(id)]));
  // In one order, however the modules were read, so that the same source gives the same files.
  const entries = [...known.keys()].filter((id) => known.get(id).isEntry).sort();
  if (entries.length === 0) return [];
  const asRead = {
    name: 'as-read',
    async resolveId(source, importer) {
      if (known.has(source)) return source;
      const found = await build.resolve(source, importer);
      return found && { id: found.id, moduleSideEffects: found.moduleSideEffects };
    },
    load(id) {
      const { code, moduleSideEffects } = known.get(id);
      return { code: (code ?? '').replaceAll(FILE_NAME, "''"), moduleType: 'js', moduleSideEffects };
    },
  };
  const bundle = await rolldown({ input: entries, plugins: [asRead], logLevel: 'silent' });
  const { output } = await bundle.generate({ format: 'es', minify: true });
  await bundle.close();
  return output
    .filter(({ type }) => type === 'chunk')
    .sort((one, other) => (one.fileName < other.fileName ? -1 : 1));
}

/** What `mergedParts` asks of a chunk. */
function partOf({ fileName, code, imports, isEntry, isDynamicEntry }) {
  const role = isEntry ? 'page' : isDynamicEntry ? 'later' : 'shared';
  return { name: fileName, bytes: gzipSync(code).length, imports, role };
}

/** The file of each module that goes into a merged one. */
function filesOf(chunks) {
  const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const byModule = new Map();
  for (const names of mergedParts(chunks.map(partOf))) {
    const of = names.map((name) => byName.get(name));
    // It is named for its largest part.
    const [{ name }] = of.toSorted((one, other) => other.code.length - one.code.length);
    for (const { moduleIds } of of) for (const id of moduleIds) byModule.set(id, `${name}-and-more`);
  }
  return byModule;
}

/** @returns {import('astro').AstroIntegration} */
export function fewerFiles() {
  let byModule = new Map();
  const rolldownOptions = {
    // A page's own file may so hand on what another file needs of it.
    preserveEntrySignatures: 'allow-extension',
    output: {
      codeSplitting: {
        groups: [{ name: (id) => byModule.get(id) ?? null, includeDependenciesRecursively: false }],
      },
    },
  };
  const plan = {
    name: 'fewer-files',
    applyToEnvironment: ({ name }) => name === 'client',
    configEnvironment: (name) => (name === 'client' ? { build: { rolldownOptions } } : undefined),
    async buildEnd(error) {
      if (error === undefined) byModule = filesOf(await trial(this));
    },
  };
  return {
    name: 'fewer-files',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => updateConfig({ vite: { plugins: [plan] } }),
    },
  };
}
