/** What in a link is over its rating, in every state of every output and however grounds are joined. */
import { STATES } from '../wiring/index.ts';
import type { State } from '../wiring/index.ts';
import { partWords } from './part-words.ts';
import { solveState } from './prepare.ts';
import type { PreparedLink } from './prepare.ts';
import { readPart } from './readings.ts';
import { sayList } from './speak.ts';

/** The parts over their ratings and by how much, in words; undefined where there is none. At typical values, as ratings are. */
export function dangerOf(ways: readonly PreparedLink[]): string | undefined {
  const worst = new Map<string, { readonly amperes: number; readonly words: string }>();
  for (const way of ways) {
    const { parts, senses, rivals } = way.model;
    const rated = parts.filter(({ rating }) => Object.keys(rating).length > 0);
    for (const [state, ...others] of everyDrive(1 + rivals.length)) {
      const solved = solveState(way, state as State, others);
      if (!solved.ok) continue;
      for (const part of rated) {
        const { over, amperes } = readPart(part, solved);
        const known = worst.get(part.element.name);
        if (over === undefined || (known && known.amperes >= Math.abs(amperes))) continue;
        const words = `${partWords(part, senses.length)}: ${over}`;
        worst.set(part.element.name, { amperes: Math.abs(amperes), words });
      }
    }
  }
  return worst.size === 0 ? undefined : sayList([...worst.values()].map(({ words }) => words));
}

/** Every way that so many outputs can rest and send. */
function everyDrive(outputs: number): readonly (readonly State[])[] {
  return outputs === 0
    ? [[]]
    : everyDrive(outputs - 1).flatMap((rest) => STATES.map((state) => [...rest, state]));
}
