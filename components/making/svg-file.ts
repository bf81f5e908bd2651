/** A drawing on the page as an SVG file of its own: what the style sheet gives is written into it as attributes. */

/** Properties that decide how a drawing looks. */
const LOOKS = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
  'paint-order',
] as const;

/** The text of an SVG file that looks as the drawing does now. */
export function svgText(drawing: SVGSVGElement): string {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const shown = [drawing, ...drawing.querySelectorAll('*')];
  const made = [copy, ...copy.querySelectorAll('*')];
  shown.forEach((element, at) => {
    const looks = getComputedStyle(element);
    const target = made[at];
    if (!target) return;
    for (const name of LOOKS) target.setAttribute(name, looks.getPropertyValue(name));
    target.removeAttribute('class');
    if (looks.display === 'none') target.setAttribute('display', 'none');
  });
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}
