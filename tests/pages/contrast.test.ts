/** The script that judges contrast, on pages with one fault planted in each. Every number is worked out by hand or stands in WCAG. */
import { expect, test } from '../support/test.ts';
import { faintFaults } from '../support/accessible.ts';
import { contrastFault, contrastFaults, readColour } from '../support/contrast.ts';

/** On white #767676 has 4.54 and just passes, #777777 has 4.478 and just fails; #949494 has 3.03, #959595 has 2.996. */
const FAULTS: readonly (readonly [name: string, html: string, expected: RegExp])[] = [
  [
    'text a shade too light',
    '<p style="color:#777777">words</p>',
    /'words' in #777777 on #ffffff.*got 4\.47/,
  ],
  [
    'large text a shade too light',
    '<h1 style="color:#959595;font-size:24px">words</h1>',
    /at least 3, got 2\.99/,
  ],
  [
    'text that is not quite large',
    '<p style="color:#949494;font:600 20px serif">words</p>',
    /at least 4\.5, got 3\.03/,
  ],
  [
    'text on the ground of an element further out',
    '<div style="background:#222222"><p><b style="color:#333333">words</b></p></div>',
    /on #222222/,
  ],
  [
    'text that its block fades',
    // 0x76 at 0.9 on white: 0.9 x 118 + 0.1 x 255 = 131.7, 0x84.
    '<div style="opacity:0.9"><p style="color:#767676">words</p></div>',
    /'words' in #848484 on #ffffff/,
  ],
  ['half-clear text', '<p style="color:rgb(0 0 0 / 40%)">words</p>', /in #999999 on #ffffff/],
  ['a mixture of colours', '<p style="color:color-mix(in oklab, #fff 50%, #fff)">words</p>', /in #ffffff on/],
  ['a value in a field', '<input aria-label="a" value="words" style="color:#aaa">', /input: 'words'/],
  [
    'a hint in a field',
    '<style>::placeholder{color:#aaaaaa}</style><input aria-label="a" placeholder="hint">',
    /'hint' in #aaaaaa/,
  ],
  [
    'a word of a figure on a shape before it',
    '<svg width="99" height="99"><rect width="99" height="99" fill="#444"/><text y="30">words</text></svg>',
    /text: 'words' in #000000 on #444444/,
  ],
  [
    'a word of a figure that leaves its shape',
    '<svg width="99" height="99"><rect width="30" height="99" fill="#000"/><text y="30" fill="#fff">words words</text></svg>',
    /in #ffffff on #ffffff/,
  ],
  [
    'a word of a figure that is drawn large and shown small',
    '<svg width="50" height="50" viewBox="0 0 200 200"><text y="99" font-size="40" fill="#949494">w</text></svg>',
    /at least 4\.5, got 3\.03/,
  ],
  [
    'a line through a word',
    '<svg width="99" height="99"><path d="M0 25H99" stroke="#222" stroke-width="20"/><text y="30">words</text></svg>',
    /on #222222/,
  ],
];

test('contrast that is too low is found wanting, wherever the words stand', async ({ page }) => {
  for (const [name, html, expected] of FAULTS) {
    await page.setContent(`<body>${html}</body>`);
    expect.soft(await contrastFaults(page), name).toEqual([expect.stringMatching(expected)]);
  }
});

test('a fault of one scheme only is found from the other', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setContent(
    '<html style="color-scheme:light dark;background:light-dark(#fff,#000)"><p style="color:#333">words</p></html>',
  );
  expect(await faintFaults(page)).toEqual([
    "dark: p: 'words' in #333333 on #000000: contrast must be at least 4.5, got 1.66",
  ]);
});

test('a picture behind a word cannot be judged, and says so', async ({ page }) => {
  await page.setContent('<p style="background-image:linear-gradient(red,blue)">words</p>');
  await expect(contrastFaults(page)).rejects.toThrow(
    "colour: must be rgb() or rgba(), got 'linear-gradient(",
  );
});

const FINE: readonly (readonly [name: string, html: string])[] = [
  ['text of the faintest grey', '<p style="color:#767676">words</p>'],
  ['large text of its faintest grey', '<p style="color:#949494;font-size:24px">words</p>'],
  ['bold text from 14 points', '<p style="color:#949494;font:700 18.67px serif">words</p>'],
  ['a control that is off', '<button disabled style="color:#ddd">words</button>'],
  [
    'what is not on show',
    '<p hidden style="color:#ddd">words</p><details><summary>a</summary><i style="color:#ddd">b</i></details>',
  ],
  [
    'a word of a figure on a shape after it',
    '<svg><text y="30">words</text><rect width="9" height="9" fill="#444"/></svg>',
  ],
  [
    'a word with a rim of paper on a dark shape',
    '<svg><rect width="99" height="99"/><text y="30" paint-order="stroke" stroke="#fff" stroke-width="5">words</text></svg>',
  ],
];

test('contrast that is high enough, and words that are not on show, are left alone', async ({ page }) => {
  for (const [name, html] of FINE) {
    await page.setContent(`<body>${html}</body>`);
    expect.soft(await contrastFaults(page), name).toEqual([]);
  }
});

test('a layer fades all that it holds with it', () => {
  // Black on white in a block of opacity 0.5 on black: text 0, ground 0.5 x 255 = 127.5, 0x80; contrast (0.2159 + 0.05) / 0.05 = 5.32.
  const writing = { text: 'w', where: 'p', colour: 'rgb(0, 0, 0)', pixels: 16, weight: 400 };
  const under = (opacity: number) => [
    { colour: 'rgb(0, 0, 0)', opacity: 1 },
    { colour: 'rgb(255, 255, 255)', opacity },
  ];
  expect(contrastFault({ ...writing, under: under(0.5) })).toBeUndefined();
  // At 0.4 the ground is 102, 0x66: (0.1329 + 0.05) / 0.05 = 3.66.
  expect(contrastFault({ ...writing, under: under(0.4) })).toContain('in #000000 on #666666');
});

test('a colour in a form that is not known throws', () => {
  expect(readColour('rgba(255, 127.5, 0, 0.25)')).toEqual({ channels: [255, 127.5, 0], alpha: 0.25 });
  expect(() => readColour('lab(1 2 3)')).toThrow("colour: must be rgb() or rgba(), got 'lab(1 2 3)'");
});
