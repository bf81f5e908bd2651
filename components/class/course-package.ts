/** A Set as a course package (SCORM 1.2): a zip of one page that plays it, and the list of its files. */
import { strToU8, zipSync } from 'fflate';
import { setCode } from '../../src/core/class/index.ts';
import type { WorkSet } from '../../src/core/class/index.ts';
import { escaped } from './markup.ts';

/** Files of the player as the build makes them, and the licences of what is in them; all at the root of the package. */
const PLAYER = ['course.js', 'course.css', 'licences.txt'] as const;

/** The page that plays the Set. */
const PAGE = 'index.html';

/** The manifest: one organization, one item with the score that passes, one resource that lists each file. */
export function manifestOf(set: WorkSet, pass: number): string {
  const title = escaped(set.title);
  const name = `work-${(setCode(set) ?? `seed-${set.seed}`).toLowerCase()}`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${name}" version="1.0"
  xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>1.2</schemaversion>
  </metadata>
  <organizations default="course">
    <organization identifier="course">
      <title>${title}</title>
      <item identifier="item" identifierref="page">
        <title>${title}</title>
        <adlcp:masteryscore>${pass}</adlcp:masteryscore>
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="page" type="webcontent" adlcp:scormtype="sco" href="${PAGE}">
${[PAGE, ...PLAYER].map((file) => `      <file href="${file}"/>`).join('\n')}
    </resource>
  </resources>
</manifest>
`;
}

/** The page of a package: the Set in it, the player beside it. */
export function pageOf(set: WorkSet, pass: number): string {
  const work = JSON.stringify({ set, pass }).replaceAll('<', '\\u003c');
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <title>${escaped(set.title)}</title>
    <link rel="stylesheet" href="course.css" />
  </head>
  <body>
    <main class="flow"></main>
    <script type="application/json" id="work">${work}</script>
    <script src="course.js"></script>
  </body>
</html>
`;
}

/** The moment that every entry of a package bears, so that the same Set gives the same bytes. */
const MOMENT = '2000-01-01T12:00:00';

/**
 * The bytes of a package; `pass` is the share of right tasks that passes, per cent. `fileAt` gives a file of the site by its address
 * from the root. @throws when one cannot be had.
 */
export async function coursePackage(
  set: WorkSet,
  pass: number,
  fileAt: (address: `/${string}`) => Promise<Uint8Array>,
): Promise<Uint8Array<ArrayBuffer>> {
  const player = await Promise.all(
    PLAYER.map(
      async (name) => [name, await fileAt(name === 'licences.txt' ? `/${name}` : `/course/${name}`)] as const,
    ),
  );
  return zipSync(
    {
      'imsmanifest.xml': strToU8(manifestOf(set, pass)),
      [PAGE]: strToU8(pageOf(set, pass)),
      ...Object.fromEntries(player),
    },
    { level: 0, mtime: MOMENT },
  );
}
