/** `npm run fonts`: cut out of each font the letters and weights that the workbook sets, as `fonts.css` names them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';

/** Each file beside this one, and what it is cut out of. */
const FILES = {
  'literata.woff2': 'literata/files/literata-latin-wght-normal.woff2',
  'literata-italic.woff2': 'literata/files/literata-latin-wght-italic.woff2',
  'atkinson.woff2': 'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
};

/** What the pages use of each font: pairs, marks over letters, figures of one width, joined letters (OpenType's own tags). */
const FEATURES = ['kern', 'ccmp', 'mark', 'tnum', 'liga'];

const css = readFileSync(new URL('../fonts.css', import.meta.url), 'utf8');

/** What `fonts.css` says of a file: its characters as one text, and its bounds of weight. */
function namedIn(file) {
  const rule = css.split('@font-face').find((one) => one.includes(`./fonts/${file}`));
  const range = /unicode-range:([^;]+);/.exec(rule ?? '')?.[1];
  const weight = /font-weight: (\d+) (\d+);/.exec(rule ?? '');
  if (range === undefined || weight === null)
    throw new Error(
      `fonts: ${file}: expected a rule with unicode-range and two weights in fonts.css, got none`,
    );
  const text = range.split(',').map((part) => {
    const [first, last = first] = part
      .trim()
      .slice('U+'.length)
      .split('-')
      .map((code) => Number.parseInt(code, 16));
    return Array.from({ length: last - first + 1 }, (_, step) => String.fromCodePoint(first + step)).join('');
  });
  return { text: text.join(''), min: Number(weight[1]), max: Number(weight[2]) };
}

for (const [file, from] of Object.entries(FILES)) {
  const { text, min, max } = namedIn(file);
  const whole = readFileSync(fileURLToPath(import.meta.resolve(`@fontsource-variable/${from}`)));
  const cut = await subsetFont(whole, text, {
    targetFormat: 'woff2',
    variationAxes: { wght: { min, max } },
    keepFeatures: FEATURES,
    noHinting: true,
    // Who made it, under which licence, and where that stands.
    preserveNameIds: [0, 13, 14],
  });
  writeFileSync(new URL(file, import.meta.url), cut);
}
