/** Long work that is done step by step, so that whoever asks may tell how far it is, or stop. */

/** Do all steps of such work, and hand back what comes of it; `tell` is told of each step. */
export function runThrough<Told, End>(work: Generator<Told, End>, tell?: (told: Told) => void): End {
  let turn = work.next();
  for (; turn.done !== true; turn = work.next()) tell?.(turn.value);
  return turn.value;
}
