/** Which files of scripts to make one: few enough to fetch quickly, and none that carries much of what a page does not use. */

/**
 * A file of scripts as the bundler makes it.
 * @typedef {object} Part
 * @property {string} name
 * @property {number} bytes after gzip
 * @property {readonly string[]} imports names of the files that it loads first
 * @property {'page' | 'later' | 'shared'} role whether a page opens with it, fetches it when it is asked for, or others share it
 */

/**
 * What a file costs beside its own bytes, in bytes: 500 of headers and of compression begun anew (measured on the bench, 67 files), and
 * the rest for its place in the queue (our choice: it halves the files of a page, which grows by 2 to 10 kB).
 */
const FILE_BYTES = 2000;

/** How much an opening counts, of 1: what is fetched later finds much of the rest there (our choice). */
const WEIGHTS = { page: 1, later: 0.25, shared: 0 };

/** Each part with all that is loaded with it, itself included. */
function closures(parts) {
  const byName = new Map(parts.map((part) => [part.name, part]));
  const whole = (part, found) => {
    if (found.has(part)) return found;
    found.add(part);
    for (const name of part.imports) whole(byName.get(name), found);
    return found;
  };
  return new Map(parts.map((part) => [part, whole(part, new Set())]));
}

/** Parts with two of them made one, and every import of either led to it. */
function joined(parts, one, other) {
  const own = [one.name, other.name];
  const led = (names) => [...new Set(names.map((name) => (own.includes(name) ? one.name : name)))];
  const whole = {
    ...one,
    bytes: one.bytes + other.bytes,
    imports: led([...one.imports, ...other.imports]).filter((name) => name !== one.name),
    of: [...one.of, ...other.of],
  };
  return parts
    .filter((part) => part !== other)
    .map((part) => (part === one ? whole : { ...part, imports: led(part.imports) }));
}

/** The two shared parts that are best made one, or undefined where no two are worth it. */
function bestPair(parts, fileBytes) {
  const loadedWith = closures(parts);
  const shared = parts.filter(({ role }) => role === 'shared');
  const loads = parts.filter(({ role }) => role !== 'shared');
  // For each opening: the bytes that a part would add to it with all that the part needs; none where it is there.
  const added = loads.map((load) => {
    const there = loadedWith.get(load);
    return shared.map((part) => {
      if (there.has(part)) return undefined;
      let sum = 0;
      for (const each of loadedWith.get(part)) if (!there.has(each)) sum += each.bytes;
      return sum;
    });
  });
  const gain = (one, other) =>
    loads.reduce((sum, { role }, at) => {
      const [first, second] = [added[at][one], added[at][other]];
      if (first !== undefined && second !== undefined) return sum;
      return sum + WEIGHTS[role] * (fileBytes * (first === second) - (first ?? 0) - (second ?? 0));
    }, 0);
  // Two files that need each other by way of a third would go round in a circle.
  const goesRound = (one, other) =>
    one.imports.some(
      (name) => name !== other.name && loadedWith.get(parts.find((part) => part.name === name)).has(other),
    );
  let best;
  let most = 0;
  for (let one = 0; one < shared.length; one++)
    for (let other = one + 1; other < shared.length; other++) {
      const won = gain(one, other);
      if (won <= most) continue;
      const [first, second] = [shared[one], shared[other]];
      if (goesRound(first, second) || goesRound(second, first)) continue;
      [best, most] = [[first, second], won];
    }
  return best;
}

/**
 * The groups of shared parts that become one file each, by the names of their parts.
 * @param {readonly Part[]} parts
 * @returns {readonly (readonly string[])[]}
 */
export function mergedParts(parts, fileBytes = FILE_BYTES) {
  let left = parts.map((part) => ({ ...part, of: [part.name] }));
  for (let pair = bestPair(left, fileBytes); pair !== undefined; pair = bestPair(left, fileBytes))
    left = joined(left, ...pair);
  return left.filter(({ role, of }) => role === 'shared' && of.length > 1).map(({ of }) => of);
}
