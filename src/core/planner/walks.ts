/**
 * Walks that remember: the cheapest walk from each device that never comes back to a device it still remembers. Each device
 * lets the walk remember only its nearest neighbours, so a walk may repeat a far device; that keeps the table small, and the
 * cheapest walk below the cheapest chain.
 */

/** The table of walks, made once for a board and filled again for each set of multipliers. */
export interface WalkTable {
  readonly fill: (next: Float64Array, rewards: Float64Array) => void;
  /** The cheapest walk of at most `longest` devices behind a place that feeds each device at `start`. */
  readonly best: (
    start: Float64Array,
    longest: number,
  ) => { readonly value: number; readonly devices: readonly number[] };
}

/** Make a table for walks of at most `longest` devices; each device remembers `memory` of its neighbours, itself included. */
export function walkTable(count: number, near: Float64Array, longest: number, memory: number): WalkTable {
  const size = Math.min(memory, count);
  const hoods = Array.from({ length: count }, (_, at) => {
    const others = Array.from({ length: count }, (_other, other) => other).filter((other) => other !== at);
    const distance = (other: number): number =>
      Math.min(near[at * count + other]!, near[other * count + at]!);
    return [at, ...others.sort((a, b) => distance(a) - distance(b) || a - b).slice(0, size - 1)];
  });
  const states = 1 << size;
  // memoryAfter[(to * count + from) * states + bits]: what `to` remembers of what `from` remembered, itself added.
  const memoryAfter = new Uint16Array(count * count * states);
  const bitAt = new Int8Array(count * count).fill(-1);
  hoods.forEach((hood, at) => hood.forEach((device, bit) => (bitAt[at * count + device] = bit)));
  for (let to = 0; to < count; to++)
    for (let from = 0; from < count; from++)
      for (let bits = 0; bits < states; bits++) {
        let kept = 1;
        hoods[from]!.forEach((device, bit) => {
          const place = bitAt[to * count + device]!;
          if ((bits & (1 << bit)) !== 0 && place >= 0) kept |= 1 << place;
        });
        memoryAfter[(to * count + from) * states + bits] = kept;
      }
  const layers = Array.from({ length: Math.max(1, longest) }, () => ({
    cost: new Float64Array(count * states),
    then: new Int32Array(count * states),
  }));
  return {
    fill: (next, rewards) => {
      layers[0]!.cost.fill(Infinity);
      for (let at = 0; at < count; at++) layers[0]!.cost[at * states + 1] = -rewards[at]!;
      for (let more = 1; more < layers.length; more++) {
        const before = layers[more - 1]!.cost;
        const { cost, then } = layers[more]!;
        cost.fill(Infinity);
        for (let from = 0; from < count; from++) {
          for (let bits = 1; bits < states; bits += 2) {
            const rest = before[from * states + bits]!;
            if (rest === Infinity) continue;
            for (let to = 0; to < count; to++) {
              const step = next[to * count + from]!;
              if (step === Infinity) continue;
              const place = bitAt[from * count + to]!;
              if (place >= 0 && (bits & (1 << place)) !== 0) continue;
              const state = to * states + memoryAfter[(to * count + from) * states + bits]!;
              const sum = rest + step - rewards[to]!;
              if (sum < cost[state]!) {
                cost[state] = sum;
                then[state] = from * states + bits;
              }
            }
          }
        }
      }
    },
    best: (start, most) => {
      let [value, layer, state] = [Infinity, -1, -1];
      for (let more = 0; more < Math.min(most, layers.length); more++) {
        const { cost } = layers[more]!;
        for (let at = 0; at < count; at++) {
          if (start[at] === Infinity) continue;
          for (let bits = 1; bits < states; bits += 2) {
            const sum = start[at]! + cost[at * states + bits]!;
            if (sum < value) [value, layer, state] = [sum, more, at * states + bits];
          }
        }
      }
      const devices: number[] = [];
      for (; layer >= 0 && state >= 0; layer--) {
        devices.push(Math.floor(state / states));
        if (layer > 0) state = layers[layer]!.then[state]!;
      }
      return { value, devices };
    },
  };
}
