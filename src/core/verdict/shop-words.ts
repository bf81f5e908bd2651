/** A lead as one asks for it in a shop. */
import { familyOf, lineAt } from '../wiring/index.ts';
import type { Conductor, Contact, Jack } from '../wiring/index.ts';

/** What to ask a shop for: plugs and order of contacts in words. */
export function shopWords(output: Jack, input: Jack, conductors: readonly Conductor[]): string {
  const live = conductors.filter(
    ({ from, to }) => lineAt(output.style, from) !== undefined && lineAt(input.style, to) !== undefined,
  );
  const map = new Map(live.map(({ from, to }) => [from, to]));
  const straight = live.every(({ from, to }) => from === to);
  const families = [familyOf(output.connector), familyOf(input.connector)];
  if (families[0] === families[1]) {
    if (straight) return 'straight: each contact to the same contact';
    return map.get('tip') === 'ring' && map.get('ring') === 'tip'
      ? 'crossed: tip and ring change places'
      : 'own wiring: have it made';
  }
  const pin = (contact: Contact): Contact | undefined =>
    families[0] === 'din' ? map.get(contact) : [...map].find(([, to]) => to === contact)?.[0];
  const shield = pin('2') === 'sleeve' ? ', pin 2 on sleeve' : '';
  if (pin('5') === 'tip' && pin('4') === 'ring')
    return `wired as Type A: pin 5 on tip, pin 4 on ring${shield}`;
  if (pin('4') === 'tip' && pin('5') === 'ring')
    return `wired as Type B: pin 4 on tip, pin 5 on ring${shield}`;
  return 'own wiring: have it made';
}
