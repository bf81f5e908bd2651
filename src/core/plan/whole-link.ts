/** A link of a plan with everything that shares an output or an input with it: one circuit, to be solved as one. */
import type { Branch, Link, Rival } from '../wiring/index.ts';
import { linkOf } from './parts.ts';
import type { JackPlace, Plan, PlanLink } from './plan.ts';

/** A jack's place as text; each place is asked for once for every link of the board. */
const keys = new WeakMap<JackPlace, string>();

function keyOf(place: JackPlace): string {
  const known = keys.get(place);
  if (known !== undefined) return known;
  const made = JSON.stringify([place.device, place.jack]);
  keys.set(place, made);
  return made;
}

/**
 * A link with its own inputs first, then those of other links on the same output, and the other outputs that end on any of
 * these inputs as rivals, with all that hangs on them in turn. @throws as `linkOf` does.
 */
export function wholeLink(plan: Plan, link: PlanLink): Link {
  const { output, branches } = feedsOf(plan, link);
  const inputs = new Map(branches.map(({ key }, at) => [key, at]));
  const outputs = new Set([keyOf(link.output)]);
  let count = branches.length;
  const rivals: Rival[] = [];
  // New rivals bring new inputs, on which still others may end: look again until none is found.
  for (let found = rivalOf(); found; found = rivalOf()) {
    outputs.add(keyOf(found.output));
    const feeds = feedsOf(plan, found);
    const ends = feeds.branches.map(({ key, branch }) => {
      const shares = inputs.get(key);
      if (shares === undefined) inputs.set(key, count++);
      return shares === undefined ? branch : { ...branch, shares };
    });
    rivals.push({ output: feeds.output, branches: ends });
  }
  const whole = { output, branches: branches.map(({ branch }) => branch) };
  return rivals.length === 0 ? whole : { ...whole, rivals };

  function rivalOf(): PlanLink | undefined {
    return plan.links.find(
      (one) => !outputs.has(keyOf(one.output)) && one.inputs.some((input) => inputs.has(keyOf(input))),
    );
  }
}

/** Everything that one output feeds, the inputs of this link first. */
function feedsOf(
  plan: Plan,
  link: PlanLink,
): { readonly output: Link['output']; readonly branches: readonly { key: string; branch: Branch }[] } {
  const others = plan.links.filter((one) => one !== link && keyOf(one.output) === keyOf(link.output));
  const branches = [link, ...others].flatMap((one) =>
    linkOf(plan, one).branches.map((branch, at) => ({ key: keyOf(one.inputs[at] as JackPlace), branch })),
  );
  return { output: linkOf(plan, link).output, branches };
}
