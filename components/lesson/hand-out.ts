/** The explanations of a lesson gathered for the end of its hand-out, as copies with names of their own. */

/** Behind each name in a copy, so that it does not stand twice on the page. */
const COPY = '-paper';

/** A copy of what explains an answer, shown, and with every name in it and every use of one changed. */
export function copyOf(explanation: Element): Element {
  const copy = explanation.cloneNode(true) as Element;
  copy.removeAttribute('hidden');
  const all = [copy, ...copy.querySelectorAll('*')];
  const names = new Set(all.map(({ id }) => id).filter((id) => id !== ''));
  for (const one of all) {
    if (one.id !== '') one.id += COPY;
    // Fields of a copy must not take the choice away from those on the page.
    for (const { name, value } of [...one.attributes]) {
      const renamed = name === 'name' ? value + COPY : withCopies(name, value, names);
      if (renamed !== value) one.setAttribute(name, renamed);
    }
  }
  return copy;
}

/** Attributes that are a list of names. */
const LISTS_OF_NAMES = ['aria-labelledby', 'aria-describedby', 'aria-controls', 'for', 'list'];

function withCopies(attribute: string, value: string, names: ReadonlySet<string>): string {
  const other = (name: string): string => (names.has(name) ? name + COPY : name);
  if (LISTS_OF_NAMES.includes(attribute)) return value.split(' ').map(other).join(' ');
  if (attribute === 'href' || attribute === 'xlink:href')
    return value.startsWith('#') ? `#${other(value.slice(1))}` : value;
  return value.replace(/url\(["']?#([^"')]+)["']?\)/g, (_, name: string) => `url(#${other(name)})`);
}
