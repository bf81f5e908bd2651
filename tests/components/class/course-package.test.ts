import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { coursePackage, manifestOf, pageOf } from '../../../components/class/course-package.ts';
import { readSet } from '../../../src/core/class/index.ts';
import { schemaComplaints } from '../../support/manifest-schema.ts';

const reading = readSet({
  format: 'five-milliamps-set',
  version: 1,
  title: 'Loops & <"leads">\u0007',
  seed: 5,
  perStudent: true,
  items: [{ kind: 'loop-current', level: 2, count: 2 }],
  show: 'end',
});
if (!reading.ok) throw new Error('the Set of the test is whole');
const SET = reading.value;
const fileAt = (address: string): Promise<Uint8Array> =>
  Promise.resolve(new TextEncoder().encode(`at ${address}`));
const textOf = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

describe('A course package', () => {
  test('holds the manifest at its root, and exactly the files that the manifest lists', async () => {
    const files = unzipSync(await coursePackage(SET, 60, fileAt));
    const manifest = textOf(files['imsmanifest.xml']);
    const listed = [...manifest.matchAll(/<file href="([^"]+)"\/>/g)].map(([, name]) => name);
    expect(Object.keys(files).sort()).toEqual(['imsmanifest.xml', ...listed].sort());
    expect(textOf(files['course.js'])).toBe('at /course/course.js');
    expect(textOf(files['licences.txt'])).toBe('at /licences.txt');
  });

  test('has stored entries alone, and the same bytes for the same Set', async () => {
    const [one, other] = await Promise.all([coursePackage(SET, 60, fileAt), coursePackage(SET, 60, fileAt)]);
    expect(one).toEqual(other);
    // The way of packing stands at byte 8 of each local head (PKZIP application note, 4.3.7): 0 is stored.
    const view = new DataView(one.buffer, one.byteOffset);
    const heads = [...one.keys()].filter(
      (at) => at + 30 < one.length && view.getUint32(at, true) === 0x04034b50,
    );
    expect(heads.map((at) => view.getUint16(at + 8, true))).toEqual([0, 0, 0, 0, 0]);
  });

  test('is not written where a file cannot be had', async () => {
    await expect(coursePackage(SET, 60, () => Promise.reject(new Error('offline')))).rejects.toThrow(
      'offline',
    );
  });
});

describe('The manifest', () => {
  const text = manifestOf(SET, 75);

  test('is of SCORM 1.2, with the score that passes and relative addresses', () => {
    expect(text).toContain('<schema>ADL SCORM</schema>');
    expect(text).toContain('<schemaversion>1.2</schemaversion>');
    expect(text).toContain('<adlcp:masteryscore>75</adlcp:masteryscore>');
    expect(text).toContain(
      '<resource identifier="page" type="webcontent" adlcp:scormtype="sco" href="index.html">',
    );
    expect([...text.matchAll(/href="([^"]*)"/g)].every(([, href]) => /^[a-z.]+$/.test(href ?? ''))).toBe(
      true,
    );
  });

  test('names itself as XML allows, refers only to what is in it, and keeps a title from ending a tag', () => {
    expect(/<manifest identifier="([^"]+)"/.exec(text)?.[1]).toMatch(/^[A-Za-z_][\w.-]*$/);
    const ids = [...text.matchAll(/ identifier="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, , name] of text.matchAll(/ (identifierref|default)="([^"]+)"/g))
      expect(ids).toContain(name);
    expect(text).toContain('<title>Loops &#38; &#60;&#34;leads&#34;&#62; </title>');
  });
});

describe('The structure of the manifest', () => {
  const text = manifestOf(SET, 75);

  test('is what the public schemas allow, for a Set with a code and for one without', () => {
    const kinds = ['lay-lead', 'loop-current', 'trace-to-hex', 'missing-line', 'rank-loops', 'next-check'];
    const long = { ...SET, items: kinds.map((kind) => ({ kind, level: 2, count: 3 }) as const) };
    for (const set of [SET, long, { ...SET, title: '&'.repeat(60) }])
      expect(schemaComplaints(manifestOf(set, 75))).toEqual([]);
  });

  test.each([
    ['<organizations', '<metadata/><organizations', "'manifest' holds 'metadata' 0 to 1 times, got 2"],
    [' identifierref="page"', ' ref="page"', "'item' has no attribute 'ref'"],
    [' type="webcontent"', '', "'resource' needs 'type'"],
    ['scormtype="sco"', 'scormtype="page"', "'adlcp:scormtype' is sco or asset, got 'page'"],
    ['imscp_rootv1p1p2"', 'imscp_v1p1"', "'xmlns' must be http://www.imsproject.org/xsd/imscp_rootv1p1p2"],
    ['identifier="item"', 'identifier="7 items"', "identifier '7 items' is no ID of its own"],
    ['identifier="item"', 'identifier="page"', "identifier 'page' is no ID of its own"],
    ['<file href="index.html"/>', '<file/>', "'file' needs 'href'"],
    [
      '<schemaversion>',
      '<schemaversion>1.2 and many more letters',
      "'schemaversion' has at most 20 characters",
    ],
  ])('is found to be spoiled where %s becomes %s', (from, to, complaint) => {
    expect(schemaComplaints(text.replace(from, to))).toContain(complaint);
  });
});

test('The page of a package holds the Set, and no title ends its script', () => {
  const bad = { ...SET, title: '</script><script>alert(1)</script>' };
  const page = pageOf(bad, 60);
  expect(page.match(/<script/g)).toHaveLength(2);
  const work = /id="work">([^<]*)</.exec(page)?.[1] ?? '';
  expect(JSON.parse(work)).toEqual({ set: bad, pass: 60 });
});
