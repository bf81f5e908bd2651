/**
 * The contrast of everything written on an open page, from the colours that the browser computed: nothing is drawn or
 * photographed. The page only says what stands over what; the judging is done here.
 */
import type { Page } from '@playwright/test';
import { contrast } from './colours.ts';

/** Least contrast of text, and of large text: WCAG 2.2, success criterion 1.4.3. */
const LEAST = 4.5;
const LEAST_LARGE = 3;

/** Text is large from 18 points, or from 14 points when it is bold (the same criterion); a point is 4/3 px. */
const LARGE_PIXELS = 24;
const LARGE_BOLD_PIXELS = (14 * 4) / 3;
const BOLD = 700;

/** What a browser paints a page on when the page says nothing. */
const CANVAS = [255, 255, 255] as const;

type Channels = readonly [red: number, green: number, blue: number];

/** One thing that is painted before the text and under it, or around it: a colour as CSS gives it, and its opacity. */
interface Layer {
  readonly colour: string;
  readonly opacity: number;
}

/** Text in one style on one ground: a sample of it, its size as seen, and what lies under it from the outermost inwards. */
interface Writing {
  readonly text: string;
  readonly where: string;
  readonly colour: string;
  readonly pixels: number;
  readonly weight: number;
  readonly under: readonly Layer[];
}

/** Channels, 0 to 255, and alpha of a colour as `rgb()` or `rgba()`. Throws when it is of another form. */
export function readColour(colour: string): { readonly channels: Channels; readonly alpha: number } {
  const [red, green, blue, alpha = 1] = /^rgba?\(/.test(colour)
    ? (colour.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number)
    : [];
  if (red === undefined || green === undefined || blue === undefined)
    throw new Error(`colour: must be rgb() or rgba(), got '${colour}'`);
  return { channels: [red, green, blue], alpha };
}

/** Put `over` with its share, 0 to 1, on `under`. */
function mix(over: Channels, under: Channels, share: number): Channels {
  const channel = (at: 0 | 1 | 2) => over[at] * share + under[at] * (1 - share);
  return [channel(0), channel(1), channel(2)];
}

/** The colours that the eye gets of a text and of its ground: each layer holds all that follow, and fades them with it. */
function seen(writing: Writing): { readonly text: Channels; readonly ground: Channels } {
  const paint = (layers: readonly Layer[], below: Channels): { text: Channels; ground: Channels } => {
    const [layer, ...rest] = layers;
    if (layer === undefined) {
      const { channels, alpha } = readColour(writing.colour);
      return { text: mix(channels, below, alpha), ground: below };
    }
    const { channels, alpha } = readColour(layer.colour);
    const inside = paint(rest, mix(channels, below, alpha));
    return {
      text: mix(inside.text, below, layer.opacity),
      ground: mix(inside.ground, below, layer.opacity),
    };
  };
  return paint(writing.under, CANVAS);
}

const hex = (channels: Channels): string =>
  `#${channels.map((channel) => Math.round(channel).toString(16).padStart(2, '0')).join('')}`;

/** What is wrong with the contrast of a text, in words, or undefined when it can be read. */
export function contrastFault(writing: Writing): string | undefined {
  const { text, ground } = seen(writing);
  const large =
    writing.pixels >= LARGE_PIXELS || (writing.weight >= BOLD && writing.pixels >= LARGE_BOLD_PIXELS);
  const least = large ? LEAST_LARGE : LEAST;
  const found = contrast(hex(text), hex(ground));
  if (found >= least) return undefined;
  return `${writing.where}: '${writing.text}' in ${hex(text)} on ${hex(ground)}: contrast must be at least ${least}, got ${Math.floor(found * 100) / 100}`;
}

/** Runs in the page: every text that is on show, once for each style and ground. Names nothing from outside itself. */
function readWritings(): Writing[] {
  const found = new Map<string, Writing>();
  const drawn = new Map<SVGSVGElement, { shape: SVGGeometryElement; box: DOMRect }[]>();

  const shapesOf = (svg: SVGSVGElement) => {
    const known = drawn.get(svg);
    if (known !== undefined) return known;
    const shapes = [...svg.querySelectorAll('*')]
      .filter((one) => one instanceof SVGGeometryElement)
      .filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.closest('defs') === null)
      .map((shape) => {
        // The box leaves the stroke out; twice its half is room enough for any scale in use.
        const [box, room] = [
          shape.getBoundingClientRect(),
          Number.parseFloat(getComputedStyle(shape).strokeWidth),
        ];
        return {
          shape,
          box: new DOMRect(box.x - room, box.y - room, box.width + 2 * room, box.height + 2 * room),
        };
      });
    drawn.set(svg, shapes);
    return shapes;
  };

  const chainOf = (element: Element): Element[] => {
    const chain: Element[] = [];
    for (let one: Element | null = element; one !== null; one = one.parentElement) chain.unshift(one);
    return chain;
  };

  const around = new Map<Element, readonly Layer[]>();

  const brush = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  /** A colour of any form as rgb() or rgba(); what is no colour stays as it is. */
  const plain = (colour: string): string => {
    if (brush === null || colour.startsWith('rgb') || !CSS.supports('color', colour)) return colour;
    brush.clearRect(0, 0, 1, 1);
    brush.fillStyle = colour;
    brush.fillRect(0, 0, 1, 1);
    const [red = 0, green = 0, blue = 0, alpha = 0] = brush.getImageData(0, 0, 1, 1).data;
    return `rgba(${red}, ${green}, ${blue}, ${alpha / 255})`;
  };

  const fade = (colour: string, share: number): string =>
    plain(colour).replace(/^rgba?\(([^)]*)\)$/, (_, inside: string) => {
      const [red, green, blue, alpha = '1'] = inside.split(',').map((part) => part.trim());
      return `rgba(${red}, ${green}, ${blue}, ${Number(alpha) * share})`;
    });

  /** What lies under an element, from the outermost inwards; asked once of each. */
  const groundsOf = (element: Element): readonly Layer[] => {
    const known = around.get(element);
    if (known !== undefined) return known;
    const { backgroundColor, opacity, backgroundImage } = getComputedStyle(element);
    const own: Layer = {
      // A picture behind text has no one colour: its name is no colour either, and fails.
      colour: backgroundImage === 'none' ? plain(backgroundColor) : backgroundImage,
      opacity: Number(opacity),
    };
    const outer = element.parentElement;
    const grounds = [...(outer === null ? [] : groundsOf(outer)), own];
    around.set(element, grounds);
    return grounds;
  };

  /** The shapes of a figure that were painted before a text and hold the point `x`, `y` of the window. */
  const shapesUnder = (text: Element, svg: SVGSVGElement, x: number, y: number): Layer[] =>
    shapesOf(svg).flatMap(({ shape, box }) => {
      if (x < box.left || x > box.right || y < box.top || y > box.bottom) return [];
      if (!(shape.compareDocumentPosition(text) & Node.DOCUMENT_POSITION_FOLLOWING)) return [];
      const point = new DOMPoint(x, y).matrixTransform(shape.getScreenCTM()?.inverse());
      const style = getComputedStyle(shape);
      let share = 1;
      for (const one of chainOf(shape))
        if (svg.contains(one) && !one.contains(text)) share *= Number(getComputedStyle(one).opacity);
      const layers: Layer[] = [];
      if (style.fill !== 'none' && shape.isPointInFill(point))
        layers.push({ colour: fade(style.fill, share * Number(style.fillOpacity)), opacity: 1 });
      if (style.stroke !== 'none' && shape.isPointInStroke(point))
        layers.push({ colour: fade(style.stroke, share * Number(style.strokeOpacity)), opacity: 1 });
      return layers;
    });

  const note = (element: Element, text: string, rects: Iterable<DOMRect>, colour?: string): void => {
    if (element.closest(':disabled, [aria-disabled="true"], .unseen') !== null) return;
    const control = element.closest('label')?.control;
    if (control?.matches(':disabled')) return;
    const style = getComputedStyle(element);
    const svg = element instanceof SVGElement ? element.ownerSVGElement : null;
    const matrix = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null;
    const scale = matrix === null ? 1 : Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c));
    const halo =
      svg !== null &&
      style.stroke !== 'none' &&
      style.paintOrder.startsWith('stroke') &&
      Number.parseFloat(style.strokeWidth) >= 2;
    for (const { left, right, top, bottom } of rects) {
      if (right - left < 1 || bottom - top < 1) continue;
      for (const share of [0.1, 0.5, 0.9]) {
        const [x, y] = [left + (right - left) * share, (top + bottom) / 2];
        const beneath = halo
          ? [{ colour: plain(style.stroke), opacity: 1 }]
          : svg === null
            ? []
            : shapesUnder(element, svg, x, y);
        const writing: Writing = {
          text: text.trim().replace(/\s+/g, ' ').slice(0, 40),
          where: `${element.tagName.toLowerCase()}${[...element.classList].map((name) => `.${name}`).join('')}`,
          colour: svg === null ? plain(colour ?? style.color) : fade(style.fill, Number(style.fillOpacity)),
          pixels: Number.parseFloat(style.fontSize) * scale,
          weight: Number(style.fontWeight),
          under: [...groundsOf(element), ...beneath],
        };
        const { colour: ink, pixels, weight, under } = writing;
        const key = JSON.stringify([ink, pixels, weight, under]);
        if (!found.has(key)) found.set(key, writing);
        if (svg === null) break;
      }
    }
  };

  const shown = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const [text, element] = [node.textContent ?? '', node.parentElement];
    if (text.trim() === '' || element === null || !shown(element)) continue;
    if (element.closest('script, style, select, title, desc, noscript, template') !== null) continue;
    range.selectNodeContents(node);
    note(element, text, range.getClientRects());
  }
  for (const field of document.querySelectorAll<HTMLInputElement>('input, textarea, select')) {
    if (!shown(field) || /^(checkbox|radio|range|color|file|hidden)$/.test(field.type)) continue;
    const { placeholder = '', value } = field;
    if (value !== '') note(field, value, field.getClientRects());
    else if (placeholder !== '')
      note(field, placeholder, field.getClientRects(), getComputedStyle(field, '::placeholder').color);
  }
  return [...found.values()];
}

/**
 * Let every colour change at once from now on, so that none is read half way. A style sheet of its own: the thousands of
 * transitions that a change of scheme starts under reduced motion, each a hundredth of a millisecond long, would take seconds.
 */
export async function stopTransitions(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('*, *::before, *::after { transition: none !important }');
    document.adoptedStyleSheets = [sheet];
  });
}

/** Every text on show, once for each style and ground. A disabled control is left out (the same criterion lets it be faint). */
async function writings(page: Page): Promise<readonly Writing[]> {
  return page.evaluate(readWritings);
}

/** What cannot be read on an open page, in words, as it stands now. */
export async function contrastFaults(page: Page): Promise<readonly string[]> {
  return (await writings(page)).map(contrastFault).filter((fault) => fault !== undefined);
}
