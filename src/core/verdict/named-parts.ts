/** A part that is not known: every usual part it may be, judged one by one. */
import { USUAL_PARTS } from '../wiring/index.ts';
import type { Link, Part } from '../wiring/index.ts';
import { judgeInputs } from './judge.ts';
import { prepareLink } from './prepare.ts';

/** A link with every part named. `part` is the one put in place of all that are not known; undefined for a mixture. */
interface NamedLink {
  readonly link: Link;
  readonly part: Part | undefined;
}

/**
 * The links to solve for one whose parts are not all known: each usual part in every such input, and, where there are several,
 * the mixture that leaves one of them the least. Inputs on one output only take current from each other, so that the least is
 * found with all the others alike. Empty where every part is known.
 */
export function namedLinks(link: Link): readonly NamedLink[] {
  const open = link.branches.flatMap(({ input }, at) => (input.part === 'unknown' ? [at] : []));
  if (open.length === 0) return [];
  const same = USUAL_PARTS.map((part) => ({ link: withParts(link, open, () => part), part }));
  if (open.length === 1) return same;
  const mixed = open.flatMap((one) =>
    USUAL_PARTS.flatMap((part) =>
      USUAL_PARTS.filter((other) => other !== part).map((other) => {
        const named = withParts(link, open, (at) => (at === one ? part : other));
        const input = judgeInputs(prepareLink(named, 'separate'), false).inputs[one];
        return { link: named, part: undefined, margin: input ? input.active / input.on : 0 };
      }),
    ),
  );
  return [...same, mixed.reduce((least, one) => (one.margin < least.margin ? one : least))];
}

function withParts(link: Link, open: readonly number[], partOf: (at: number) => Part): Link {
  return {
    ...link,
    branches: link.branches.map((branch, at) =>
      open.includes(at) ? { ...branch, input: { ...branch.input, part: partOf(at) } } : branch,
    ),
  };
}
