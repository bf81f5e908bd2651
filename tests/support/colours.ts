/** A colour of the style sheet on both papers, as '#rrggbb'. */
interface Pair {
  readonly light: string;
  readonly dark: string;
}

/** The colours that a style sheet declares as `--name: light-dark(#rrggbb, #rrggbb)`, by name without the dashes. */
export function readColours(styleSheet: string): ReadonlyMap<string, Pair> {
  const found = styleSheet.matchAll(/--([\w-]+):\s*light-dark\((#[0-9a-f]{6}),\s*(#[0-9a-f]{6})\)/gi);
  return new Map([...found].map(([, name = '', light = '', dark = '']) => [name, { light, dark }]));
}

/** Relative luminance of '#rrggbb', 0 to 1: WCAG 2.2, definition of 'relative luminance'. */
function luminance(colour: string): number {
  const channels = [1, 3, 5].map((start) => {
    const value = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  const [red = 0, green = 0, blue = 0] = channels;
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast of two colours, 1 to 21: WCAG 2.2, definition of 'contrast ratio'. */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}
