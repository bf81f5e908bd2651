import { readdirSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the built site: `dist`, or the one that SITE_FOLDER names. */
export const SITE_FOLDER: string = resolve(
  fileURLToPath(new URL('../..', import.meta.url)),
  process.env['SITE_FOLDER'] ?? 'dist',
);

/** Where the site stands on its host, as it was built: the root, or the folder that BASE_PATH names. */
export const SITE_BASE: string = process.env['BASE_PATH'] ?? '/';

/** One page of the built site: its address from the root of the site, and its file. */
interface BuiltPage {
  readonly address: string;
  readonly file: string;
}

/** Every page of the built site, by address. Throws when there is none. */
export function builtPages(folder: string = SITE_FOLDER): readonly BuiltPage[] {
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) => ({
      address: `/${name
        .split(sep)
        .join('/')
        .replace(/(^|\/)index\.html$/, '$1')}`,
      file: join(folder, name),
    }))
    .sort((one, other) => one.address.localeCompare(other.address));
  if (pages.length === 0) throw new Error(`site '${folder}': needs at least one page, got none`);
  return pages;
}

/** The pages that a reader opens: those made to stand inside a page of somebody else hold the same tools again. */
export function readerPages(): readonly BuiltPage[] {
  return builtPages().filter(({ address }) => !address.startsWith('/embed/'));
}
